package spotline.analysis.intensity;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What tells a line from noise. */
public enum DetectionRule {
    /** Its area in a window just wide enough for it, above a straight background, exceeds the critical level. */
    CRITICAL_LEVEL,
    /** The peak search must find it as well: for spectra whose background is no straight line anywhere. */
    CLEAR_PEAK;

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<DetectionRule> of(String word) {
        return Arrays.stream(values()).filter(r -> r.word().equals(word)).findFirst();
    }
}
