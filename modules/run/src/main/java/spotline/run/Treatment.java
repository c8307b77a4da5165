package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import spotline.analysis.charge.ChargeSettings;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.intensity.IntensitySettings;
import spotline.analysis.quantify.FactorSettings;
import spotline.reference.Line;

/**
 * The full settings of every step, resolved: no step sees a missing one.
 *
 * @param factors of computed sensitivity factors
 * @param lines what is stated for single lines by hand
 * @param json the same as data, for the record
 */
public record Treatment(
        IdentifySettings identify,
        ChargeSettings charge,
        IntensitySettings narrow,
        IntensitySettings survey,
        FactorSettings factors,
        PreparationSettings prepare,
        PeakFitSettings peakFit,
        QuantifySettings quantify,
        Limits limits,
        Map<Line, LineSettings> lines,
        JsonNode json) {
    public Treatment {
        lines = Map.copyOf(lines);
    }

    /** What is stated for a line by hand; nothing of most. */
    public LineSettings line(Line line) {
        return lines.getOrDefault(line.whole(), LineSettings.NONE);
    }
}
