package spotline.analysis.peakfit;

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

    private final double[][] covariance;
    private final boolean[] unknown;
    private final double[][] root; // lower triangle
    private final String key;

    private FitCovariance(double[][] covariance, boolean[] unknown, String key) {
        this.covariance = covariance;
        this.unknown = unknown;
        this.key = key;
        root = root(covariance, unknown);
    }

    /** A background fitted along is among the parameters of the fit itself. */
    static FitCovariance of(FitResult fit, String key) {
        Covariance from = fit.covariance();
        int q = fit.values().length;
        double[][] covariance = new double[q][q];
        boolean[] unknown = new boolean[q];
        for (int k = 0; k < q; k++) {
            unknown[k] = from.standardUncertainty(k).isEmpty();
            for (int l = 0; l < q; l++) covariance[k][l] = from.get(k, l).orElse(0);
        }
        return new FitCovariance(covariance, unknown, key);
    }

    /**
     * With a background taken first.
     *
     * @param counts of the whole scan
     * @param counted whether the counts have Poisson variances
     */
    static FitCovariance of(FitResult fit, Subtraction subtraction, double[] counts, boolean counted, String key) {
        FitCovariance direct = of(fit, key);
        double factor = fit.uncertaintyFactor();
        int q = direct.unknown.length;
        double[] fitted = fit.fitted();
        double[][] rows = new double[q][fitted.length];
        fit.problem().dataSets().get(0).model().evaluator().derivatives(fit.values(), new double[fitted.length], rows);
        double[] variances = new double[counts.length];
        for (int j = 0; j < counts.length; j++) variances[j] = counted ? Math.max(0, counts[j]) : 1;
        for (int i = 0; i < fitted.length; i++) {
            if (counted) variances[subtraction.from() + i] = Math.max(0, fitted[i]);
        }
        double[][] sensitivities = new double[q][];
        for (int k = 0; k < q; k++) {
            double[] weights = new double[fitted.length];
            for (int l = 0; l < q; l++) {
                double c = direct.unknown[k] || direct.unknown[l] ? 0 : direct.covariance[k][l] / factor;
                if (c == 0) continue;
                for (int i = 0; i < weights.length; i++) weights[i] += c * rows[l][i];
            }
            for (int i = 0; i < weights.length && counted; i++) weights[i] /= Math.max(FEWEST_COUNTS, fitted[i]);
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
        return new FitCovariance(covariance, direct.unknown, key);
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
