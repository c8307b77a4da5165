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
        double position = p[at];
        double area = p[at + 1];
        double perHalf = 2 / Math.max(p[at + 2], Gaussian.NARROWEST_EV);
        double height = perHalf / Math.PI;
        double[] byPosition = rows[row];
        double[] byArea = rows[row + 1];
        double[] byWidth = rows[row + 2];
        for (int i = 0; i < x.length; i++) {
            double t = (x[i] - position) * perHalf;
            double q = 1 / (1 + t * t);
            double unit = height * q;
            double slope = area * unit * perHalf;
            byPosition[i] = slope * 2 * t * q;
            byArea[i] = unit;
            byWidth[i] = slope * (t * t * q - 0.5);
        }
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
