package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.Own;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.analysis.peakfit.ParameterRule.Tied;
import spotline.core.Decimal;
import spotline.core.Problem;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeParameter;
import spotline.spectra.Window;

/** Finds all that is wrong with a model, without looking at any data. */
final class ModelChecks {
    private final Optional<Window> window;
    private final List<ComponentModel> components;
    private final List<Problem> problems = new ArrayList<>();
    /** Component by name, doublet partners included; the first of a name that is given twice. */
    private final Map<String, ComponentModel> byName = new LinkedHashMap<>();

    ModelChecks(Optional<Window> window, List<ComponentModel> components) {
        this.window = window;
        this.components = components;
    }

    List<Problem> problems() {
        if (components.isEmpty()) problems.add(new Problem("/components", "no component", "at least one"));
        names();
        for (int c = 0; c < components.size(); c++) rules(c);
        circles();
        return List.copyOf(problems);
    }

    private void names() {
        for (int c = 0; c < components.size(); c++) {
            ComponentModel component = components.get(c);
            String name = component.name();
            String field = "/components/" + c + "/name";
            if (name.isBlank()) problems.add(new Problem(field, "an empty name", "a name"));
            else if (byName.putIfAbsent(name, component) != null) twice(field, name);
            if (hasPartner(component)) {
                String partner = component.doublet().orElseThrow().partnerName(name);
                if (byName.putIfAbsent(partner, component) != null) twice("/components/" + c + "/doublet", partner);
            }
        }
    }

    static boolean hasPartner(ComponentModel component) {
        return component.doublet().filter(d -> d.line().orbital().l() > 0).isPresent();
    }

    private void twice(String field, String name) {
        problems.add(new Problem(field, "\"" + name + "\" a second time", "each component's name once"));
    }

    private void rules(int c) {
        ComponentModel component = components.get(c);
        component.parameters().forEach((name, rule) -> {
            String field = "/components/" + c + "/" + name;
            Optional<ShapeParameter> parameter = parameter(component.shape(), name);
            if (parameter.isEmpty()) {
                problems.add(new Problem(
                        field,
                        "a " + component.shape().name() + " shape has no parameter \"" + name + "\"",
                        "one of " + String.join(", ", component.shape().parameterNames())));
                return;
            }
            if (rule instanceof Own own) own(field, own, Optional.of(parameter.get()));
            else if (rule instanceof Tied tied) tied(field, component, name, tied);
        });
        component.doublet().ifPresent(doublet -> {
            String field = "/components/" + c + "/doublet";
            if (doublet.line().orbital().l() == 0) {
                problems.add(new Problem(field, "the line " + doublet.line(), "a line that is a doublet"));
            }
            doublet.splittingEv().ifPresent(own -> own(field + "/splittingEv", own, Optional.empty()));
            doublet.areaRatio().ifPresent(own -> above0(field + "/areaRatio", own));
            above0(field + "/widthRatio", doublet.widthRatio());
            doublet.lorentzianFwhm().ifPresent(own -> {
                Optional<ShapeParameter> width = parameter(component.shape(), DoubletRule.LORENTZIAN);
                if (width.isEmpty()) {
                    problems.add(new Problem(
                            field + "/lorentzianFwhm",
                            "a " + component.shape().name() + " shape has no parameter \"lorentzianFwhm\"",
                            "a widthRatio, or a shape with a Lorentzian width"));
                } else {
                    own(field + "/lorentzianFwhm", own, width);
                }
            });
        });
    }

    private static Optional<ShapeParameter> parameter(LineShape shape, String name) {
        return shape.parameters().stream().filter(p -> p.name().equals(name)).findFirst();
    }

    private void own(String field, Own own, Optional<ShapeParameter> limits) {
        double lowest = limits.map(ShapeParameter::lowest).orElse(Double.NEGATIVE_INFINITY);
        double highest = limits.map(ShapeParameter::highest).orElse(Double.POSITIVE_INFINITY);
        if (own instanceof Fixed fixed) {
            if (!Double.isFinite(fixed.value()) || fixed.value() < lowest || fixed.value() > highest) {
                problems.add(new Problem(field + "/fixed", text(fixed.value()), "a number" + range(lowest, highest)));
            }
            return;
        }
        Free free = (Free) own;
        if (!(free.min() <= free.max())) {
            problems.add(new Problem(
                    field, "min " + text(free.min()) + " and max " + text(free.max()), "min not above max"));
            return;
        }
        if (free.max() < lowest || free.min() > highest) {
            problems.add(new Problem(
                    field,
                    "bounds " + text(free.min()) + " to " + text(free.max()),
                    "bounds that allow a number" + range(lowest, highest)));
            return;
        }
        if (free.start().isEmpty()) return;
        double start = free.start().getAsDouble();
        double min = Math.max(lowest, free.min());
        double max = Math.min(highest, free.max());
        if (!Double.isFinite(start) || start < min || start > max) {
            problems.add(new Problem(field + "/start", text(start), "a number" + range(min, max)));
        } else if (limits.isPresent() && limits.get().name().equals("position")) {
            farFromWindow(field, start);
        }
    }

