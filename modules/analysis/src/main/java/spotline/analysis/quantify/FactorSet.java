package spotline.analysis.quantify;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What a set of sensitivity factors is and what it takes for granted.
 *
 * @param name for tables and reports
 * @param source where the factors come from
 * @param photonEnergyEv the excitation they hold for, eV; empty where they are computed for any
 * @param sourceAnalyserAngleDeg the angle they hold for, degree; empty where they are computed for any
 * @param transmission where the spectrometer's response is taken care of
 * @param meanFreePath how the mean free path is in the factors, in words
 * @param backgrounds families of background they were made for; none where any will do
 * @param shakeUpInside whether the intensity of a line includes its shake-up
 * @param lines what is covered, in words
 */
public record FactorSet(
        String name,
        String source,
        FactorKind kind,
        OptionalDouble photonEnergyEv,
        OptionalDouble sourceAnalyserAngleDeg,
        Transmission transmission,
        String meanFreePath,
        List<BackgroundFamily> backgrounds,
        boolean shakeUpInside,
        String lines) {
    /** Where the response of the spectrometer is. */
    public enum Transmission {
        /** Intensities are divided by it before they meet the factor. */
        DIVIDED_OUT,
        /** It is in the factors: intensities stay as they were counted. */
        IN_THE_FACTORS;

        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Backgrounds that take alike much from a line. */
    public enum BackgroundFamily {
        STRAIGHT,
        SHIRLEY,
        TOUGAARD;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public FactorSet {
        if (name.isBlank()) throw new IllegalArgumentException("a set of factors needs a name");
        requireNonNull(source, "source");
        requireNonNull(kind, "kind");
        requireNonNull(transmission, "transmission");
        backgrounds = List.copyOf(backgrounds);
    }

    /** One sentence for a methods paragraph. */
    public String describe() {
        String excitation = photonEnergyEv.isPresent()
                ? String.format(Locale.ROOT, ", for %.1f eV", photonEnergyEv.getAsDouble())
                : "";
        String made = backgrounds.isEmpty()
                ? ""
                : ", made for "
                        + String.join(
                                " or ",
                                backgrounds.stream().map(BackgroundFamily::word).toList())
                        + " backgrounds";
        return name + " (" + kind.word() + excitation + made + "; mean free path: " + meanFreePath + ")";
    }
}
