package spotline.numerics.shape;

import java.util.List;

/**
 * Product of a Gaussian and a Lorentzian: {@code H exp(-4 ln2 (1 - m) t^2) / (1 + 4 m t^2)} with
 * {@code t = (x - E) / w}. The width w is the full width at half maximum only for m = 0 and m = 1.
 *
 * <p>Its area for H = w = 1 is {@code pi / (2 sqrt m) erfcx(sqrt(ln2 (1 - m) / m))}.
 *
 * <p>Parameters: position (eV), area (ordinate eV), width w (eV), lorentzianFraction m (1, 0 to 1).
 */
public record GaussianLorentzianProduct() implements LineShape {
    private static final double LN2 = Math.log(2);
    private static final List<ShapeParameter> PARAMETERS = List.of(
            ShapeParameter.position(),
            ShapeParameter.area(),
            ShapeParameter.width("width"),
            ShapeParameter.share("lorentzianFraction", 1));

    @Override
    public String name() {
        return "gaussian-lorentzian-product";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    /** Area for unit height and width. */
    static double area(double m) {
        if (m <= 0) return Math.sqrt(Math.PI / LN2) / 2;
        return 0.5 * Math.PI / Math.sqrt(m) * Faddeeva.erfcx(Math.sqrt(LN2 * (1 - m) / m));
    }

    /** Derivative of {@link #area} by m. */
    static double areaSlope(double m) {
        double rest = 1 - m;
        double q = m / (LN2 * rest);
        if (q < 1.0 / 64) {
            // asymptotic series of erfcx: the closed form loses its digits here
            double h = 0;
            double slope = 0;
            double term = 1;
            double power = 1; // q^(k-1)
            for (int k = 1; k <= 14; k++) {
                term *= -(2 * k - 1) / 2.0;
                slope += k * term * power;
                power *= q;
                h += term * power;
            }
            double front = Math.sqrt(Math.PI) / (2 * Math.sqrt(LN2 * rest));
            return front * ((1 + h) / (2 * rest) + slope / (LN2 * rest * rest));
        }
        double s = Math.sqrt(Math.max(LN2 * rest / m, 0));
        double erfcx = Faddeeva.erfcx(s);
        // d(s^2)/dm = -ln2 / m^2 and d erfcx / d(s^2) = erfcx - 1 / (s sqrt(pi)); the root is singular only at m = 1
        double bySquare = erfcx - 1 / (Math.max(s, 1e-8) * Math.sqrt(Math.PI));
        return 0.5 * Math.PI / Math.sqrt(m) * (-0.5 * erfcx / m - LN2 / (m * m) * bySquare);
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double position = p[at];
        double area = p[at + 1];
        double perWidth = 1 / Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double m = p[at + 3];
        double unitHeight = perWidth / area(m);
        double byMixingOfHeight = -areaSlope(m) / area(m);
        double gaussianPart = Gaussian.FOUR_LN2 * (1 - m);
        double[] byPosition = rows[row];
        double[] byArea = rows[row + 1];
        double[] byWidth = rows[row + 2];
        double[] byMixing = rows[row + 3];
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perWidth;
            double square = t * t;
            double exponent = gaussianPart * square;
            double lorentz = 1 / (1 + 4 * m * square);
            double unit = exponent > Gaussian.LARGEST_EXPONENT ? 0 : unitHeight * lorentz * Math.exp(-exponent);
            double value = area * unit;
            double slope = value * perWidth * (2 * gaussianPart + 8 * m * lorentz) * t;
            byPosition[i] = slope;
            byArea[i] = unit;
            byWidth[i] = slope * t - value * perWidth;
            byMixing[i] = value * (Gaussian.FOUR_LN2 * square - 4 * square * lorentz + byMixingOfHeight);
        }
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double position = p[at];
        double perWidth = 1 / Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double m = p[at + 3];
        double height = perWidth / area(m);
        double gaussianPart = Gaussian.FOUR_LN2 * (1 - m);
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perWidth;
            double exponent = gaussianPart * t * t;
            out[i] = exponent > Gaussian.LARGEST_EXPONENT ? 0 : height * Math.exp(-exponent) / (1 + 4 * m * t * t);
        }
    }
}
