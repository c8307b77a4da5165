package spotline.run.fitmodel;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.Own;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.core.Problem;
import spotline.numerics.shape.AreaLimits;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.GaussianLorentzianProduct;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Lorentzian;
import spotline.numerics.shape.Template;
import spotline.numerics.shape.Voigt;
import spotline.numerics.shape.VoigtExponentialTail;
import spotline.reference.Line;

/** One component of a fit-model file, already valid against the schema. */
final class ComponentJson {
    private static final List<String> NO_PARAMETERS = List.of("name", "shape", "areaLimits", "samples", "doublet");

    private ComponentJson() {}

    /** Empty where the shape itself cannot be made; problems in rules leave the component in place. */
    static Optional<ComponentModel> read(JsonNode json, String field, List<Problem> problems) {
        Optional<LineShape> shape = shape(json, field, problems);
        Map<String, ParameterRule> rules = new LinkedHashMap<>();
        json.fieldNames().forEachRemaining(name -> {
            if (NO_PARAMETERS.contains(name)) return;
            rules.put(name, rule(json.path(name), field + "/" + name, problems));
        });
        Optional<DoubletRule> doublet =
                json.has("doublet") ? doublet(json.path("doublet"), field + "/doublet", problems) : Optional.empty();
        return shape.map(s -> new ComponentModel(json.path("name").asText(), s, rules, doublet));
    }

    private static Optional<LineShape> shape(JsonNode json, String field, List<Problem> problems) {
        String name = json.path("shape").asText();
        misplaced(json, "areaLimits", "doniach-sunjic", name, field, problems);
        misplaced(json, "samples", "template", name, field, problems);
        return switch (name) {
            case "gaussian" -> Optional.of(new Gaussian());
            case "lorentzian" -> Optional.of(new Lorentzian());
            case "gaussian-lorentzian-sum" -> Optional.of(new GaussianLorentzianSum());
            case "gaussian-lorentzian-product" -> Optional.of(new GaussianLorentzianProduct());
            case "voigt" -> Optional.of(new Voigt());
            case "doniach-sunjic" -> Optional.of(doniachSunjic(json.path("areaLimits")));
            case "voigt-exponential-tail" -> Optional.of(new VoigtExponentialTail());
            case "template" -> template(json, field, problems);
            default -> throw new IllegalStateException("the schema let pass the shape " + name);
        };
    }

    private static void misplaced(
            JsonNode json, String member, String shape, String actual, String field, List<Problem> problems) {
        if (!json.has(member) || shape.equals(actual)) return;
        problems.add(new Problem(
                field + "/" + member, "\"" + member + "\" of a " + actual + " shape", "the shape " + shape));
    }

    private static LineShape doniachSunjic(JsonNode limits) {
        if (!limits.isObject()) return new DoniachSunjic();
        return new DoniachSunjic(new AreaLimits(
                limits.path("belowEv").asDouble(), limits.path("aboveEv").asDouble()));
    }

    private static Optional<LineShape> template(JsonNode json, String field, List<Problem> problems) {
        if (!json.has("samples")) {
            problems.add(new Problem(field, "a template without samples", "\"samples\" with offsetEv and intensity"));
            return Optional.empty();
        }
        try {
            JsonNode samples = json.path("samples");
            return Optional.of(new Template(numbers(samples.path("offsetEv")), numbers(samples.path("intensity"))));
        } catch (IllegalArgumentException e) {
            problems.add(new Problem(field + "/samples", String.valueOf(e.getMessage()), "samples of a line"));
            return Optional.empty();
        }
    }

    private static double[] numbers(JsonNode list) {
        double[] numbers = new double[list.size()];
        for (int i = 0; i < numbers.length; i++) numbers[i] = list.path(i).asDouble();
        return numbers;
    }

    private static ParameterRule rule(JsonNode json, String field, List<Problem> problems) {
        List<String> ties = new ArrayList<>();
        for (String tie : List.of("equalTo", "ratioTo", "offsetFrom")) if (json.has(tie)) ties.add(tie);
        if (ties.size() > 1) {
            problems.add(new Problem(field, String.join(" and ", ties) + " together", "one tie"));
        }
        if (json.has("equalTo")) {
            for (String other : List.of("fixed", "start", "min", "max")) {
                if (json.has(other)) {
                    problems.add(new Problem(
                            field + "/" + other, "\"" + other + "\" beside \"equalTo\"", "\"equalTo\" alone"));
                }
            }
            return new EqualTo(json.path("equalTo").asText());
        }
        Own own = own(json, field, problems);
        if (json.has("ratioTo")) return new RatioTo(json.path("ratioTo").asText(), own);
        if (json.has("offsetFrom"))
            return new OffsetFrom(json.path("offsetFrom").asText(), own);
        return own;
    }

