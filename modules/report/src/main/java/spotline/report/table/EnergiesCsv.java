package spotline.report.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeReference;
import spotline.core.Estimate;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/**
 * A row a line at a spot: where it lies as measured, on the referenced scale, and from the reference line. A difference
 * inside a spot carries no uncertainty of the reference value.
 */
public final class EnergiesCsv {
    public static final String FILE = "energies.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "line",
            "spectrum",
            "measured_energy_ev",
            "measured_u_ev",
            "referenced_energy_ev",
            "referenced_u_ev",
            "energy_scale",
            "from_reference_line_ev",
            "from_reference_line_u_ev");

    private EnergiesCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            ChargeReference charge = spot.charge();
            for (Position position : charge.evidence().positions()) {
                CsvTable.Row row = new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text(position.line())
                        .text(position.spectrum());
                estimate(row, Optional.of(position.measured()));
                estimate(row, position.referenced());
                row.text(charge.scale());
                estimate(row, position.fromReferenceLine());
                table.add(row);
            }
        }
        return table;
    }

    private static void estimate(CsvTable.Row row, Optional<Estimate> estimate) {
        row.number(estimate.map(Estimate::value).orElse(Double.NaN))
                .number(estimate.map(Estimate::standardUncertainty).orElse(OptionalDouble.empty()));
    }
}
