package spotline.spectra;

import java.util.OptionalDouble;

/**
 * How long each channel was counted.
 *
 * @param dwellSeconds collection time per scan and channel, s
 * @param scans number of scans summed into the ordinate
 * @param deadTimeSeconds dead time of pulse counting, s
 */
public record Timing(OptionalDouble dwellSeconds, OptionalDouble scans, OptionalDouble deadTimeSeconds) {
    public static final Timing UNKNOWN =
            new Timing(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** Seconds counted in each channel: dwell x scans; empty when either is unknown. */
    public OptionalDouble secondsPerChannel() {
        return dwellSeconds.isPresent() && scans.isPresent()
                ? OptionalDouble.of(dwellSeconds.getAsDouble() * scans.getAsDouble())
                : OptionalDouble.empty();
    }
}
