package spotline.numerics.shape;

import java.util.List;

/**
 * Lorentzian of full width at half maximum w: {@code A * 2 / (pi w) / (1 + 4 (x - E)^2 / w^2)}.
 *
 * <p>Parameters: position (eV), area (ordinate eV), fwhm (eV).
 */
public record Lorentzian() implements LineShape {
    private static final List<ShapeParameter> PARAMETERS =
            List.of(ShapeParameter.position(), ShapeParameter.area(), ShapeParameter.width("fwhm"));

    @Override
    public String name() {
        return "lorentzian";
    }

    @Override
    public List<ShapeParameter> parameters() {
        return PARAMETERS;
    }

    @Override
    public void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch) {
        double width = Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double height = 2 / (Math.PI * width);
        double slope = p[at + 1] * height / width;
        scratch.factors(scratch.lorentzFactors(3), 8 * slope, height, -slope);
        scratch.bells().evaluate(x, p[at], width, ShapeScratch.NONE, scratch.lorentzFactors(3), rows, row, scratch);
    }

    @Override
    public void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch) {
        double position = p[at];
        double perHalf = 2 / Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double height = perHalf / Math.PI;
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perHalf;
            out[i] = height / (1 + t * t);
        }
    }
}
