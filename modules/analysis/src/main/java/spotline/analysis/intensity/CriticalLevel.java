package spotline.analysis.intensity;

/**
 * When an area is more than noise: L_C = 1.645 s0, L_D = 2.71 + 3.29 s0, with s0^2 the variance of the net area when
 * nothing is there: the background counts in the window plus the variance of the background's estimate (both errors at
 * 5 %).
 *
 * <p>Source: L.A. Currie, Anal. Chem. 40, 586 (1968); ISO 19668.
 *
 * @param critical decision threshold, counts
 * @param detection detection limit, counts
 */
public record CriticalLevel(double critical, double detection) {
    /**
     * @param backgroundCounts under the window, counts
     * @param backgroundVariance of the subtracted background's sum, counts squared
     */
    public static CriticalLevel of(double backgroundCounts, double backgroundVariance) {
        double s0 = Math.sqrt(Math.max(0, backgroundCounts) + Math.max(0, backgroundVariance));
        return new CriticalLevel(1.645 * s0, 2.71 + 3.29 * s0);
    }
}
