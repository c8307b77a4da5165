package spotline.numerics.shape;

import java.util.Arrays;
import java.util.List;

/**
 * A sampled line, shifted, scaled and broadened by a Gaussian; 0 outside its samples.
 *
 * <p>The samples are joined by a natural cubic spline, whose convolution with a Gaussian is known in closed form: the
 * local polynomial's own, {@code f + sigma^2 f'' / 2}, and at each knot within reach the jump of f, f' and f''' there
 * times a function that falls off as the Gaussian does.
 *
 * <p>Parameters: position (eV; shift of the template's own origin), area (ordinate eV, over the samples), broadening
 * (eV, full width at half maximum of the Gaussian).
 */
public final class Template implements LineShape {
    static final int BROADENING = 2;
    private static final double REACH = 7;
    private static final List<ShapeParameter> PARAMETERS =
            List.of(ShapeParameter.position(), ShapeParameter.area(), ShapeParameter.width("broadening"));

    private final double[] x;
    private final double[] y; // of unit area
    private final double[] curvature;
    private final double narrowest; // full width at half maximum of the samples themselves, at first use

    /**
     * @param offsets abscissa of the samples reckoned from the template's origin, eV, strictly ascending
     * @param ordinates background removed, any scale; their integral must be above 0
     */
    public Template(double[] offsets, double[] ordinates) {
        if (offsets.length != ordinates.length || offsets.length < 4) {
            throw new IllegalArgumentException("a template needs 4 samples or more and an ordinate each, was "
                    + offsets.length + " and " + ordinates.length);
        }
        for (int i = 0; i < offsets.length; i++) {
            if (!Double.isFinite(offsets[i]) || !Double.isFinite(ordinates[i])) {
                throw new IllegalArgumentException("sample " + (i + 1) + " of a template is not finite");
            }
            if (i > 0 && !(offsets[i] > offsets[i - 1])) {
                throw new IllegalArgumentException(
                        "samples of a template must ascend, sample " + (i + 1) + " does not");
            }
        }
        x = offsets.clone();
        y = ordinates.clone();
        curvature = naturalSpline(x, y);
        double area = 0;
        for (int i = 1; i < x.length; i++) {
            double h = x[i] - x[i - 1];
            area += 0.5 * h * (y[i] + y[i - 1]) - h * h * h / 24 * (curvature[i] + curvature[i - 1]);
        }
        if (!(area > 0)) throw new IllegalArgumentException("the area of a template must be above 0, was " + area);
        for (int i = 0; i < x.length; i++) {
            y[i] /= area;
            curvature[i] /= area;
        }
        narrowest = fwhm(0, 1, 0);
    }

    @Override
    public String name() {
        return "template";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    double span() {
        return x[x.length - 1] - x[0];
    }

    double lowest() {
        return x[0];
    }

    double highest() {
        return x[x.length - 1];
    }

    /** Broadening that gives the whole shape a full width at half maximum. */
    double broadeningFor(double[] p, double fwhm) {
        if (fwhm < narrowest) {
            throw new IllegalArgumentException(
                    "fwhm must be at least the template's own " + narrowest + " eV, was " + fwhm);
        }
        double low = 0;
        double high = 2 * fwhm;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (fwhm(p[POSITION], 1, middle) < fwhm) low = middle;
            else high = middle;
        }
        return 0.5 * (low + high);
    }

    @Override
    public void derivatives(double[] at, double[] p, int from, double[][] rows, int row, ShapeScratch scratch) {
        double[] local = scratch.array(0, 3);
        double area = p[from + 1];
        double sigma = Math.max(p[from + 2], 0) / Voigt.FWHM_PER_SIGMA;
        for (int i = 0; i < at.length; i++) {
            broadened(at[i] - p[from], sigma, local);
            rows[row][i] = -area * local[1];
            rows[row + 1][i] = local[0];
            rows[row + 2][i] = area * local[2] / Voigt.FWHM_PER_SIGMA;
        }
    }

    @Override
    public void unitArea(double[] at, double[] p, int from, double[] out, ShapeScratch scratch) {
        double[] local = scratch.array(0, 3);
        double sigma = Math.max(p[from + 2], 0) / Voigt.FWHM_PER_SIGMA;
        for (int i = 0; i < at.length; i++) {
            broadened(at[i] - p[from], sigma, local);
            out[i] = local[0];
        }
    }

