package spotline.numerics.fit;

import java.util.Arrays;

/** Makes the result of a run from the workspace it ended in. */
final class ResultBuilder {
    /** Below this pivot the covariance comes from the rows themselves. */
    private static final double PIVOT_LIMIT = 1e-7;

    private final Workspace space;
    private final FitProblem problem;
    private final FitSettings settings;

    ResultBuilder(Workspace space, FitProblem problem, FitSettings settings) {
        this.space = space;
        this.problem = problem;
        this.settings = settings;
    }

    FitResult build(int iterations, int evaluations, StopReason reason) {
        Layout layout = problem.layout();
        Workspace.Point point = space.current;
        double[] values = new double[layout.columns.length];
        layout.expand(point.q, values);
        double[][] fitted = new double[point.states.length][];
        int points = 0;
        double chiSquare = 0;
        for (int d = 0; d < fitted.length; d++) {
            fitted[d] = point.states[d].fitted.clone();
            points += fitted[d].length;
            chiSquare += chiSquare(problem.dataSets().get(d), fitted[d], point.states[d].objective);
        }
        int freedom = points - space.count;
        boolean[] unknown = new boolean[space.count];
        double[] covariance = new double[space.count * space.count];
        if (Double.isFinite(point.objective)) covariance(covariance, unknown);
        else Arrays.fill(unknown, true);
        double factor = factor(freedom, chiSquare);
        if (Double.isNaN(factor)) {
            Arrays.fill(unknown, true);
            factor = 1;
        }
        for (int k = 0; k < covariance.length; k++) covariance[k] *= factor;
        return new FitResult(
                problem,
                values,
                states(layout, point),
                fitted,
                new Covariance(layout, covariance, unknown),
                point.objective,
                chiSquare,
                factor,
                iterations,
                evaluations,
                reason);
    }

    private static double chiSquare(DataSet data, double[] fitted, double objective) {
        if (!(data.weighting() instanceof Weighting.PoissonDeviance)
                && !(data.weighting() instanceof Weighting.ModelVariance)) {
            return objective;
        }
        double sum = 0;
        double[] y = data.shared();
        for (int i = 0; i < fitted.length; i++) {
            double r = Objective.standardised(data.weighting(), i, y[i], fitted[i]);
            sum += r * r;
        }
        return sum;
    }

    /** What the covariance is multiplied by; NaN where it would have to be estimated from no degrees of freedom. */
    private double factor(int freedom, double chiSquare) {
        boolean estimated = false;
        for (DataSet data : problem.dataSets()) estimated |= data.weighting() instanceof Weighting.Unweighted;
        if (estimated || settings.scaling() == FitSettings.Scaling.ALWAYS) {
            return freedom > 0 ? chiSquare / freedom : Double.NaN;
        }
        if (settings.scaling() == FitSettings.Scaling.NEVER || freedom <= 0) return 1;
        return Math.max(1, chiSquare / freedom);
    }

    private FitResult.ParameterState[] states(Layout layout, Workspace.Point point) {
        FitResult.ParameterState[] states = new FitResult.ParameterState[layout.columns.length];
        for (int i = 0; i < states.length; i++) {
            states[i] = layout.columns[i].length == 0 ? FitResult.ParameterState.FIXED : FitResult.ParameterState.TIED;
        }
        for (int j = 0; j < layout.free.length; j++) {
            states[layout.free[j]] = point.q[j] <= layout.lower[j]
                    ? FitResult.ParameterState.AT_LOWER_BOUND
                    : point.q[j] >= layout.upper[j]
                            ? FitResult.ParameterState.AT_UPPER_BOUND
                            : FitResult.ParameterState.FREE;
        }
        return states;
    }

    /** Inverse of the normal matrix, or of the rows where that has too few digits. */
    private void covariance(double[] covariance, boolean[] unknown) {
        int q = space.count;
        if (!space.normalIsExact) space.build(space.current, true);
        double[] root = new double[q * q];
        if (factorise(root)) {
            invert(root, covariance);
            return;
        }
        BoxStep nothingHeld = new BoxStep(q);
        space.orthogonal.covariance(space, space.current, nothingHeld, covariance, unknown);
    }

    private boolean factorise(double[] root) {
        int q = space.count;
        for (int a = 0; a < q; a++) {
            for (int b = 0; b <= a; b++) {
                double sum = space.normal[a * q + b];
                for (int c = 0; c < b; c++) sum -= root[a * q + c] * root[b * q + c];
                if (a != b) {
                    root[a * q + b] = sum / root[b * q + b];
                } else {
                    if (!(sum > PIVOT_LIMIT * space.normal[a * q + a])) return false;
                    root[a * q + a] = Math.sqrt(sum);
                }
            }
        }
        return true;
    }

    /** Inverse of the root by rows, then its product with itself. */
    private static void invert(double[] root, double[] covariance) {
        int q = (int) Math.round(Math.sqrt(root.length));
        for (int a = 0; a < q; a++) {
            int row = a * q;
            double inverse = 1 / root[row + a];
            for (int c = 0; c < a; c++) {
                double sum = 0;
                for (int b = c; b < a; b++) sum += root[row + b] * root[b * q + c];
                covariance[row + c] = -sum * inverse;
            }
            // only now, while the row is still needed above: columns below a hold the inverse of the rows before
            for (int c = 0; c < a; c++) root[row + c] = covariance[row + c];
            root[row + a] = inverse;
        }
        for (int a = 0; a < q; a++) {
            for (int c = 0; c <= a; c++) {
                double sum = 0;
                for (int k = a; k < q; k++) sum += root[k * q + a] * root[k * q + c];
                covariance[a * q + c] = sum;
                covariance[c * q + a] = sum;
            }
        }
    }
}
