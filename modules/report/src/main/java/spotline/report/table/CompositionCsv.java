package spotline.report.table;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.report.facts.RowState;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** The composition of each spot, a row an element: the primary result, and the same on other bases. */
public final class CompositionCsv {
    public static final String FILE = "composition.csv";
    public static final String VARIANTS_FILE = "composition-variants.csv";

    private static final List<String> COLUMNS = List.of(
            "sample",
            "spot",
            "element",
            "atomic_percent",
            "standard_uncertainty",
            "statistical_uncertainty",
            "line",
            "spectrum",
            "basis",
            "below_detection",
            "detection_limit",
            "withheld_because");

    private CompositionCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            for (Quantified row : spot.composition()) table.add(cells(new CsvTable.Row(), spot, row));
        }
        return table;
    }

    public static byte[] variants(RunResult result) {
        CsvTable table = new CsvTable(
                Stream.concat(Stream.of("variant"), COLUMNS.stream()).toList());
        for (SpotResult spot : result.spots()) {
            for (SpotResult.Variant variant : spot.variants()) {
                for (Quantified row : variant.rows()) {
                    table.add(cells(new CsvTable.Row().text(variant.name()), spot, row));
                }
            }
        }
        return table.bytes();
    }

    private static CsvTable.Row cells(CsvTable.Row cells, SpotResult spot, Quantified row) {
        return cells.text(spot.sample())
                .text(spot.spot())
                .text(row.element())
                .number(row.atomicPercent().map(Estimate::value).orElse(Double.NaN))
                .number(row.atomicPercent().map(Estimate::standardUncertainty).orElse(OptionalDouble.empty()))
                .number(row.statisticalU())
                .text(row.line())
                .text(row.spectrum())
                .text(row.basis().word())
                .flag(row.belowDetection())
                .number(row.detectionLimit())
                .text(RowState.of(spot, row).reason());
    }
}
