package spotline.numerics.shape;

/**
 * The Faddeeva function {@code w(z) = exp(-z^2) erfc(-i z)}, one point at a time, to about 1e-15 of each component in
 * the upper half plane.
 *
 * <p>Source: below |z| = 8 the trapezium and midpoint rules with residue correction of M. Al Azah and S. N.
 * Chandler-Wilde, SIAM J. Numer. Anal. 59 (2021) 2346 (N = 11); above, the asymptotic series
 * {@code i / (sqrt(pi) z) (1 + 1/(2 z^2) + 3/(4 z^4) + ...)} (Abramowitz and Stegun 7.1.23).
 */
public final class Faddeeva {
    static final double PER_ROOT_PI = 1 / Math.sqrt(Math.PI);
    /** Where the asymptotic series takes over. */
    static final double FAR = 8;
    /** Below this imaginary part the exponential that the series lacks shows in the real part. */
    static final double SMALL_Y = 1e-5;
    /** exp(-27^2) underflows. */
    static final double GAUSSIAN_END = 27;

    private static final double STEP = Math.sqrt(Math.PI / 12);
    private static final int NODES = 12;
    /** Coefficients of eta = 2 z^2 delta - 1 = 3/(2 z^2) + 15/(4 z^4) + ..., where w = i (1 + delta) / (sqrt(pi) z). */
    private static final double[] ETA = etaSeries(17);

    private static final double[] MIDPOINT_WEIGHTS = weights(0.5);
    private static final double[] TRAPEZIUM_WEIGHTS = weights(1);

    private Faddeeva() {}

    private static double[] weights(double start) {
        double[] weights = new double[NODES];
        for (int k = 0; k < NODES; k++) {
            double t = (k + start) * STEP;
            weights[k] = Math.exp(-t * t);
        }
        return weights;
    }

    static double[] etaSeries(int terms) {
        double[] series = new double[terms];
        double term = 1;
        for (int k = 0; k < terms; k++) {
            term *= (2 * k + 3) / 2.0;
            series[k] = term;
        }
        return series;
    }

    /** The real and the imaginary part of w(x + i y) into {@code out[0]} and {@code out[1]}. */
    public static void w(double x, double y, double[] out) {
        if (y < 0) {
            lowerHalf(x, y, out);
            return;
        }
        double ax = Math.abs(x);
        if (ax * ax + y * y >= FAR * FAR) far(ax, y, out);
        else near(ax, y, out);
        if (x < 0) out[1] = -out[1];
    }

    /** Real part of w(x + i y), the Voigt function. */
    public static double voigt(double x, double y) {
        double[] out = new double[2];
        w(x, y, out);
        return out[0];
    }

    /** Scaled complementary error function {@code exp(x^2) erfc(x)}. */
    public static double erfcx(double x) {
        return voigt(0, x);
    }

    /** {@code w(z) = 2 exp(-z^2) - w(-z)}; overflows to infinity as the function itself does. */
    private static void lowerHalf(double x, double y, double[] out) {
        w(-x, -y, out);
        double size = 2 * Math.exp((y - x) * (y + x));
        double angle = 2 * x * y;
        out[0] = size * Math.cos(angle) - out[0];
        out[1] = -size * Math.sin(angle) - out[1];
    }

    private static void far(double x, double y, double[] out) {
        double scale = Math.max(x, y);
        double a = x / scale;
        double b = y / scale;
        double square = a * a + b * b;
        double re = a / square / scale; // 1/z
        double im = -b / square / scale;
        double s = (re - im) * (re + im);
        double t = 2 * re * im;
        double etaRe = 0;
        double etaIm = 0;
        for (int k = ETA.length - 1; k >= 0; k--) {
            double r = etaRe + ETA[k];
            etaRe = r * s - etaIm * t;
            etaIm = r * t + etaIm * s;
        }
        // delta = (1 + eta) / (2 z^2)
        double deltaRe = 0.5 * ((1 + etaRe) * s - etaIm * t);
        double deltaIm = 0.5 * ((1 + etaRe) * t + etaIm * s);
        out[0] = -PER_ROOT_PI * ((1 + deltaRe) * im + deltaIm * re);
        out[1] = PER_ROOT_PI * ((1 + deltaRe) * re - deltaIm * im);
        // the exponential that the series lacks is felt only against a vanishing real part
        if (y < SMALL_Y && x < GAUSSIAN_END) out[0] += Math.exp(-x * x);
    }

