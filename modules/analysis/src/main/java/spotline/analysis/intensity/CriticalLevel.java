package spotline.analysis.intensity;

import org.apache.commons.math3.special.Erf;

/**
 * When an area is more than noise: L_C = k s0, L_D = 2.71 + (k + 1.645) s0, with s0^2 the variance of the net area when
 * nothing is there: the background counts in the window plus the variance of the background's estimate. For a line of
 * known place k = 1.645 (both errors at 5 %); where the best of several places is taken, k keeps the error of the first
 * kind at 5 % for all of them together.
 *
 * <p>Units: counts. Errors: none.
 *
 * <p>Source: L.A. Currie, Anal. Chem. 40, 586 (1968); ISO 19668. Several places: Z. Sidak, J. Am. Stat. Assoc. 62, 626
 * (1967), from memory.
 *
 * @param critical decision threshold, counts
 * @param detection detection limit, counts
 * @param deviation s0, counts
 */
public record CriticalLevel(double critical, double detection, double deviation) {
    private static final double ONE_SIDED_95 = 1.645;

    /**
     * @param backgroundCounts under the window, counts
     * @param backgroundVariance of the subtracted background's sum, counts squared
     */
    public static CriticalLevel of(double backgroundCounts, double backgroundVariance) {
        return withFactor(s0(backgroundCounts, backgroundVariance), ONE_SIDED_95);
    }

    /** @param places number of independent places among which the best is taken, 1 or more */
    public static CriticalLevel ofBest(double backgroundCounts, double backgroundVariance, double places) {
        if (!(places > 1)) return of(backgroundCounts, backgroundVariance);
        double each = 1 - Math.pow(0.95, 1 / places);
        return withFactor(s0(backgroundCounts, backgroundVariance), Math.sqrt(2) * Erf.erfcInv(2 * each));
    }

    /** The levels of a rule that asks for k deviations, where these ask for less. */
    CriticalLevel atLeast(double k) {
        return k * deviation > critical ? withFactor(deviation, k) : this;
    }

    private static CriticalLevel withFactor(double s0, double k) {
        return new CriticalLevel(k * s0, 2.71 + (k + ONE_SIDED_95) * s0, s0);
    }

    private static double s0(double backgroundCounts, double backgroundVariance) {
        return Math.sqrt(Math.max(0, backgroundCounts) + Math.max(0, backgroundVariance));
    }
}
