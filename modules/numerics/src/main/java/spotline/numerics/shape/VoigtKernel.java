package spotline.numerics.shape;

/**
 * w, w' and w + z w' along a line of constant imaginary part, over whole arrays.
 *
 * <p>Where |z| is below 8 this is the expansion of J. A. C. Weideman, SIAM J. Numer. Anal. 31 (1994) 1497, N = 38 (3e-15 of
 * |w|); above, the asymptotic series.
 *
 * <p>Where the real part is vanishingly small beside the imaginary one (a Lorentzian width under about 7 % of the Gaussian
 * one, away from the centre) points go through {@link Faddeeva} one by one, which keeps the digits of each.
 */
final class VoigtKernel {
    static final double NEAR = 8;
    private static final double DISTANT = 16;
    private static final double SMALL_Y = 0.06;
    private static final double SMALL_Y_CORE = 2.2;
    private static final int POINT = 23;

    private VoigtKernel() {}

    /**
     * Rows at {@code z = (x - position) scale + i y}.
     *
     * @param out Re w, Re w', Im w', Re(w + z w'), Im w, and Im(w + z w') if there is a sixth
     * @param factors what the first four are multiplied by, in which case the fifth is only scratch; none where there are six
     */
    static void evaluate(
            double[] x,
            double position,
            double scale,
            double y,
            double[][] out,
            double[] factors,
            ShapeScratch scratch) {
        int n = x.length;
        if (!scratch.ascends(x)) {
            points(x, 0, n, position, scale, y, out, factors, scratch.array(POINT, 6));
            return;
        }
        FaddeevaLane lane = scratch.lane();
        lane.set(x, position, scale, y, out, factors, scratch);
        double nearHalf = y < NEAR ? Math.sqrt(NEAR * NEAR - y * y) / scale : 0;
        double distantHalf = y < DISTANT ? Math.sqrt(DISTANT * DISTANT - y * y) / scale : 0;
        int a = ShapeScratch.firstFrom(x, position - distantHalf);
        int b = ShapeScratch.firstFrom(x, position - nearHalf);
        int c = y < NEAR ? ShapeScratch.firstAbove(x, position + nearHalf) : b;
        int d = y < DISTANT ? ShapeScratch.firstAbove(x, position + distantHalf) : c;
        lane.far(0, a, true);
        lane.far(a, b, false);
        lane.far(c, d, false);
        lane.far(d, n, true);
        if (y >= SMALL_Y) {
            lane.near(b, c);
            return;
        }
        int low = Math.max(b, ShapeScratch.firstFrom(x, position - SMALL_Y_CORE / scale));
        int high = Math.min(c, ShapeScratch.firstAbove(x, position + SMALL_Y_CORE / scale));
        double[] point = scratch.array(POINT, 6);
        points(x, b, low, position, scale, y, out, factors, point);
        lane.near(low, high);
        points(x, high, c, position, scale, y, out, factors, point);
        if (y < Faddeeva.SMALL_Y) addGaussian(x, b, c, position, scale, out.length > 5 ? 1 : factors[0], out[0]);
    }

    private static void points(
            double[] x,
            int from,
            int to,
            double position,
            double scale,
            double y,
            double[][] out,
            double[] factors,
            double[] point) {
        for (int i = from; i < to; i++) {
            Faddeeva.withDerivatives((x[i] - position) * scale, y, point);
            if (out.length > 5) {
                out[0][i] = point[0];
                out[1][i] = point[2];
                out[2][i] = point[3];
                out[3][i] = point[4];
                out[4][i] = point[1];
                out[5][i] = point[5];
            } else {
                out[0][i] = factors[0] * point[0];
                out[1][i] = factors[1] * point[2];
                out[2][i] = factors[2] * point[3];
                out[3][i] = factors[3] * point[4];
            }
        }
    }

    /** The exponential that the series lacks, felt only against a vanishing real part. */
    private static void addGaussian(
            double[] x, int b, int c, double position, double scale, double factor, double[] re) {
        int end = ShapeScratch.firstAbove(x, position + Faddeeva.GAUSSIAN_END / scale);
        for (int i = ShapeScratch.firstFrom(x, position - Faddeeva.GAUSSIAN_END / scale); i < end; i++) {
            if (i >= b && i < c) continue;
            double t = (x[i] - position) * scale;
            re[i] += factor * Math.exp(-t * t);
        }
    }
}
