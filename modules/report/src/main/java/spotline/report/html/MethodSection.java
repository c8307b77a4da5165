package spotline.report.html;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeReference;
import spotline.core.Decimal;
import spotline.report.facts.MethodFacts;
import spotline.report.text.DisplayNumber;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** How the numbers came about, from the settings and results themselves. */
final class MethodSection {
    private MethodSection() {}

    static void write(Markup page, RunResult result) {
        page.open("section", "id", "method").element("h2", "Method");
        page.element("h3", "For a methods paragraph");
        page.element("p", MethodsParagraph.of(result), "class", "methods").raw("\n");
        page.element("h3", "In detail");
        paragraph(page, "Intensities", intensities(result));
        paragraph(page, "Sensitivity factors", factors(result));
        paragraph(page, "Transmission", transmission(result));
        paragraph(
                page,
                "Atomic percent",
                "Each intensity is divided by collection time, transmission and sensitivity factor; atomic percent is the"
                        + " share of the elements listed and sums to 100 at each spot (ISO 18118). Hydrogen and helium"
                        + " are not seen by the technique, so every value is relative to the other elements. The sample"
                        + " is taken as homogeneous over the information depth: no overlayer, not even adventitious"
                        + " carbon, is corrected for.");
        paragraph(
                page,
                "Uncertainty",
                "Standard uncertainties (coverage factor 1) combine counting, background end points, cross sections, the"
                        + " mean free path exponent and the transmission, with what elements share counted once (JCGM"
                        + " 100:2008). The statistical part is counting and end points alone. The mean of replicate"
                        + " spots keeps the shared part in full. What is not modelled (roughness, crystal structure,"
                        + " depth profile) is not in it.");
        paragraph(
                page,
                "Detection",
                "An intensity below its critical level is not reported; the detection limit is the smallest true value"
                        + " that would be found reliably, both errors at 5 % (ISO 19668, after L. A. Currie, Anal. Chem."
                        + " 40 (1968) 586). Where statistics are unknown there is no critical level.");
        paragraph(page, "Energy reference", charge(result));
        paragraph(page, "Not in the composition", MethodsParagraph.excluded(result));
        page.end();
    }

    private static void paragraph(Markup page, String name, String text) {
        page.open("p").element("strong", name + ". ").text(text).end();
    }

    private static String intensities(RunResult result) {
        List<String> narrow = MethodFacts.backgrounds(result, false);
        List<String> survey = MethodFacts.backgrounds(result, true);
        StringBuilder text = new StringBuilder(
                "Peak areas above an inelastic background, in windows laid on the measured data (ISO 20903)");
        if (!narrow.isEmpty()) text.append("; narrow scans: ").append(String.join(" / ", narrow));
        if (!survey.isEmpty()) text.append("; survey spectra: ").append(String.join(" / ", survey));
        return text.append(". No spectrum is smoothed or altered.").toString();
    }

    private static String factors(RunResult result) {
        StringBuilder text = new StringBuilder("Relative sensitivity factors are ")
                .append(MethodFacts.FACTORS)
                .append('.');
        OptionalDouble exponent = setting(result, "meanFreePathExponent");
        OptionalDouble crossSection = setting(result, "crossSectionRelativeU");
        if (exponent.isPresent()) {
            text.append(" Mean free path exponent ")
                    .append(Decimal.text(exponent))
                    .append('.');
        }
        if (crossSection.isPresent()) {
            text.append(String.format(
                    Locale.ROOT,
                    " Relative standard uncertainty of a cross section %s %%.",
                    Decimal.significant(100 * crossSection.getAsDouble(), 3)));
        }
        return text.append(" They hold for the whole area of a line, shake-up included.")
                .toString();
    }

    /** Empty unless every spot has the same number. */
    private static OptionalDouble setting(RunResult result, String field) {
        double[] values = result.treatments().values().stream()
                .map(treatment -> treatment.path("quantify").path(field))
                .filter(JsonNode::isNumber)
                .mapToDouble(JsonNode::doubleValue)
                .distinct()
                .toArray();
        return values.length == 1 ? OptionalDouble.of(values[0]) : OptionalDouble.empty();
    }

    private static String transmission(RunResult result) {
        List<String> applied = MethodFacts.transmissions(result);
        return applied.isEmpty()
                ? "No intensity was divided by a transmission."
                : "Intensities are divided by the relative response of the spectrometer, once: "
                        + String.join("; ", applied) + ".";
    }

    private static String charge(RunResult result) {
        Map<String, List<String>> spots = new LinkedHashMap<>();
        for (SpotResult spot : result.spots()) {
            spots.computeIfAbsent(reference(spot.charge()), r -> new ArrayList<>())
                    .add(spot.spot());
        }
        StringBuilder text = new StringBuilder(
                "Charge referencing adds one number to the measured binding energies of a spot; composition does not"
                        + " depend on it.");
        spots.forEach((reference, ids) -> text.append(' ')
                .append(reference)
                .append(": spot ")
                .append(String.join(", ", ids))
                .append('.'));
        return text.toString();
    }

    private static String reference(ChargeReference charge) {
        String line = charge.referenceLine().isEmpty() ? "" : ", " + charge.referenceLine();
        String value = charge.referenceEv().isPresent()
                ? " at " + DisplayNumber.fixed(charge.referenceEv().getAsDouble(), 2) + " eV"
                : "";
        return "Method " + charge.method().word() + line + value;
    }
}
