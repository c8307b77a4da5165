package spotline.analysis.intensity;

import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import spotline.analysis.background.Subtraction;
import spotline.spectra.BindingScan;

/**
 * What a background bent like its flanks holds above the straight one: the loss structure behind a strong line is a hump far
 * wider than any line, and on its crest a straight background leaves something that looks like one.
 *
 * <p>Polynomials by least squares through the channels beside the window, three half windows on each side: a parabola says
 * whether they bend down, which they must, so that a line between two others is not found to be more than it is; a polynomial
 * of the fourth degree says what they hold in the window.
 *
 * <p>Shape: one window in. Units: counts. Errors: empty where the flanks are straight, hollow, too short, or hold lines. Source: derived.
 *
 * @param counts in the window above the straight background
 * @param variance of the polynomial's sum over the window, counts squared
 */
record FlankCurvature(double counts, double variance) {
    private static final double CLEAR = 1;
    private static final double FLANK_HALF_WINDOWS = 3;
    /** Of what the step from the second to the fourth degree changed, half may be left. Common practice, no source. */
    private static final double LEFT_BY_DEGREE = 0.5;

    /** Reduced chi-square beyond which the flanks hold lines and are no smooth bend. */
    private static final double WORST_MISFIT = 2;

    private static final int FEWEST_CHANNELS = 6;

    static Optional<FlankCurvature> of(BindingScan scan, Subtraction straight, double halfWindowEv) {
        int flank = (int) Math.round(FLANK_HALF_WINDOWS * halfWindowEv / scan.stepEv());
        int from = Math.max(0, straight.from() - flank);
        int to = Math.min(scan.channels(), straight.to() + flank);
        if (straight.from() - from < FEWEST_CHANNELS || to - straight.to() < FEWEST_CHANNELS) return Optional.empty();
        double middle = 0.5 * (straight.from() + straight.to() - 1);
        double[] x = new double[to - from];
        for (int i = from; i < to; i++) x[i - from] = (i - middle) / flank;
        Flanks parabola = Flanks.fit(scan, straight, from, x, 2);
        double bend = parabola.coefficients().getEntry(2);
        if (bend > -CLEAR * Math.sqrt(parabola.covariance().getEntry(2, 2))) return Optional.empty();
        Flanks fine = Flanks.fit(scan, straight, from, x, 4);
        if (fine.misfit() > WORST_MISFIT) return Optional.empty();
        RealVector coarse = new ArrayRealVector(3);
        RealVector inside = new ArrayRealVector(5);
        double straightSum = 0;
        for (int i = straight.from(); i < straight.to(); i++) {
            coarse = coarse.add(powers(x[i - from], 2));
            inside = inside.add(powers(x[i - from], 4));
            straightSum += straight.background(i);
        }
        double sum = fine.coefficients().dotProduct(inside);
        double left = LEFT_BY_DEGREE * (sum - parabola.coefficients().dotProduct(coarse));
        double variance = inside.dotProduct(fine.covariance().operate(inside)) + left * left;
        return sum > straightSum ? Optional.of(new FlankCurvature(sum - straightSum, variance)) : Optional.empty();
    }

    /** A polynomial through the flanks; its covariance grows with what it leaves of them beyond noise. */
    private record Flanks(RealVector coefficients, RealMatrix covariance, double misfit) {
        static Flanks fit(BindingScan scan, Subtraction straight, int from, double[] x, int degree) {
            RealMatrix normal = new Array2DRowRealMatrix(degree + 1, degree + 1);
            RealMatrix noise = new Array2DRowRealMatrix(degree + 1, degree + 1);
            RealVector right = new ArrayRealVector(degree + 1);
            for (int k = 0; k < x.length; k++) {
                if (from + k >= straight.from() && from + k < straight.to()) continue;
                double counts = scan.counts(from + k);
                RealVector powers = powers(x[k], degree);
                RealMatrix square = powers.outerProduct(powers);
                normal = normal.add(square);
                noise = noise.add(square.scalarMultiply(Math.max(1, counts)));
                right = right.add(powers.mapMultiply(counts));
            }
            RealMatrix inverse = new LUDecomposition(normal).getSolver().getInverse();
            RealVector coefficients = inverse.operate(right);
            double sum = 0;
            int n = 0;
            for (int k = 0; k < x.length; k++) {
                if (from + k >= straight.from() && from + k < straight.to()) continue;
                double model = coefficients.dotProduct(powers(x[k], degree));
                double off = scan.counts(from + k) - model;
                sum += off * off / Math.max(1, model);
                n++;
            }
            double misfit = Math.max(1, sum / (n - degree - 1));
            return new Flanks(
                    coefficients, inverse.multiply(noise).multiply(inverse).scalarMultiply(misfit), misfit);
        }
    }

    private static RealVector powers(double x, int degree) {
        double[] powers = new double[degree + 1];
        powers[0] = 1;
        for (int k = 1; k <= degree; k++) powers[k] = powers[k - 1] * x;
        return new ArrayRealVector(powers, false);
    }
}
