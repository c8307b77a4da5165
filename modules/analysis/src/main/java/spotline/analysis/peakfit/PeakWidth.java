package spotline.analysis.peakfit;

import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.PeakMeasure;
import spotline.numerics.shape.ShapeScratch;
import spotline.numerics.shape.Template;
import spotline.numerics.shape.VoigtExponentialTail;

/**
 * Maximum and full width at half maximum of a whole peak, with the width's derivatives.
 *
 * <p>The half heights obey f(x) = f(maximum) / 2, so their derivatives follow from those of the shape at three points.
 * Source: derived, closed form.
 *
 * @param maximumOffset maximum less position, eV
 * @param fwhm eV
 */
final class PeakWidth {
    final double maximumOffset;
    final double fwhm;
    private final double[] slopes;

    private PeakWidth(double maximumOffset, double fwhm, double[] slopes) {
        this.maximumOffset = maximumOffset;
        this.fwhm = fwhm;
        this.slopes = slopes;
    }

    /** Derivative of the width by a parameter of the shape. */
    double slope(int parameter) {
        return slopes[parameter];
    }

    /** @param parameters of the shape; position and area do not matter */
    static PeakWidth of(LineShape shape, double[] parameters) {
        double[] p = parameters.clone();
        p[LineShape.POSITION] = 0;
        p[LineShape.AREA] = 1;
        boolean symmetric =
                !(shape instanceof DoniachSunjic || shape instanceof VoigtExponentialTail || shape instanceof Template);
        PeakMeasure measure = shape.measure(p);
        double top = symmetric ? 0 : measure.maximumAt();
        double low = half(shape, p, top, measure, -1, symmetric);
        double high = half(shape, p, top, measure, 1, symmetric);
        double[][] rows = new double[p.length][3];
        shape.derivatives(new double[] {low, top, high}, p, 0, rows, 0, new ShapeScratch());
        double[] slopes = new double[p.length];
        for (int k = LineShape.AREA + 1; k < p.length; k++) {
            // The derivative by the position is minus that by the abscissa.
            double atHigh = (0.5 * rows[k][1] - rows[k][2]) / -rows[LineShape.POSITION][2];
            double atLow = (0.5 * rows[k][1] - rows[k][0]) / -rows[LineShape.POSITION][0];
            slopes[k] = atHigh - atLow;
        }
        return new PeakWidth(top, measure.fwhm(), slopes);
    }

    private static double half(
            LineShape shape, double[] p, double top, PeakMeasure measure, int side, boolean symmetric) {
        if (symmetric) return side * 0.5 * measure.fwhm();
        double near = top;
        double far = top + side * measure.fwhm();
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (near + far);
            if (shape.value(middle, p) > 0.5 * measure.height()) near = middle;
            else far = middle;
        }
        return 0.5 * (near + far);
    }
}
