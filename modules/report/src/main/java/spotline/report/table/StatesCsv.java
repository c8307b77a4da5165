package spotline.report.table;

import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row a chemical state that a peak fit tells apart. */
public final class StatesCsv {
    public static final String FILE = "states.csv";

    private static final List<String> COLUMNS = List.of(
            "sample",
            "spot",
            "element",
            "line",
            "state",
            "atomic_percent",
            "standard_uncertainty",
            "fraction_of_element",
            "fraction_u");

    private StatesCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            for (StateShare share : spot.states()) {
                table.add(new CsvTable.Row()
                        .text(spot.sample())
                        .text(spot.spot())
                        .text(share.element())
                        .text(share.line())
                        .text(share.state())
                        .number(share.atomicPercent().map(Estimate::value).orElse(Double.NaN))
                        .number(share.atomicPercent()
                                .map(Estimate::standardUncertainty)
                                .orElse(OptionalDouble.empty()))
                        .number(share.fractionOfElement().value())
                        .number(share.fractionOfElement().standardUncertainty()));
            }
        }
        return table;
    }
}
