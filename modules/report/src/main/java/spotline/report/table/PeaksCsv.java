package spotline.report.table;

import java.util.List;
import spotline.run.FittedPeak;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row a fitted peak. */
public final class PeaksCsv {
    public static final String FILE = "peaks.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "spectrum",
            "line",
            "peak",
            "shape",
            "measured_position_ev",
            "referenced_position_ev",
            "position_u",
            "fwhm_ev",
            "fwhm_u",
            "area",
            "area_u",
            "reduced_chi_square");

    private PeaksCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            for (FittedPeak peak : spot.peaks()) {
                table.add(new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text(peak.spectrum())
                        .text(peak.line())
                        .text(peak.peak())
                        .text(peak.shape())
                        .number(peak.measuredPosition().value())
                        .number(peak.referencedEv())
                        .number(peak.measuredPosition().standardUncertainty())
                        .number(peak.fwhm().value())
                        .number(peak.fwhm().standardUncertainty())
                        .number(peak.area().value())
                        .number(peak.area().standardUncertainty())
                        .number(peak.reducedChiSquare()));
            }
        }
        return table;
    }
}