    private void farFromWindow(String field, double start) {
        if (window.isEmpty()) return;
        double low = window.get().lowEv() - window.get().widthEv();
        double high = window.get().highEv() + window.get().widthEv();
        if (start < low || start > high) {
            problems.add(new Problem(
                    field + "/start",
                    text(start) + " eV",
                    "an energy inside the window, or at most its width outside: " + text(low) + " to " + text(high)
                            + " eV"));
        }
    }

    private void above0(String field, Own own) {
        own(field, own, Optional.empty());
        double smallest = own instanceof Fixed fixed ? fixed.value() : ((Free) own).min();
        boolean unbounded = smallest == Double.NEGATIVE_INFINITY;
        if (!(smallest > 0) && !unbounded) {
            problems.add(new Problem(field, text(smallest), "a ratio above 0"));
        }
    }

    private void tied(String field, ComponentModel component, String name, Tied tied) {
        Optional<Own> inner = inner(tied);
        inner.ifPresent(own -> own(field, own, Optional.empty()));
        ComponentModel leader = byName.get(tied.component());
        if (leader == null) {
            List<String> others = byName.keySet().stream()
                    .filter(n -> !n.equals(component.name()))
                    .toList();
            problems.add(new Problem(
                    field,
                    "a tie to \"" + tied.component() + "\", which is no component",
                    others.isEmpty() ? "another component, and there is none" : "one of " + String.join(", ", others)));
        } else if (parameter(leader.shape(), name).isEmpty()) {
            problems.add(new Problem(
                    field,
                    "a tie to \"" + tied.component() + "\", whose "
                            + leader.shape().name() + " shape has no " + name,
                    "a component that has this parameter"));
        }
    }

    static Optional<Own> inner(ParameterRule rule) {
        if (rule instanceof RatioTo ratio) return Optional.of(ratio.ratio());
        if (rule instanceof OffsetFrom offset) return Optional.of(offset.offset());
        return Optional.empty();
    }

    /** Each circle once, told at the first of its members. */
    private void circles() {
        Set<String> told = new LinkedHashSet<>();
        for (int c = 0; c < components.size(); c++) {
            ComponentModel component = components.get(c);
            for (String parameter : component.parameters().keySet()) {
                List<String> path = circle(component.name(), parameter);
                if (path.isEmpty() || told.contains(path.get(0) + "\n" + parameter)) continue;
                path.forEach(member -> told.add(member + "\n" + parameter));
                problems.add(new Problem(
                        "/components/" + c + "/" + parameter,
                        "ties in a circle: " + String.join(" to ", path) + " to " + path.get(0),
                        "a component whose " + parameter + " is not tied to it"));
            }
        }
    }

    /** The components passed when following a parameter's ties back to where they began; empty where they end. */
    private List<String> circle(String name, String parameter) {
        Map<String, String> leaders = new HashMap<>();
        for (ComponentModel component : components) {
            ParameterRule rule = component.parameters().get(parameter);
            if (rule instanceof Tied tied) leaders.putIfAbsent(component.name(), tied.component());
            component
                    .doublet()
                    .ifPresent(doublet -> leaders.putIfAbsent(doublet.partnerName(component.name()), component.name()));
        }
        List<String> path = new ArrayList<>();
        Optional<String> at = Optional.of(name);
        while (at.isPresent() && !path.contains(at.get())) {
            path.add(at.get());
            at = Optional.ofNullable(leaders.get(at.get()));
        }
        return at.equals(Optional.of(name)) ? path : List.of();
    }

    /** Those of the component and of the ties of its partner. */
    static int freeParameters(ComponentModel component) {
        int free = 0;
        for (ShapeParameter p : component.shape().parameters()) {
            ParameterRule rule = component.parameters().getOrDefault(p.name(), Free.UNBOUNDED);
            Optional<Own> own = rule instanceof Own it ? Optional.of(it) : inner(rule);
            if (own.isPresent() && isFree(own.get())) free++;
        }
        if (component.doublet().isPresent()) {
            DoubletRule doublet = component.doublet().get();
            if (doublet.splittingEv().filter(ModelChecks::isFree).isPresent()) free++;
            if (doublet.areaRatio().filter(ModelChecks::isFree).isPresent()) free++;
            if (isFree(doublet.widthRatio())) free++;
            if (doublet.lorentzianFwhm().filter(ModelChecks::isFree).isPresent()) free++;
        }
        return free;
    }

    private static boolean isFree(Own own) {
        return own instanceof Free free && !free.held();
    }

    private static String range(double lowest, double highest) {
        boolean below = lowest == Double.NEGATIVE_INFINITY;
        boolean above = highest == Double.POSITIVE_INFINITY;
        if (below && above) return "";
        if (above) return " of " + text(lowest) + " or more";
        if (below) return " of " + text(highest) + " or less";
        return " from " + text(lowest) + " to " + text(highest);
    }

    private static String text(double value) {
        return Double.isFinite(value) ? Decimal.significant(value, 8) : Double.toString(value);
    }
}
