package spotline.report.table;

import java.util.List;
import spotline.analysis.intensity.Intensity;
import spotline.report.facts.Spectra;
import spotline.run.MeasuredIntensity;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row an intensity taken from a window. */
public final class IntensitiesCsv {
    public static final String FILE = "intensities.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "spectrum",
            "line",
            "window_low_ev",
            "window_high_ev",
            "background",
            "area",
            "area_unit",
            "standard_uncertainty",
            "transmission_applied");

    private IntensitiesCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            for (MeasuredIntensity measured : spot.intensities()) {
                Intensity intensity = measured.intensity();
                table.add(new CsvTable.Row()
                        .text(spot.spot())
                        .text(spot.sample())
                        .text(intensity.spectrum())
                        .text(intensity.line().toString())
                        .number(intensity.window().lowEv())
                        .number(intensity.window().highEv())
                        .text(intensity.background())
                        .number(intensity.area().value())
                        .text(Spectra.areaUnit(spot, intensity.spectrum()))
                        .number(intensity.area().standardUncertainty())
                        .text(measured.transmissionApplied()));
            }
        }
        return table;
    }
}
