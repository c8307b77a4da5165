package spotline.report.table;

import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row a chemical state that a peak fit tells apart: the element's atomic percentage shared out. */
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
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            for (StateShare state : spot.states()) {
                table.add(new CsvTable.Row()
                        .text(spot.sample())
                        .text(spot.spot())
                        .text(state.element())
                        .text(state.line())
                        .text(state.state())
                        .number(state.atomicPercent()
                                .map(p -> OptionalDouble.of(p.value()))
                                .orElse(OptionalDouble.empty()))
                        .number(state.atomicPercent()
                                .map(Estimate::standardUncertainty)
                                .orElse(OptionalDouble.empty()))
                        .number(state.fractionOfElement().value())
                        .number(state.fractionOfElement().standardUncertainty()));
            }
        }
        return table.bytes();
    }
}
