package spotline.numerics.shape;

import java.util.List;
import java.util.Optional;

/**
 * Doniach-Sunjic line convolved with a Gaussian, tail towards larger binding energy:
 * {@code D(x) = cos(pi a/2 - (1 - a) atan(x / g)) / (x^2 + g^2)^((1 - a)/2)}, x = BE - E, a the asymmetry, g the
 * Lorentzian's half width.
 *
 * <p>Its integral diverges for a above 0: the area parameter is that of D, before the Gaussian, between the limits
 * that the shape carries. The maximum does not lie at the position but at {@code g tan(pi a / (2 (2 - a)))} above it
 * (unconvolved).
 *
 * <p>Parameters: position (eV), area (ordinate eV, within the limits), gaussianFwhm (eV), lorentzianFwhm (eV),
 * asymmetry (1, 0 to 0.5).
 *
 * <p>Source: S. Doniach, M. Sunjic, J. Phys. C 3 (1970) 285; convolution by the integral representation of the
 * parabolic cylinder function (NIST DLMF 12.5.1), see {@link CylinderIntegral}.
 *
 * @param limits interval that the area is taken over, reckoned from the position
 */
public record DoniachSunjic(AreaLimits limits) implements LineShape {
    private static final List<ShapeParameter> PARAMETERS = List.of(
            ShapeParameter.position(),
            ShapeParameter.area(),
            ShapeParameter.width("gaussianFwhm"),
            ShapeParameter.width("lorentzianFwhm"),
            ShapeParameter.share("asymmetry", 0.5));

    /** Area between 20 eV below and 20 eV above the position: common practice, no source. */
    public DoniachSunjic() {
        this(new AreaLimits(20, 20));
    }

    @Override
    public String name() {
        return "doniach-sunjic";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public Optional<AreaLimits> areaLimits() {
        return Optional.of(limits);
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double area = p[at + 1];
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double sigma = Voigt.sigma(p[at + 2], gamma);
        double alpha = p[at + 4];
        double integral = integral(alpha, gamma);
        double size = Math.pow(sigma, alpha - 1) / integral;
        double cos = Math.cos(0.5 * Math.PI * alpha);
        double sin = Math.sin(0.5 * Math.PI * alpha);
        double[][] q = CylinderIntegral.evaluate(x, p[at], sigma, gamma, alpha, true, scratch);
        double slope = area * size / sigma;
        double byGamma = integralByGamma(alpha, gamma) / integral;
        double byAlpha = integralByAlpha(alpha, gamma) / integral;
        double logSigma = Math.log(sigma);
        for (int i = 0; i < x.length; i++) {
            double re = cos * q[0][i] - sin * q[1][i];
            double im = sin * q[0][i] + cos * q[1][i];
            double firstRe = cos * q[2][i] - sin * q[3][i];
            double firstIm = sin * q[2][i] + cos * q[3][i];
            double secondRe = cos * q[4][i] - sin * q[5][i];
            double unit = size * re;
            double value = area * unit;
            rows[row][i] = slope * firstIm;
            rows[row + 1][i] = unit;
            rows[row + 2][i] = -slope * secondRe / Voigt.FWHM_PER_SIGMA;
            rows[row + 3][i] = 0.5 * (slope * firstRe - value * byGamma);
            rows[row + 4][i] = area * size * (cos * q[6][i] - sin * q[7][i] + logSigma * re - 0.5 * Math.PI * im)
                    - value * byAlpha;
        }
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double gamma = 0.5 * Math.max(p[at + 3], 0);
        double sigma = Voigt.sigma(p[at + 2], gamma);
        double alpha = p[at + 4];
        double size = Math.pow(sigma, alpha - 1) / integral(alpha, gamma);
        double cos = Math.cos(0.5 * Math.PI * alpha);
        double sin = Math.sin(0.5 * Math.PI * alpha);
        double[][] q = CylinderIntegral.evaluate(x, p[at], sigma, gamma, alpha, false, scratch);
        for (int i = 0; i < x.length; i++) out[i] = size * (cos * q[0][i] - sin * q[1][i]);
    }

    /** Integral of D between the limits: {@code [r^a sin(a b) / a]}, r^2 = x^2 + g^2, b = pi/2 + atan(x / g). */
    double integral(double alpha, double gamma) {
        return primitive(alpha, gamma, limits.aboveEv()) - primitive(alpha, gamma, -limits.belowEv());
    }

    private static double primitive(double alpha, double gamma, double x) {
        double b = Math.atan2(gamma, -x);
        double angle = alpha * b;
        double sinc = angle == 0 ? b : Math.sin(angle) / alpha;
        return Math.pow(Math.hypot(x, gamma), alpha) * sinc;
    }

    private double integralByGamma(double alpha, double gamma) {
        return slopeByGamma(alpha, gamma, limits.aboveEv()) - slopeByGamma(alpha, gamma, -limits.belowEv());
    }

    private static double slopeByGamma(double alpha, double gamma, double x) {
        return Math.pow(Math.hypot(x, gamma), alpha - 1)
                * Math.sin(0.5 * Math.PI * alpha - (1 - alpha) * Math.atan2(x, gamma));
    }

    private double integralByAlpha(double alpha, double gamma) {
        return slopeByAlpha(alpha, gamma, limits.aboveEv()) - slopeByAlpha(alpha, gamma, -limits.belowEv());
    }

    private static double slopeByAlpha(double alpha, double gamma, double x) {
        double r = Math.hypot(x, gamma);
        double b = Math.atan2(gamma, -x);
        double angle = alpha * b;
        double sinc = angle == 0 ? b : Math.sin(angle) / alpha;
        // (c cos c - sin c) / c^2, by series where it cancels
        double bent = angle < 1e-2
                ? -angle / 3 * (1 - angle * angle / 10 * (1 - angle * angle / 28))
                : (angle * Math.cos(angle) - Math.sin(angle)) / (angle * angle);
        return Math.pow(r, alpha) * (Math.log(r) * sinc + b * b * bent);
    }
}
