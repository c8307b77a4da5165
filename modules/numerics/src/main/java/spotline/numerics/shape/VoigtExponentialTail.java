package spotline.numerics.shape;

import java.util.Arrays;
import java.util.List;

/**
 * Voigt convolved with a one-sided exponential {@code exp(-t / decay) / decay}, t &gt; 0, towards larger abscissa.
 *
 * <p>The convolution {@code int_0^inf e^-t w(z - t decay / (sigma sqrt 2)) dt} is taken along a path turned by 45
 * degrees, so that the argument of w moves into the upper half plane, where w is smooth on the scale of the distance
 * travelled: Gauss-Legendre panels that double in length then give 1e-13. Derivatives are the same integral over the
 * derivatives of w.
 *
 * <p>Parameters: position (eV; of the Voigt before the tail), area (ordinate eV), gaussianFwhm (eV), lorentzianFwhm
 * (eV), decay (eV).
 */
public record VoigtExponentialTail() implements LineShape {
    private static final List<ShapeParameter> PARAMETERS = List.of(
            ShapeParameter.position(),
            ShapeParameter.area(),
            ShapeParameter.width("gaussianFwhm"),
            ShapeParameter.width("lorentzianFwhm"),
            ShapeParameter.width("decay"));
    /** Gauss-Legendre rule of 10 points on (-1, 1), positive half (Abramowitz and Stegun table 25.4). */
    private static final double[] NODE = {
        0.148874338981631211, 0.433395394129247191, 0.679409568299024406, 0.865063366688984511, 0.973906528517171720
    };

    private static final double[] WEIGHT = {
        0.295524224714752870, 0.269266719309996355, 0.219086362515982044, 0.149451349150580593, 0.066671344308688138
    };
    /** exp(-52 cos 45 deg) = 1e-16: the path ends here. */
    private static final double PATH_END = 52;

    private static final double TURN = Math.sqrt(0.5);

    @Override
    public String name() {
        return "voigt-exponential-tail";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        integrate(x, p, at, rows, row, scratch, true);
        double area = p[at + 1];
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double sigma = Voigt.sigma(p[at + 2], gamma);
        double scale = Math.sqrt(0.5) / sigma;
        double unit = scale * Faddeeva.PER_ROOT_PI;
        for (int i = 0; i < x.length; i++) {
            rows[row][i] *= -area * unit * scale;
            rows[row + 1][i] *= unit;
            rows[row + 2][i] *= -area * unit / (sigma * Voigt.FWHM_PER_SIGMA);
            rows[row + 3][i] *= -0.5 * area * unit * scale;
            rows[row + 4][i] *= -area * unit * scale;
        }
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double[][] rows = {out, out};
        integrate(x, p, at, rows, 0, scratch, false);
        double unit = Math.sqrt(0.5) / Voigt.sigma(p[at + 2], 0.5 * Math.max(p[at + 3], 0)) * Faddeeva.PER_ROOT_PI;
        for (int i = 0; i < x.length; i++) out[i] *= unit;
    }

    private static void integrate(
            double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch, boolean all) {
        Arrays.fill(rows[row + 1], 0, x.length, 0);
        for (int k = 0; all && k < 5; k++) Arrays.fill(rows[row + k], 0, x.length, 0);
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double sigma = Voigt.sigma(p[at + 2], gamma);
        double decay = Math.max(p[at + 4], 0);
        double from = 0;
        double to = 2 * decay > sigma + gamma ? (sigma + gamma) / decay : 2;
        while (from < PATH_END) {
            double half = 0.5 * (to - from);
            for (int j = 0; j < NODE.length; j++) {
                addNode(from + half * (1 - NODE[j]), half * WEIGHT[j], x, p, at, rows, row, scratch, all);
                addNode(from + half * (1 + NODE[j]), half * WEIGHT[j], x, p, at, rows, row, scratch, all);
            }
            from = to;
            to += Math.min(to, 8);
        }
    }

    /** One node of the path at {@code t = r exp(-i pi/4)}: sums of w', w, w + z w', w', t w' in the order of the rows. */
    private static void addNode(
            double r,
            double weight,
            double[] x,
            double[] p,
            int at,
            double[][] rows,
            int row,
            ShapeScratch scratch,
            boolean all) {
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double scale = Math.sqrt(0.5) / Voigt.sigma(p[at + 2], gamma);
        double t = r * TURN;
        double angle = t - 0.25 * Math.PI;
        double re = weight * Math.exp(-t) * Math.cos(angle);
        double im = weight * Math.exp(-t) * Math.sin(angle);
        double lag = Math.max(p[at + 4], 0) * t;
        double[][] w = scratch.rows(6);
        for (int k = 0; k < 6; k++) w[k] = scratch.array(8 + k, x.length);
        VoigtKernel.evaluate(x, p[at] + lag, scale, (gamma + lag) * scale, w, ShapeScratch.NONE, scratch);
        addProduct(rows[row + 1], w[0], w[4], x.length, re, -im);
        if (!all) return;
        addProduct(rows[row], w[1], w[2], x.length, re, -im);
        addProduct(rows[row + 2], w[3], w[5], x.length, re, -im);
        addProduct(rows[row + 3], w[1], w[2], x.length, im, re);
        addProduct(rows[row + 4], w[1], w[2], x.length, t * (re + im), t * (re - im));
    }

    private static void addProduct(double[] sum, double[] re, double[] im, int n, double byRe, double byIm) {
        for (int i = 0; i < n; i++) sum[i] += byRe * re[i] + byIm * im[i];
    }
}
