package spotline.numerics.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import spotline.core.Estimate;

/** What a fit came to. Parameters are numbered as in the problem, tied, fixed and auxiliary ones too. */
public final class FitResult {
    /** What held a parameter. */
    public enum ParameterState {
        FREE,
        AT_LOWER_BOUND,
        AT_UPPER_BOUND,
        TIED,
        FIXED
    }

    private final FitProblem problem;
    private final double[] values;
    private final ParameterState[] states;
    private final double[][] fitted;
    private final Covariance covariance;
    private final double objective;
    private final double chiSquare;
    private final double uncertaintyFactor;
    private final int iterations;
    private final int evaluations;
    private final StopReason stopReason;

    FitResult(
            FitProblem problem,
            double[] values,
            ParameterState[] states,
            double[][] fitted,
            Covariance covariance,
            double objective,
            double chiSquare,
            double uncertaintyFactor,
            int iterations,
            int evaluations,
            StopReason stopReason) {
        this.problem = problem;
        this.values = values;
        this.states = states;
        this.fitted = fitted;
        this.covariance = covariance;
        this.objective = objective;
        this.chiSquare = chiSquare;
        this.uncertaintyFactor = uncertaintyFactor;
        this.iterations = iterations;
        this.evaluations = evaluations;
        this.stopReason = stopReason;
    }

    public FitProblem problem() {
        return problem;
    }

    public List<String> names() {
        return problem.layout().names;
    }

    /** Errors: {@link IllegalArgumentException} when no parameter has this name. */
    public int index(String name) {
        int at = names().indexOf(name);
        if (at < 0) throw new IllegalArgumentException("no parameter is named " + name);
        return at;
    }

    public double[] values() {
        return values.clone();
    }

    public double value(int parameter) {
        return values[parameter];
    }

    public double value(String name) {
        return values[index(name)];
    }

    public ParameterState state(int parameter) {
        return states[parameter];
    }

    public ParameterState state(String name) {
        return states[index(name)];
    }

    public Covariance covariance() {
        return covariance;
    }

    /**
     * Standard uncertainty from the curvature of the objective; empty for what is fixed or not determined by the data. At
     * a bound it is the curvature's all the same: the interval it spans ends at the bound.
     */
    public OptionalDouble standardUncertainty(String name) {
        return covariance.standardUncertainty(index(name));
    }

    public OptionalDouble standardUncertainty(int parameter) {
        return covariance.standardUncertainty(parameter);
    }

    public OptionalDouble correlation(String one, String other) {
        return covariance.correlation(index(one), index(other));
    }

    /** Standard uncertainty, to first order, of any smooth function of all parameter values. */
    public OptionalDouble uncertaintyOf(ToDoubleFunction<double[]> function) {
        return covariance.standardUncertainty(gradientOf(function));
    }

    private double[] gradientOf(ToDoubleFunction<double[]> function) {
        double[] gradient = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            OptionalDouble u = covariance.standardUncertainty(i);
            if (u.isEmpty() && states[i] == ParameterState.FIXED) continue;
            double size = u.isPresent() && u.getAsDouble() > 0 ? u.getAsDouble() : Math.max(1, Math.abs(values[i]));
            double step = 1e-3 * size;
            double[] moved = values.clone();
            moved[i] = values[i] + step;
            double above = function.applyAsDouble(moved);
            moved[i] = values[i] - step;
            gradient[i] = (above - function.applyAsDouble(moved)) / (2 * step);
        }
        return gradient;
    }

    /**
     * A parameter as an estimate whose contributions are keyed {@code prefix:fit:k}: estimates of one fit taken with one
     * prefix keep their covariance.
     */
    public Estimate estimate(String name, String prefix) {
        double[] gradient = new double[values.length];
        int at = index(name);
        gradient[at] = 1;
        return estimate(values[at], gradient, prefix);
    }

    /** As {@link #estimate(String, String)} for any smooth function of all parameter values, to first order. */
    public Estimate estimate(ToDoubleFunction<double[]> function, String prefix) {
        return estimate(function.applyAsDouble(values.clone()), gradientOf(function), prefix);
    }

    private Estimate estimate(double value, double[] gradient, String prefix) {
        if (covariance.standardUncertainty(gradient).isEmpty()) return Estimate.unknown(value);
        Estimate estimate = Estimate.exact(value);
        double[] contributions = covariance.contributions(gradient);
        for (int k = 0; k < contributions.length; k++) {
            if (contributions[k] != 0) estimate = estimate.with(prefix + ":fit:" + k, contributions[k]);
        }
        return estimate;
    }

    /** The fitted curve of a data set. */
    public double[] fitted(int dataSet) {
        return fitted[dataSet].clone();
    }

    public double[] fitted() {
        return fitted(0);
    }

    /** Residuals of a data set over the standard deviation of each point; plain differences when unweighted. */
    public double[] residuals(int dataSet) {
        DataSet data = problem.dataSets().get(dataSet);
        double[] residuals = new double[data.size()];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = Objective.standardised(data.weighting(), i, data.ordinate(i), fitted[dataSet][i]);
        }
        return residuals;
    }

    public double[] residuals() {
        return residuals(0);
    }

    /** What was minimised: Poisson deviance, chi-square or sum of squares. */
    public double objective() {
        return objective;
    }

    /** The objective; for counts fitted by likelihood, the Poisson deviance. */
    public double deviance() {
        return objective;
    }

    /** Sum of squared residuals over variances (Pearson's, for counts). */
    public double chiSquare() {
        return chiSquare;
    }

    public int points() {
        int points = 0;
        for (DataSet data : problem.dataSets()) points += data.size();
        return points;
    }

    public int freeParameters() {
        return problem.layout().free.length;
    }

    public int degreesOfFreedom() {
        return points() - freeParameters();
    }

    /** Empty without degrees of freedom. */
    public OptionalDouble reducedChiSquare() {
        int freedom = degreesOfFreedom();
        return freedom > 0 ? OptionalDouble.of(chiSquare / freedom) : OptionalDouble.empty();
    }

    /** What the curvature's variances were multiplied by: 1, or the reduced chi-square. */
    public double uncertaintyFactor() {
        return uncertaintyFactor;
    }

    /** Von Neumann ratio of the residuals, over all data sets; about 2 for independent ones. */
    public OptionalDouble vonNeumannRatio() {
        return ResidualTests.vonNeumannRatio(allResiduals());
    }

    /** Runs of sign of the residuals of all data sets, one after another. */
    public RunsTest runsTest() {
        return ResidualTests.runs(allResiduals());
    }

    private List<double[]> allResiduals() {
        List<double[]> all = new ArrayList<>();
        for (int d = 0; d < fitted.length; d++) all.add(residuals(d));
        return all;
    }

    /** Steps tried. */
    public int iterations() {
        return iterations;
    }

    /** Passes over the models. */
    public int evaluations() {
        return evaluations;
    }

    public StopReason stopReason() {
        return stopReason;
    }

    public boolean converged() {
        return stopReason.converged();
    }
}
