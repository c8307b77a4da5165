package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.core.Decimal;
import spotline.report.facts.HeaderFacts;
import spotline.report.facts.MethodFacts;
import spotline.report.text.DisplayNumber;
import spotline.run.RunResult;

/** What energy and intensity scale rest on: the calibration in force with its lines and what they were off by. */
final class CalibrationRecordBlock {
    private CalibrationRecordBlock() {}

    static void write(Markup page, RunResult result) {
        page.element("h3", "Calibration");
        Tables.facts(page, facts(result));
        result.calibration().filter(c -> !c.lines().isEmpty()).ifPresent(c -> lines(page, c));
    }

    private static List<Tables.Fact> facts(RunResult result) {
        List<Tables.Fact> facts = new ArrayList<>();
        String file = result.plan().file().instrument().energyCalibration().orElse("");
        facts.add(new Tables.Fact(
                "Energy scale", result.calibration().map(c -> scale(c, file)).orElse(file)));
        facts.add(new Tables.Fact(
                "Calibrated",
                result.calibration()
                        .map(c -> c.date() + ", due again " + c.nextDue())
                        .orElse("")));
        facts.add(new Tables.Fact(
                "Energy-scale checks",
                result.findings().stream()
                        .filter(f -> f.rule().startsWith("energy-"))
                        .map(f -> f.message())
                        .distinct()
                        .collect(Collectors.joining(" "))));
        facts.add(new Tables.Fact("Intensity scale", String.join("; ", MethodFacts.transmissions(result))));
        OptionalDouble linear = result.plan().file().instrument().conditions().linearToCountsPerSecond();
        facts.add(new Tables.Fact(
                "Limits of linear counting",
                linear.isPresent()
                        ? "linear to " + HeaderFacts.scientific(linear.getAsDouble()) + " counts a second"
                        : ""));
        return facts;
    }

    private static String scale(CalibrationRecord record, String file) {
        String u = record.standardUncertaintyEv().isPresent()
                ? ", standard uncertainty "
                        + DisplayNumber.fixed(record.standardUncertaintyEv().getAsDouble(), 3) + " eV"
                : "";
        return "two-parameter correction after ISO 15472 (" + file + "): "
                + DisplayNumber.signed(record.bEv(), 3) + " eV at 0 eV, "
                + DisplayNumber.signed(1000 * record.a() + record.bEv(), 3) + " eV at 1000 eV" + u
                + "; scale as found: "
                + record.verdict().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ') + " at \u00b1"
                + Decimal.text(record.toleranceEv()) + " eV";
    }

    private static void lines(Markup page, CalibrationRecord record) {
        Tables.begin(
                page,
                "calibration",
                List.of(
                        "Reference line",
                        "#Reference, eV",
                        "#Measured, eV",
                        "#Measured less reference, eV",
                        "#FWHM, eV"));
        for (CalibrationRecord.Line line : record.lines()) {
            page.open("tr").element("th", line.line(), "scope", "row");
            Tables.number(page, DisplayNumber.fixed(line.referenceEv(), 2));
            Tables.number(
                    page,
                    DisplayNumber.of(line.measuredEv(), line.measurementU(), 3).text());
            Tables.number(page, DisplayNumber.signed(line.deviationEv(), 3));
            Tables.number(
                            page,
                            line.fwhmEv().isPresent()
                                    ? DisplayNumber.fixed(line.fwhmEv().getAsDouble(), 2)
                                    : "not recorded")
                    .end();
        }
        Tables.end(page);
    }
}
