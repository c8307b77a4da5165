package spotline.report.table;

import java.util.List;
import spotline.analysis.charge.ChargeReference;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row a spot: the energy reference and what it is worth. */
public final class ChargeCsv {
    public static final String FILE = "charge.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "electrical_state",
            "method",
            "reference_line",
            "reference_energy_ev",
            "measured_energy_ev",
            "shift_ev",
            "measurement_u_ev",
            "reference_u_ev",
            "standard_uncertainty_ev",
            "verdict");

    private ChargeCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            ChargeReference charge = spot.charge();
            table.add(new CsvTable.Row()
                    .text(spot.spot())
                    .text(spot.sample())
                    .text(spot.electricalState())
                    .text(charge.method().word())
                    .text(charge.referenceLine())
                    .number(charge.referenceEv())
                    .number(charge.measuredEv())
                    .number(charge.shiftEv())
                    .number(charge.measurementU())
                    .number(charge.referenceU())
                    .number(charge.standardUncertainty())
                    .text(charge.verdict().word()));
        }
        return table;
    }
}