    /** Value, derivative by the abscissa and derivative by sigma. */
    private void broadened(double t, double sigma, double[] out) {
        Arrays.fill(out, 0, 3, 0);
        double square = sigma * sigma;
        if (t >= x[0] && t <= x[x.length - 1]) {
            int i = interval(t);
            double h = x[i + 1] - x[i];
            double b = (t - x[i]) / h;
            double a = 1 - b;
            double third = (curvature[i + 1] - curvature[i]) / h;
            double second = a * curvature[i] + b * curvature[i + 1];
            out[0] = a * y[i]
                    + b * y[i + 1]
                    + ((a * a * a - a) * curvature[i] + (b * b * b - b) * curvature[i + 1]) * h * h / 6
                    + 0.5 * square * second;
            out[1] = slope(i, a, b) + 0.5 * square * third;
            out[2] = sigma * second;
        }
        if (sigma <= 0) return;
        int last = x.length - 1;
        addJump(t - x[0], sigma, y[0], slope(0, 1, 0), third(0), out);
        addJump(t - x[last], sigma, -y[last], -slope(last - 1, 0, 1), -third(last - 1), out);
        double reach = REACH * sigma;
        int knot = Arrays.binarySearch(x, t - reach);
        for (int k = Math.max(knot < 0 ? -knot - 1 : knot, 1); k < last && x[k] < t + reach; k++) {
            addJump(t - x[k], sigma, 0, 0, third(k) - third(k - 1), out);
        }
    }

    /**
     * What a jump of f, f' and f''' at a knot adds, d beyond it: the convolution of {@code (d)_+^k} with the Gaussian
     * less the polynomial {@code (d^k convolved)} on the side where it already stands. Odd and even parts of the
     * Gaussian's repeated integrals, {@code F = Phi(-|u|)}, {@code g = phi(u)}.
     */
    private static void addJump(double d, double sigma, double value, double slope, double third, double[] out) {
        double u = Math.abs(d) / sigma;
        if (u > REACH) return;
        double g = Math.exp(-0.5 * u * u) / Math.sqrt(2 * Math.PI);
        double tail = 0.5 * Math.exp(-0.5 * u * u) * Faddeeva.erfcx(u * Math.sqrt(0.5));
        double side = d >= 0 ? 1 : -1;
        // step: Phi(u) - H(u)
        double step = -side * tail;
        out[0] += value * step;
        out[1] += value * g / sigma;
        out[2] -= value * g * d / (sigma * sigma);
        // ramp: sigma [g - u F]
        double ramp = sigma * (g - u * tail);
        out[0] += slope * ramp;
        out[1] += slope * step;
        out[2] += slope * g;
        // cube / 6: by the recursion of repeated integrals, k I_k = u I_(k-1) + I_(k-2)
        double second = 0.5 * (-u * (g - u * tail) + tail); // integral of the ramp, up to side
        double cube = (-u * second + (g - u * tail)) / 3;
        out[0] += third * sigma * sigma * sigma * cube;
        out[1] -= third * side * sigma * sigma * second;
        out[2] += third * sigma * sigma * (g - u * tail);
    }

    private double third(int i) {
        return (curvature[i + 1] - curvature[i]) / (x[i + 1] - x[i]);
    }

    private double slope(int i, double a, double b) {
        double h = x[i + 1] - x[i];
        return (y[i + 1] - y[i]) / h + ((3 * b * b - 1) * curvature[i + 1] - (3 * a * a - 1) * curvature[i]) * h / 6;
    }

    private int interval(double t) {
        int at = Arrays.binarySearch(x, t);
        int i = at < 0 ? -at - 2 : at;
        return Math.max(0, Math.min(i, x.length - 2));
    }

    /** Second derivatives of the natural cubic spline at its knots (tridiagonal elimination). */
    private static double[] naturalSpline(double[] x, double[] y) {
        int n = x.length;
        double[] second = new double[n];
        double[] work = new double[n];
        for (int i = 1; i < n - 1; i++) {
            double share = (x[i] - x[i - 1]) / (x[i + 1] - x[i - 1]);
            double pivot = share * second[i - 1] + 2;
            double bend = (y[i + 1] - y[i]) / (x[i + 1] - x[i]) - (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
            second[i] = (share - 1) / pivot;
            work[i] = (6 * bend / (x[i + 1] - x[i - 1]) - share * work[i - 1]) / pivot;
        }
        second[n - 1] = 0;
        for (int i = n - 2; i >= 0; i--) second[i] = second[i] * second[i + 1] + work[i];
        return second;
    }
}