    private static void near(double x, double y, double[] out) {
        boolean plain = y >= Math.max(x, Math.PI / STEP);
        double phase = x / STEP - Math.floor(x / STEP);
        boolean midpoint = plain || !(y < x && phase >= 0.25 && phase <= 0.75);
        double square = x * x + y * y;
        double re = 0;
        double im = 0;
        double start = midpoint ? 0.5 : 1;
        for (int k = 0; k < (midpoint ? NODES : NODES - 1); k++) {
            double t = (k + start) * STEP;
            double tt = t * t;
            double weight = (midpoint ? MIDPOINT_WEIGHTS : TRAPEZIUM_WEIGHTS)[k]
                    / (((x - t) * (x - t) + y * y) * ((x + t) * (x + t) + y * y));
            re += weight * (square + tt);
            im += weight * (square - tt);
        }
        double factor = 2 * STEP / Math.PI;
        re *= factor * y;
        im *= factor * x;
        if (!midpoint) {
            re += STEP / Math.PI * y / square;
            im += STEP / Math.PI * x / square;
        }
        if (!plain) {
            double sign = midpoint ? 1 : -1;
            double growth = Math.exp(2 * Math.PI * y / STEP);
            double turn = 2 * Math.PI * x / STEP;
            double dRe = 1 + sign * growth * Math.cos(turn);
            double dIm = -sign * growth * Math.sin(turn);
            double size = 2 * Math.exp((y - x) * (y + x)) / (dRe * dRe + dIm * dIm);
            double cos = Math.cos(2 * x * y);
            double sin = -Math.sin(2 * x * y);
            re += size * (cos * dRe + sin * dIm);
            im += size * (sin * dRe - cos * dIm);
        }
        out[0] = re;
        out[1] = im;
    }

    /**
     * w, w' and w + z w' in the upper half plane as three complex numbers, without the cancellation that their closed
     * forms suffer at large |z|.
     */
    static void withDerivatives(double x, double y, double[] out) {
        if (x * x + y * y < FAR * FAR) {
            w(x, y, out);
            double re = out[0];
            double im = out[1];
            out[2] = -2 * (x * re - y * im);
            out[3] = -2 * (x * im + y * re) + 2 * PER_ROOT_PI;
            out[4] = re + x * out[2] - y * out[3];
            out[5] = im + x * out[3] + y * out[2];
            return;
        }
        double r = 1 / (x * x + y * y);
        double re = x * r;
        double im = -y * r;
        double s = (re - im) * (re + im);
        double t = 2 * re * im;
        double etaRe = 0;
        double etaIm = 0;
        for (int k = ETA.length - 1; k >= 0; k--) {
            double sum = etaRe + ETA[k];
            etaRe = sum * s - etaIm * t;
            etaIm = sum * t + etaIm * s;
        }
        double deltaRe = 0.5 * ((1 + etaRe) * s - etaIm * t);
        double deltaIm = 0.5 * ((1 + etaRe) * t + etaIm * s);
        out[0] = -PER_ROOT_PI * ((1 + deltaRe) * im + deltaIm * re);
        out[1] = PER_ROOT_PI * ((1 + deltaRe) * re - deltaIm * im);
        if (y < SMALL_Y && Math.abs(x) < GAUSSIAN_END) out[0] += Math.exp(-x * x);
        // w' = -2 i delta / sqrt(pi), w + z w' = i (delta - eta) / (sqrt(pi) z)
        out[2] = 2 * PER_ROOT_PI * deltaIm;
        out[3] = -2 * PER_ROOT_PI * deltaRe;
        double gapRe = deltaRe - etaRe;
        double gapIm = deltaIm - etaIm;
        out[4] = -PER_ROOT_PI * (gapRe * im + gapIm * re);
        out[5] = PER_ROOT_PI * (gapRe * re - gapIm * im);
    }
}
