package spotline.numerics.shape;

import java.util.Arrays;
import java.util.List;

/**
 * Gaussian convolved with a Lorentzian: {@code A Re w(z) / (sigma sqrt(2 pi))} with
 * {@code z = (x - E + i gamma) / (sigma sqrt 2)}, sigma the Gaussian's standard deviation, gamma the Lorentzian's half
 * width. All derivatives come from the same w, by {@code w' = -2 z w + 2 i / sqrt(pi)}.
 *
 * <p>Parameters: position (eV), area (ordinate eV), gaussianFwhm (eV), lorentzianFwhm (eV).
 */
public record Voigt() implements LineShape {
    /** Full width at half maximum of a Gaussian over its standard deviation. */
    static final double FWHM_PER_SIGMA = Math.sqrt(8 * Math.log(2));

    private static final List<ShapeParameter> PARAMETERS = List.of(
            ShapeParameter.position(),
            ShapeParameter.area(),
            ShapeParameter.width("gaussianFwhm"),
            ShapeParameter.width("lorentzianFwhm"));

    @Override
    public String name() {
        return "voigt";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public PeakMeasure measure(double... p) {
        return ShapeMeasure.ofSymmetric(this, p);
    }

    /** A Gaussian much narrower than the Lorentzian no longer shows: this keeps z finite. */
    static double sigma(double gaussianFwhm, double gamma) {
        return Math.max(gaussianFwhm / FWHM_PER_SIGMA, Math.max(1e-10 * gamma, 1e-30));
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double area = p[at + 1];
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double sigma = sigma(p[at + 2], gamma);
        double scale = Math.sqrt(0.5) / sigma;
        double unit = scale * Faddeeva.PER_ROOT_PI;
        double y = gamma * scale;
        double[][] w = scratch.rows(5);
        w[0] = rows[row + 1];
        w[1] = rows[row];
        w[2] = rows[row + 3];
        w[3] = rows[row + 2];
        w[4] = scratch.array(0, x.length);
        double[] factors = scratch.array(1, 4);
        factors[0] = unit;
        factors[1] = -area * unit * scale;
        factors[2] = -0.5 * area * unit * scale;
        factors[3] = -area * unit / (sigma * FWHM_PER_SIGMA);
        VoigtKernel.evaluate(x, p[at], scale, y, w, factors, scratch);
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double scale = Math.sqrt(0.5) / sigma(p[at + 2], gamma);
        double[][] w = scratch.rows(5);
        w[0] = out;
        for (int k = 1; k < 5; k++) w[k] = scratch.array(k - 1, x.length);
        double[] factors = scratch.array(5, 4);
        Arrays.fill(factors, 0, 4, 0);
        factors[0] = scale * Faddeeva.PER_ROOT_PI;
        VoigtKernel.evaluate(x, p[at], scale, gamma * scale, w, factors, scratch);
    }
}
