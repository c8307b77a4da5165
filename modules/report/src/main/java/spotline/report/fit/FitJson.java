package spotline.report.fit;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.FitMonteCarlo;
import spotline.analysis.peakfit.FitStatistics;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.Inseparable;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.run.fitmodel.FitModelWriter;

/** A fit as JSON: components with uncertainties, statistics, model, findings. What is not known is null, never 0. */
public final class FitJson {
    private FitJson() {}

    public static ObjectNode of(FitReport report) {
        PeakFitResult result = report.result();
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("file", report.source().file());
        root.put("sha256", report.source().sha256());
        root.put("block", report.source().block());
        root.put("region", report.region());
        root.put("step", PeakFit.STEP);
        ArrayNode components = root.putArray("components");
        for (FittedComponent c : result.components()) component(result, c, components.addObject());
        statistics(result.statistics(), root.putObject("statistics"));
        number(root, "totalArea", result.totalArea());
        correlations(result, root.putArray("areaCorrelations"));
        ArrayNode sums = root.putArray("onlySumMeasured");
        for (Inseparable pair : result.inseparable()) {
            ObjectNode node = sums.addObject();
            node.putArray("components").add(pair.one()).add(pair.other());
            number(node, "correlation", pair.correlation());
            node.set("area", value(pair.sum().value()));
            number(node, "areaU", pair.sum().standardUncertainty());
        }
        report.monteCarlo().ifPresent(m -> monteCarlo(m, root.putObject("monteCarlo")));
        if (!hasTemplate(result)) root.set("model", FitModelWriter.json(result.model()));
        ArrayNode findings = root.putArray("findings");
        for (Finding f : report.findings()) {
            findings.addObject()
                    .put("severity", f.severity().word())
                    .put("rule", f.rule())
                    .put("message", f.message());
        }
        return root;
    }

    private static boolean hasTemplate(PeakFitResult result) {
        return result.components().stream().anyMatch(c -> c.shape().equals("template"));
    }

    private static void component(PeakFitResult result, FittedComponent c, ObjectNode node) {
        node.put("name", c.name());
        node.set("positionEv", value(c.position().value()));
        number(node, "positionU", c.position().standardUncertainty());
        node.set("fwhmEv", value(c.fwhm().value()));
        number(node, "fwhmU", c.fwhm().standardUncertainty());
        node.set("area", value(c.area().value()));
        number(node, "areaU", c.area().standardUncertainty());
        node.put("shape", c.shape());
        node.put("partnerOf", c.partnerOf().orElse(null));
        node.set("maximumEv", value(c.maximumEv()));
        if (c.partnerOf().isEmpty()) {
            Estimate fraction = result.fraction(c.name());
            node.set("fraction", value(fraction.value()));
            number(node, "fractionU", fraction.standardUncertainty());
        }
        ObjectNode parameters = node.putObject("parameters");
        c.parameters().forEach((name, p) -> {
            ObjectNode one = parameters.putObject(name);
            one.set("value", value(p.value().value()));
            number(one, "u", p.value().standardUncertainty());
            one.put("held", p.hold().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        });
    }

    private static void statistics(FitStatistics s, ObjectNode node) {
        number(node, "reducedChiSquare", s.reducedChiSquare());
        node.set("deviance", value(s.deviance()));
        number(node, "vonNeumannRatio", s.vonNeumannRatio());
        node.put("degreesOfFreedom", s.degreesOfFreedom());
        node.put("iterations", s.iterations());
        node.put("stopReason", s.stopWord());
        node.put("channels", s.channels());
        node.put("freeParameters", s.freeParameters());
        node.set("varianceFactor", value(s.uncertaintyFactor()));
    }

    private static void correlations(PeakFitResult result, ArrayNode list) {
        List<String> names = result.stateNames();
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                ObjectNode node = list.addObject();
                node.putArray("components").add(names.get(i)).add(names.get(j));
                number(node, "correlation", result.areaCorrelation(names.get(i), names.get(j)));
            }
        }
    }

    private static void monteCarlo(FitMonteCarlo.Result m, ObjectNode node) {
        node.put("draws", m.draws());
        node.put("untreated", m.untreated());
        ArrayNode components = node.putArray("components");
        for (FitMonteCarlo.ComponentSpread c : m.components()) {
            ObjectNode one = components.addObject();
            one.put("name", c.name());
            spread(one.putObject("positionEv"), c.position());
            spread(one.putObject("fwhmEv"), c.fwhm());
            spread(one.putObject("area"), c.area());
            c.fraction().ifPresent(f -> spread(one.putObject("fraction"), f));
        }
    }

    private static void spread(ObjectNode node, FitMonteCarlo.Spread spread) {
        node.set("median", value(spread.median()));
        node.set("low95", value(spread.low95()));
        node.set("high95", value(spread.high95()));
        node.set("standardDeviation", value(spread.standardDeviation()));
    }

    private static void number(ObjectNode node, String name, Estimate estimate) {
        node.set(name, value(estimate.value()));
        number(node, name + "U", estimate.standardUncertainty());
    }

    private static void number(ObjectNode node, String name, OptionalDouble number) {
        node.set(name, value(number.orElse(Double.NaN)));
    }

    private static com.fasterxml.jackson.databind.JsonNode value(double number) {
        String text = Decimal.text(number);
        return text.isEmpty()
                ? JsonNodeFactory.instance.nullNode()
                : JsonNodeFactory.instance.numberNode(new BigDecimal(text));
    }
}
