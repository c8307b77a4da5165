package spotline.report.table;

import java.util.List;
import java.util.stream.Collectors;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.core.Decimal;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row an element that a survey shows. */
public final class ElementsCsv {
    public static final String FILE = "elements.csv";

    private static final List<String> COLUMNS =
            List.of("spot", "sample", "element", "verdict", "lines", "significance");

    private ElementsCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            List<ElementSeen> elements =
                    spot.identification().map(Identification::elements).orElse(List.of());
            for (ElementSeen seen : elements) {
                table.add(new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text(seen.element())
                        .text(seen.verdict().word())
                        .text(lines(seen))
                        .number(seen.significance()));
            }
        }
        return table;
    }

    private static String lines(ElementSeen seen) {
        return seen.lines().stream()
                .map(line -> line.line() + " " + Decimal.fixed(line.energyEv(), 1) + " eV")
                .collect(Collectors.joining("; "));
    }
}