    private static Own own(JsonNode json, String field, List<Problem> problems) {
        if (!json.has("fixed")) {
            return new Free(
                    json.has("start") ? OptionalDouble.of(json.path("start").asDouble()) : OptionalDouble.empty(),
                    json.path("min").asDouble(Double.NEGATIVE_INFINITY),
                    json.path("max").asDouble(Double.POSITIVE_INFINITY));
        }
        for (String other : List.of("start", "min", "max")) {
            if (json.has(other)) {
                problems.add(new Problem(field + "/" + other, "\"" + other + "\" beside \"fixed\"", "\"fixed\" alone"));
            }
        }
        return new Fixed(json.path("fixed").asDouble());
    }

    private static Optional<DoubletRule> doublet(JsonNode json, String field, List<Problem> problems) {
        String text = json.isTextual() ? json.asText() : json.path("line").asText();
        Optional<Line> line = Line.find(text);
        if (line.isEmpty()) {
            problems.add(new Problem(
                    json.isTextual() ? field : field + "/line", "\"" + text + "\"", "a line, such as \"Ti 2p\""));
            return Optional.empty();
        }
        return Optional.of(new DoubletRule(
                line.get().whole(),
                inner(json, "splittingEv", field, problems),
                inner(json, "areaRatio", field, problems),
                inner(json, "widthRatio", field, problems).orElse(new Fixed(1)),
                inner(json, "lorentzianFwhm", field, problems)));
    }

    private static Optional<Own> inner(JsonNode json, String name, String field, List<Problem> problems) {
        return json.has(name) ? Optional.of(own(json.path(name), field + "/" + name, problems)) : Optional.empty();
    }

    static void write(ComponentModel component, ObjectNode to) {
        to.put("name", component.name());
        to.put("shape", component.shape().name());
        if (component.shape() instanceof Template) {
            throw new IllegalArgumentException("a template does not tell its samples: it cannot be written");
        }
        component.shape().areaLimits().ifPresent(limits -> {
            ObjectNode node = to.putObject("areaLimits");
            JsonNumber.put(node, "belowEv", limits.belowEv());
            JsonNumber.put(node, "aboveEv", limits.aboveEv());
        });
        component.parameters().forEach((name, rule) -> write(rule, to.putObject(name)));
        component.doublet().ifPresent(doublet -> write(doublet, to));
    }

    private static void write(DoubletRule doublet, ObjectNode component) {
        String line = doublet.line().toString();
        if (doublet.equals(DoubletRule.of(doublet.line()))) {
            component.put("doublet", line);
            return;
        }
        ObjectNode to = component.putObject("doublet").put("line", line);
        doublet.splittingEv().ifPresent(own -> write(own, to.putObject("splittingEv")));
        doublet.areaRatio().ifPresent(own -> write(own, to.putObject("areaRatio")));
        if (!doublet.widthRatio().equals(new Fixed(1))) write(doublet.widthRatio(), to.putObject("widthRatio"));
        doublet.lorentzianFwhm().ifPresent(own -> write(own, to.putObject("lorentzianFwhm")));
    }

    private static void write(ParameterRule rule, ObjectNode to) {
        if (rule instanceof Fixed fixed) {
            JsonNumber.put(to, "fixed", fixed.value());
        } else if (rule instanceof Free free) {
            if (free.start().isPresent())
                JsonNumber.put(to, "start", free.start().getAsDouble());
            if (Double.isFinite(free.min())) JsonNumber.put(to, "min", free.min());
            if (Double.isFinite(free.max())) JsonNumber.put(to, "max", free.max());
        } else if (rule instanceof EqualTo equal) {
            to.put("equalTo", equal.component());
        } else if (rule instanceof RatioTo ratio) {
            write(ratio.ratio(), to.put("ratioTo", ratio.component()));
        } else if (rule instanceof OffsetFrom offset) {
            write(offset.offset(), to.put("offsetFrom", offset.component()));
        }
    }
}
