package spotline.analysis.peakfit;

import java.util.Arrays;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.numerics.fit.Covariance;
import spotline.numerics.fit.FitResult;

/**
 * Covariance of the free numbers of a fit, the background's part included, and estimates that keep it.
 *
 * <p>With a background taken first, a parameter is a function of the counts in two ways, directly and through the
 * background: its sensitivities to the net counts go back through the background's own to every channel of the scan, and
 * the covariance is their product weighted by the variances of the counts.
 */
final class FitCovariance {
    /** Below this mean a count's variance is taken as this: as the likelihood does. */
    private static final double FEWEST_COUNTS = 1e-3;

    /** Channels whose net variance is looked at to say what chi-square to expect. */
    private static final int SAMPLED = 16;

    private final double[][] covariance;
    private final boolean[] unknown;
    private final double[][] root; // lower triangle
    private final double factor;
    private final String key;

    private FitCovariance(double[][] covariance, boolean[] unknown, double factor, String key) {
        this.covariance = covariance;
        this.unknown = unknown;
        this.factor = factor;
        this.key = key;
        root = root(covariance, unknown);
    }

    /** What all variances were multiplied by. */
    double factor() {
        return factor;
    }

    /**
     * A background fitted along is among the parameters of the fit itself.
     *
     * @param counted whether the counts have Poisson variances
     */
    static FitCovariance of(FitResult fit, boolean counted, String key) {
        return plain(fit, factor(fit, counted, 1), key);
    }

    private static FitCovariance plain(FitResult fit, double factor, String key) {
        Covariance from = fit.covariance();
        int q = fit.values().length;
        double[][] covariance = new double[q][q];
        boolean[] unknown = new boolean[q];
        for (int k = 0; k < q; k++) {
            unknown[k] = from.standardUncertainty(k).isEmpty() || !Double.isFinite(factor);
            for (int l = 0; l < q; l++) {
                covariance[k][l] = factor * from.get(k, l).orElse(0) / fit.uncertaintyFactor();
            }
        }
        return new FitCovariance(covariance, unknown, factor, key);
    }

    /**
     * Reduced chi-square over what is to be expected of it: where above 1, or where the statistics are unknown. Not a number
     * where it cannot be had.
     */
    private static double factor(FitResult fit, boolean counted, double expected) {
        double reduced = fit.reducedChiSquare().orElse(counted ? 1 : Double.NaN) / expected;
        return counted ? Math.max(1, reduced) : reduced;
    }

    /**
     * With a background taken first.
     *
     * @param counts of the whole scan
     */
    static FitCovariance of(FitResult fit, Subtraction subtraction, double[] counts, boolean counted, String key) {
        double[] fitted = fit.fitted();
        double[] variances = new double[counts.length];
        for (int j = 0; j < counts.length; j++) variances[j] = counted ? Math.max(0, counts[j]) : 1;
        double[] own = new double[fitted.length];
        for (int i = 0; i < fitted.length; i++) {
            own[i] = counted ? Math.max(FEWEST_COUNTS, fitted[i]) : 1;
            variances[subtraction.from() + i] = own[i];
        }
        double factor = factor(fit, counted, expectedChiSquare(subtraction, own, variances));
        FitCovariance direct = plain(fit, 1, key);
        int q = direct.unknown.length;
        double[][] rows = new double[q][fitted.length];
        fit.problem().dataSets().get(0).model().evaluator().derivatives(fit.values(), new double[fitted.length], rows);
        double[][] sensitivities = new double[q][];
        for (int k = 0; k < q; k++) {
            double[] weights = new double[fitted.length];
            for (int l = 0; l < q; l++) {
                double c = direct.unknown[k] || direct.unknown[l] ? 0 : direct.covariance[k][l];
                if (c == 0) continue;
                for (int i = 0; i < weights.length; i++) weights[i] += c * rows[l][i] / own[i];
            }
            sensitivities[k] = subtraction.sensitivities(weights);
        }
        double[][] covariance = new double[q][q];
        for (int k = 0; k < q; k++) {
            for (int l = 0; l <= k; l++) {
                double sum = 0;
                for (int j = 0; j < counts.length; j++) sum += sensitivities[k][j] * sensitivities[l][j] * variances[j];
                covariance[k][l] = factor * sum;
                covariance[l][k] = covariance[k][l];
            }
        }
        boolean[] unknown = direct.unknown.clone();
        if (!Double.isFinite(factor)) Arrays.fill(unknown, true);
        return new FitCovariance(covariance, unknown, factor, key);
    }

    /** A background taken first brings noise of its own into every residual: the mean variance of a net channel over its own. */
    private static double expectedChiSquare(Subtraction subtraction, double[] own, double[] variances) {
        int n = own.length;
        int samples = Math.min(SAMPLED, n);
        double[] unit = new double[n];
        double sum = 0;
        for (int s = 0; s < samples; s++) {
            int i = (int) ((s + 0.5) * n / samples);
            unit[i] = 1;
            double[] sensitivity = subtraction.sensitivities(unit);
            unit[i] = 0;
            double variance = 0;
            for (int j = 0; j < variances.length; j++) variance += sensitivity[j] * sensitivity[j] * variances[j];
            sum += variance / own[i];
        }
        return sum / samples;
    }

    private static double[][] root(double[][] covariance, boolean[] unknown) {
        int q = unknown.length;
        double[][] root = new double[q][q];
        for (int i = 0; i < q; i++) {
            if (unknown[i]) continue;
            for (int j = 0; j <= i; j++) {
                if (unknown[j]) continue;
                double sum = covariance[i][j];
                for (int k = 0; k < j; k++) sum -= root[i][k] * root[j][k];
                if (i == j) root[i][i] = sum > 1e-12 * covariance[i][i] ? Math.sqrt(sum) : 0;
                else root[i][j] = root[j][j] > 0 ? sum / root[j][j] : 0;
            }
        }
        return root;
    }

    /**
     * A quantity with this gradient by the fit's parameters; its contributions are keyed {@code counting/KEY/fit/k}.
     * Unknown when it depends on a parameter that the data do not determine.
     */
    Estimate estimate(double value, double[] gradient) {
        double[] contributions = new double[unknown.length];
        for (int i = 0; i < gradient.length; i++) {
            if (gradient[i] == 0) continue;
            if (unknown[i] || !Double.isFinite(gradient[i])) return Estimate.unknown(value);
            for (int k = 0; k <= i; k++) contributions[k] += gradient[i] * root[i][k];
        }
        Estimate estimate = Estimate.exact(value);
        for (int k = 0; k < contributions.length; k++) {
            if (contributions[k] != 0) estimate = estimate.with("counting/" + key + "/fit/" + k, contributions[k]);
        }
        return estimate;
    }
}
