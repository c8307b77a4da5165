package spotline.spectra;

import java.util.OptionalDouble;

/**
 * How an ordinate becomes counts: counts = ordinate x countsPerUnit. Unknown statistics are unknown, not 1.
 *
 * @param countsPerUnit 1 for counts, dwell time x scans in seconds for counts per second
 */
public record Counting(OptionalDouble countsPerUnit) {
    public static final Counting UNKNOWN = new Counting(OptionalDouble.empty());
    public static final Counting COUNTS = new Counting(OptionalDouble.of(1));

    public Counting {
        if (countsPerUnit.isPresent() && !(countsPerUnit.getAsDouble() > 0)) {
            throw new IllegalArgumentException("counts per unit must be above 0, was " + countsPerUnit.getAsDouble());
        }
    }

    /** A rate in counts per second over a known collection time; unknown when the time is. */
    public static Counting rate(OptionalDouble secondsPerChannel) {
        return new Counting(secondsPerChannel);
    }
}
