package spotline.report.table;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Identification;
import spotline.core.Decimal;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row an element that a survey shows, with the evidence; a spot without a survey has one that says so. */
public final class ElementsCsv {
    public static final String FILE = "elements.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "element",
            "verdict",
            "lines",
            "significance",
            "likelihood_gain",
            "lines_missing",
            "overlaps",
            "alternatives");

    private static final String NOT_CHECKED = "not checked";

    private ElementsCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            if (spot.identification().isEmpty()) {
                table.add(new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text("")
                        .text(NOT_CHECKED)
                        .text("")
                        .number(Double.NaN)
                        .number(Double.NaN)
                        .text("")
                        .text("")
                        .text(""));
            }
            List<ElementSeen> elements =
                    spot.identification().map(Identification::elements).orElse(List.of());
            for (ElementSeen seen : elements) {
                table.add(new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text(seen.element())
                        .text(seen.verdict().word())
                        .text(lines(seen))
                        .number(seen.significance())
                        .number(seen.evidence().likelihoodGain())
                        .text(missing(seen))
                        .text(String.join("; ", seen.evidence().overlaps()))
                        .text(alternatives(seen)));
            }
        }
        return table;
    }

    private static String missing(ElementSeen seen) {
        return seen.evidence().missing().stream()
                .map(m -> String.format(
                        Locale.ROOT,
                        "%s %.1f eV (%.1f of %.1f sigma)",
                        m.line(),
                        m.energyEv(),
                        m.significance(),
                        m.expectedSignificance()))
                .collect(Collectors.joining("; "));
    }

    private static String alternatives(ElementSeen seen) {
        return seen.evidence().alternatives().stream()
                .map(Evidence.Alternative::explanation)
                .collect(Collectors.joining("; "));
    }

    private static String lines(ElementSeen seen) {
        return seen.lines().stream()
                .map(line -> line.line() + " " + Decimal.fixed(line.energyEv(), 1) + " eV")
                .collect(Collectors.joining("; "));
    }
}
