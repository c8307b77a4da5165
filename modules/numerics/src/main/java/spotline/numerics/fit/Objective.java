package spotline.numerics.fit;

import java.util.Arrays;

/**
 * Turns model values into the objective, weighted residuals and the weights that the rows of derivatives get:
 * {@code objective = sum(terms)}, {@code -gradient / 2 = rows * rowWeight * residual}.
 */
final class Objective {
    /**
     * Counts below which the likelihood is continued by a parabola, so that a model that dips below 0 on the way is
     * led back instead of stopping the fit.
     */
    private static final double FEWEST_COUNTS = 1e-3;

    private Objective() {}

    /** Fills residual and rowWeight, returns the objective. */
    static double evaluate(Weighting weighting, double[] y, double[] mu, int n, double[] residual, double[] rowWeight) {
        if (weighting instanceof Weighting.PoissonDeviance poisson) {
            return poisson(poisson.countsPerUnit(), y, mu, n, residual, rowWeight);
        }
        if (weighting instanceof Weighting.ModelVariance pearson) {
            return pearson(pearson.countsPerUnit(), y, mu, n, residual, rowWeight);
        }
        if (weighting instanceof Weighting.Given given) System.arraycopy(given.inverse(), 0, rowWeight, 0, n);
        else Arrays.fill(rowWeight, 0, n, 1);
        for (int i = 0; i < n; i++) residual[i] = (y[i] - mu[i]) * rowWeight[i];
        return RowProducts.product(residual, residual, 0, n);
    }

    private static double poisson(
            double counts, double[] y, double[] mu, int n, double[] residual, double[] rowWeight) {
        double sum = 0;
        double root = Math.sqrt(counts);
        double floor = FEWEST_COUNTS / counts;
        for (int i = 0; i < n; i++) {
            double m = Math.max(mu[i], floor);
            double perRoot = root / Math.sqrt(m);
            double gap = y[i] - m;
            double term = deviance(y[i], m);
            double r = gap * perRoot;
            if (mu[i] < floor) {
                // below the floor: slope of the likelihood at the floor, curvature of its Fisher information there
                double below = floor - mu[i];
                term += 2 * below * gap / m + below * below / m;
                r += below * perRoot;
            }
            residual[i] = r;
            rowWeight[i] = perRoot;
            sum += term;
        }
        return sum * counts;
    }

    /** {@code 2 (m - y + y ln(y / m))} without the cancellation near y = m. */
    private static double deviance(double y, double m) {
        if (y == 0) return 2 * m;
        double t = (y - m) / m;
        if (Math.abs(t) > 0.2) return 2 * (m - y + y * Math.log(y / m));
        // (1 + t) ln(1 + t) - t by ln(1 + t) = 2 atanh(s), s = t / (2 + t)
        double s = t / (2 + t);
        double ss = s * s;
        double rest = ss * (1.0 / 3 + ss * (1.0 / 5 + ss * (1.0 / 7 + ss * (1.0 / 9 + ss * (1.0 / 11 + ss / 13)))));
        return 2 * m * (t * s + 2 * (1 + t) * s * rest);
    }

    private static double pearson(
            double counts, double[] y, double[] mu, int n, double[] residual, double[] rowWeight) {
        double sum = 0;
        double root = Math.sqrt(counts);
        double floor = FEWEST_COUNTS / counts;
        for (int i = 0; i < n; i++) {
            double m = Math.max(mu[i], floor);
            double perRoot = root / Math.sqrt(m);
            double r = (y[i] - m) * perRoot;
            double slope = 0.5 * perRoot * (y[i] + m) / m;
            r += (m - mu[i]) * slope; // straight on below the floor
            residual[i] = r;
            rowWeight[i] = slope;
            sum += r * r;
        }
        return sum;
    }

    /** Residual over the standard deviation that the weighting gives the point. */
    static double standardised(Weighting weighting, int i, double y, double mu) {
        if (weighting instanceof Weighting.PoissonDeviance poisson) {
            return counted(poisson.countsPerUnit(), y, mu);
        }
        if (weighting instanceof Weighting.ModelVariance pearson) {
            return counted(pearson.countsPerUnit(), y, mu);
        }
        if (weighting instanceof Weighting.Given given) return (y - mu) / given.standardDeviation(i);
        return y - mu;
    }

    private static double counted(double counts, double y, double mu) {
        return (y - mu) * Math.sqrt(counts / Math.max(mu, FEWEST_COUNTS / counts));
    }
}
