package spotline.numerics.shape;

import java.util.List;

/**
 * Weighted sum of a Gaussian and a Lorentzian of the same full width at half maximum w and height:
 * {@code H [(1 - m) exp(-4 ln2 (x - E)^2 / w^2) + m / (1 + 4 (x - E)^2 / w^2)]}, with
 * {@code A = H w [(1 - m) sqrt(pi / (4 ln2)) + m pi / 2]}.
 *
 * <p>Parameters: position (eV), area (ordinate eV), fwhm (eV), lorentzianFraction m (1, 0 to 1, of the height).
 */
public record GaussianLorentzianSum() implements LineShape {
    private static final double GAUSSIAN_AREA = Math.sqrt(Math.PI / Gaussian.FOUR_LN2);
    private static final double LORENTZIAN_AREA = 0.5 * Math.PI;
    private static final List<ShapeParameter> PARAMETERS = List.of(
            ShapeParameter.position(),
            ShapeParameter.area(),
            ShapeParameter.width("fwhm"),
            ShapeParameter.share("lorentzianFraction", 1));

    @Override
    public String name() {
        return "gaussian-lorentzian-sum";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double width = Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double m = p[at + 3];
        double perHeight = (1 - m) * GAUSSIAN_AREA + m * LORENTZIAN_AREA;
        double unitHeight = 1 / (width * perHeight);
        double height = p[at + 1] * unitHeight;
        double slope = height / width;
        double byShareOfHeight = -(LORENTZIAN_AREA - GAUSSIAN_AREA) / perHeight;
        double[] gauss = scratch.gaussFactors(4);
        double[] lorentz = scratch.lorentzFactors(4);
        double rest = 1 - m;
        scratch.factors(gauss, 2 * Gaussian.FOUR_LN2 * rest * slope, rest * unitHeight, -rest * slope);
        scratch.factors(lorentz, 8 * m * slope, m * unitHeight, -m * slope);
        gauss[3] = height * (byShareOfHeight * rest - 1);
        lorentz[3] = height * (byShareOfHeight * m + 1);
        scratch.bells().evaluate(x, p[at], width, gauss, lorentz, rows, row, scratch);
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double position = p[at];
        double perWidth = 1 / Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double m = p[at + 3];
        double height = perWidth / ((1 - m) * GAUSSIAN_AREA + m * LORENTZIAN_AREA);
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perWidth;
            double exponent = Gaussian.FOUR_LN2 * t * t;
            double gauss = exponent > Gaussian.LARGEST_EXPONENT ? 0 : Math.exp(-exponent);
            out[i] = height * ((1 - m) * gauss + m / (1 + 4 * t * t));
        }
    }
}
