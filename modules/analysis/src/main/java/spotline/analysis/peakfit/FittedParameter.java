package spotline.analysis.peakfit;

import spotline.core.Estimate;

/** One shape parameter after the fit. */
public record FittedParameter(Estimate value, Hold hold) {
    /** What held it. */
    public enum Hold {
        FREE,
        /** At its bound, or tied by a ratio or offset that is at its bound. */
        AT_LOWER_BOUND,
        AT_UPPER_BOUND,
        /** Follows another component, by a constant or by a number that is itself free. */
        TIED,
        FIXED
    }

    boolean atBound() {
        return hold == Hold.AT_LOWER_BOUND || hold == Hold.AT_UPPER_BOUND;
    }
}
