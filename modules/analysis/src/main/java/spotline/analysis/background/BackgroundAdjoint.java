package spotline.analysis.background;

/**
 * Derivative of any weighted sum of background channels with respect to the data: the transpose of the background's
 * Jacobian. One such product gives the sensitivities of an area, n of them the variance of the curve, without ever
 * holding an n x n matrix.
 */
@FunctionalInterface
interface BackgroundAdjoint {
    /**
     * @param weights one a channel of the window
     * @return sum over i of {@code weights[i] * dB_i/dy_j}, one a channel j of the region
     */
    double[] of(double[] weights);
}
