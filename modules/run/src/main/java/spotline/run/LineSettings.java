package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.background.Background;
import spotline.analysis.intensity.IntensitySettings;
import spotline.reference.Line;
import spotline.spectra.Window;

/**
 * What the analyst states for one line by hand.
 *
 * @param window in measured binding energy, in place of the one laid on the data
 * @param background in place of the treatment's; nothing stands in for it where it does not fit
 */
public record LineSettings(Optional<Window> window, Optional<Background> background) {
    static final LineSettings NONE = new LineSettings(Optional.empty(), Optional.empty());

    /** By the whole line. Errors: {@link IllegalArgumentException} for a name that is no line, or a window upside down. */
    static Map<Line, LineSettings> of(JsonNode lines) {
        Map<Line, LineSettings> stated = new LinkedHashMap<>();
        lines.properties()
                .forEach(entry ->
                        stated.put(Line.parse(entry.getKey()).whole(), bound(entry.getKey(), entry.getValue())));
        return stated;
    }

    IntensitySettings over(IntensitySettings settings) {
        return background.map(settings::on).orElse(settings);
    }

    private static LineSettings bound(String line, JsonNode json) {
        Optional<Window> window = Optional.empty();
        if (json.path("window").isObject()) {
            double low = json.path("window").path("lowEv").doubleValue();
            double high = json.path("window").path("highEv").doubleValue();
            if (!(low < high)) {
                throw new IllegalArgumentException(
                        "a window of " + line + " from " + low + " to " + high + " eV, its ends in the wrong order");
            }
            window = Optional.of(new Window(low, high));
        }
        return new LineSettings(
                window,
                json.path("background").isObject()
                        ? Optional.of(BackgroundBinding.of(json.path("background")))
                        : Optional.empty());
    }
}
