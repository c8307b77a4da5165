package spotline.run;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.peakfit.FitModel;
import spotline.reference.Line;

/**
 * Which narrow scans are fitted, and with what.
 *
 * @param defaultModels whether lines that have a default model are fitted with it
 * @param without lines that are not fitted
 * @param models by line: what the analyst fits it with, positions as measured
 */
public record PeakFitSettings(boolean defaultModels, Set<Line> without, Map<Line, FitModel> models) {
    public PeakFitSettings {
        without = Collections.unmodifiableSet(new TreeSet<>(without));
        models = Collections.unmodifiableMap(new LinkedHashMap<>(models));
    }
}
