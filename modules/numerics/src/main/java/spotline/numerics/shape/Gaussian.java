package spotline.numerics.shape;

import java.util.List;

/**
 * Gaussian of full width at half maximum w: {@code A sqrt(4 ln2 / pi) / w * exp(-4 ln2 (x - E)^2 / w^2)}.
 *
 * <p>Parameters: position (eV), area (ordinate eV), fwhm (eV).
 */
public record Gaussian() implements LineShape {
    static final double FOUR_LN2 = 4 * Math.log(2);
    /** Below this width a shape no longer depends on it: keeps every value finite. */
    static final double NARROWEST_EV = 1e-9;
    /** 4 ln2 * 3.8^2: beyond 3.8 full widths a Gaussian is under 1e-17 of its height and taken as 0. */
    static final double LARGEST_EXPONENT = 40.04;

    private static final double HEIGHT = Math.sqrt(FOUR_LN2 / Math.PI);
    private static final List<ShapeParameter> PARAMETERS =
            List.of(ShapeParameter.position(), ShapeParameter.area(), ShapeParameter.width("fwhm"));

    @Override
    public String name() {
        return "gaussian";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double width = Math.max(p[at + 2], NARROWEST_EV);
        double height = HEIGHT / width;
        double slope = p[at + 1] * height / width;
        scratch.factors(scratch.gaussFactors(3), 2 * FOUR_LN2 * slope, height, -slope);
        scratch.bells().evaluate(x, p[at], width, scratch.gaussFactors(3), ShapeScratch.NONE, rows, row, scratch);
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double position = p[at];
        double perWidth = 1 / Math.max(p[at + 2], NARROWEST_EV);
        double height = HEIGHT * perWidth;
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perWidth;
            double exponent = FOUR_LN2 * t * t;
            out[i] = exponent > LARGEST_EXPONENT ? 0 : height * Math.exp(-exponent);
        }
    }
}
