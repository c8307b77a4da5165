package spotline.formats.text;

import spotline.core.Decimal;
import spotline.spectra.Axis;
import spotline.spectra.ListedAxis;
import spotline.spectra.Quantity;
import spotline.spectra.RegularAxis;

/** Whether listed values are equally spaced. */
final class Steps {
    /** Relative to the step: files give energies to a few decimals, equal steps in them agree far better than this. */
    private static final double TOLERANCE = 1e-6;

    private Steps() {}

    /** A regular axis where all values lie on one, else the values as listed. */
    static Axis axis(Quantity quantity, double[] values) {
        int n = values.length;
        double mean = (values[n - 1] - values[0]) / (n - 1);
        if (mean == 0 || !Double.isFinite(mean)) return new ListedAxis(quantity, values);
        double rounded = Double.parseDouble(Decimal.text(mean));
        if (isRegular(values, rounded)) return new RegularAxis(quantity, values[0], rounded, n);
        if (isRegular(values, mean)) return new RegularAxis(quantity, values[0], mean, n);
        return new ListedAxis(quantity, values);
    }

    /** The least and the greatest step, for a message. */
    static String range(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < values.length; i++) {
            double step = Math.abs(values[i] - values[i - 1]);
            least = Math.min(least, step);
            greatest = Math.max(greatest, step);
        }
        return "steps " + Decimal.significant(least, 4) + " to " + Decimal.significant(greatest, 4) + " eV";
    }

    /** The values themselves are only as exact as a double: hence a few units in the last place besides. */
    private static boolean isRegular(double[] values, double step) {
        double scale = Math.max(Math.abs(values[0]), Math.abs(values[values.length - 1]));
        double tolerance = TOLERANCE * Math.abs(step) + 4 * Math.ulp(scale);
        for (int i = 0; i < values.length; i++) {
            if (Math.abs(values[i] - (values[0] + i * step)) > tolerance) return false;
        }
        return true;
    }
}
