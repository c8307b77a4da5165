package spotline.numerics.fit;

import java.util.Arrays;
import spotline.core.Work;

/** One run of the solver on one problem. */
final class LevenbergMarquardt {
    /** Below this part of the objective a change of it is rounding. */
    private static final double RESOLUTION = 1e-13;
    /** Above this part it never is: the residuals would have to be a billionth of the data. */
    private static final double SURELY_RESOLVED = 1e-6;
    /** Below this pivot the normal matrix has lost too many digits and the rows are decomposed instead. */
    private static final double PIVOT_LIMIT = 1e-7;
    /** Below this pivot, and for smaller problems, the normal matrix is not approximated. */
    private static final double APPROXIMATION_LIMIT = 1e-3;

    private static final int FEWEST_FOR_APPROXIMATION = 10;
    private static final int MANY_POINTS = 500;
    /** A step is taken when the objective falls by this part of what was expected. */
    private static final double LEAST_AGREEMENT = 0.01;
    /**
     * Part of the scale of the step before that a new one keeps at least. With all of it a parameter that mattered at a poor
     * start is damped for ever after; with none, one that ceases to matter runs away.
     */
    private static final double SCALE_MEMORY = 0.2;

    private final Workspace space;
    private final FitProblem problem;
    private final Layout layout;
    private final FitSettings settings;
    private final Work work;
    private final boolean projected;
    private double lambda;
    private double growth = 4;
    private double ratio;
    private int kept;
    private boolean exact;
    private int iterations;
    private int evaluations;

    LevenbergMarquardt(Workspace space, FitProblem problem, FitSettings settings, Work work) {
        this.space = space;
        this.problem = problem;
        this.layout = problem.layout();
        this.settings = settings;
        this.work = work;
        lambda = settings.initialDamping();
        projected = settings.method() == FitSettings.Method.VARIABLE_PROJECTION && space.anyLinear();
        exact = projected || space.count < FEWEST_FOR_APPROXIMATION || space.points < MANY_POINTS;
    }

    FitResult run() {
        System.arraycopy(layout.start, 0, space.current.q, 0, space.count);
        evaluate(space.current);
        StopReason reason;
        if (!Double.isFinite(space.current.objective)) reason = StopReason.NOT_FINITE;
        else if (space.count == 0) reason = StopReason.NOTHING_FREE;
        else reason = iterate();
        return new ResultBuilder(space, problem, settings).build(iterations, evaluations, reason);
    }

    private StopReason iterate() {
        Arrays.fill(space.scale, 0);
        space.dataSize = Double.NaN;
        if (settings.method() != FitSettings.Method.LEVENBERG_MARQUARDT && space.anyLinear()) project(space.current);
        build();
        double lastExpected = Double.POSITIVE_INFINITY;
        int stalled = 0;
        while (iterations < settings.maxIterations()) {
            work.check();
            double objective = space.current.objective;
            double expected = findStep(lambda);
            if (objective == 0 || !(expected > 0)) return StopReason.PRECISION_REACHED;
            if (expected <= settings.tolerance() * objective) {
                if (lambda <= 0.01 * space.boxStep.worstPivot()) return StopReason.CONVERGED;
                expected = findStep(1e-9);
                if (expected <= settings.tolerance() * objective) return StopReason.CONVERGED;
                expected = findStep(lambda);
            }
            boolean fine = expected < SURELY_RESOLVED * objective && expected < resolution(objective) * objective;
            if (fine) {
                if (expected > 0.9 * lastExpected && lambda < 1e-20 && ++stalled > 3)
                    return StopReason.PRECISION_REACHED;
                if (expected <= 0.9 * lastExpected) stalled = 0;
                lastExpected = Math.min(lastExpected, expected);
            } else {
                stalled = 0;
                lastExpected = Double.POSITIVE_INFINITY;
            }
            if (!moves()) return StopReason.PRECISION_REACHED;
            iterations++;
            evaluate(space.trial);
            if (projected) project(space.trial);
            if (accept(expected, fine)) {
                boolean keep = mayKeepNormal(fine);
                space.swap();
                if (keep) space.buildDescent(space.current);
                else build();
            } else if (projected) {
                build();
            }
            work.progress(Math.min(1, (double) iterations / settings.maxIterations()), "fit");
        }
        return StopReason.ITERATION_LIMIT;
    }

    private void evaluate(Workspace.Point point) {
        evaluations++;
        space.evaluate(point, problem);
    }

    /** Judges the trial point and moves the damping; a step too fine to be judged counts as good unless it is bad. */
    private boolean accept(double expected, boolean fine) {
        double before = space.current.objective;
        double after = space.trial.objective;
        ratio = (before - after) / expected;
        if (fine && Math.abs(before - after) <= 10 * resolution(before) * before) ratio = 1;
        if (!Double.isFinite(after) || !(ratio > LEAST_AGREEMENT)) {
            lambda = Math.max(lambda, 1e-12) * growth;
            growth *= 2;
            return false;
        }
        growth = 4;
        if (fine) lambda *= 1e-3;
        else if (Math.abs(ratio - 1) < 0.1) lambda *= 0.02;
        else if (ratio > 0.75) lambda *= 0.2;
        else if (ratio < 0.25) lambda *= 4;
        if (lambda < 1e-40) lambda = 0;
        return true;
    }

    /** Late steps that go as expected and change little do with the normal matrix of the step before, twice at most. */
    private boolean mayKeepNormal(boolean fine) {
        double gain = 1 - space.trial.objective / space.current.objective;
        boolean keep = !exact && !projected && !fine && kept < 2 && gain < 0.02 && Math.abs(ratio - 1) < 0.1;
        kept = keep ? kept + 1 : 0;
        return keep;
    }

    /** The part of the objective that the rounding of the residuals, differences of larger numbers, can make up. */
    private double resolution(double objective) {
        if (Double.isNaN(space.dataSize)) space.measureData(problem);
        return RESOLUTION + 4e-16 * Math.sqrt(space.dataSize / objective);
    }

    private void build() {
        space.build(space.current, exact);
        for (int j = 0; j < space.count; j++) {
            if (projected && layout.linear[j]) continue;
            double diagonal = space.normal[j * space.count + j];
            space.scale[j] = Math.max(SCALE_MEMORY * space.scale[j], diagonal);
        }
    }

    private boolean moves() {
        boolean moves = false;
        for (int j = 0; j < space.count; j++) {
            double from = space.current.q[j];
            double to = clamped(j, from + space.step[j]);
            space.trial.q[j] = to;
            moves |= to != from;
        }
        return moves;
    }

    /**
     * Solves for the linear amplitudes at the point's other parameters: at once where the weights are fixed, in a few
     * rounds, each taken back where it does not help, where they follow the model.
     */
    private void project(Workspace.Point point) {
        if (!Double.isFinite(point.objective)) return;
        for (int round = 0; round < 4; round++) {
            double before = point.objective;
            space.build(point, true);
            double expected = findStep(point, 0, space.linear);
            if (!(expected > 1e-12 * before)) return;
            System.arraycopy(point.q, 0, space.kept, 0, space.count);
            System.arraycopy(space.step, 0, space.amplitudeStep, 0, space.count);
            double share = 1;
            for (int half = 0; half < 6; half++) {
                for (int j = 0; j < space.count; j++) {
                    point.q[j] = clamped(j, space.kept[j] + share * space.amplitudeStep[j]);
                }
                evaluate(point);
                if (point.objective <= before) break;
                share *= 0.5;
            }
            if (!(point.objective <= before)) {
                System.arraycopy(space.kept, 0, point.q, 0, space.count);
                evaluate(point);
                return;
            }
        }
    }

    private double clamped(int j, double value) {
        return Math.max(layout.lower[j], Math.min(layout.upper[j], value));
    }

    /** At first with an approximate normal matrix, until one is found that it might not do for. */
    private double findStep(double damping) {
        double expected = findStep(space.current, damping, space.all);
        if (exact || space.boxStep.worstPivot() > APPROXIMATION_LIMIT) return expected;
        exact = true;
        space.build(space.current, true);
        return findStep(space.current, damping, space.all);
    }

    /** The step for a damping, with the decrease of the objective that the quadratic model expects of it. */
    private double findStep(Workspace.Point point, double damping, boolean[] movable) {
        BoxStep box = space.boxStep;
        boolean solved = box.solve(
                space.normal,
                space.scale,
                damping,
                space.descent,
                point.q,
                layout.lower,
                layout.upper,
                movable,
                space.step);
        if (!solved || box.worstPivot() < PIVOT_LIMIT) return orthogonalStep(point, damping, movable);
        double expected = 0;
        for (int j = 0; j < space.count; j++) {
            if (space.step[j] == 0) continue;
            double product = 0;
            for (int k = 0; k < space.count; k++) {
                product += space.normal[j >= k ? j * space.count + k : k * space.count + j] * space.step[k];
            }
            expected += space.step[j] * (2 * space.descent[j] - product);
        }
        return expected;
    }

    private double orthogonalStep(Workspace.Point point, double damping, boolean[] movable) {
        Arrays.fill(space.step, 0);
        BoxStep box = space.boxStep;
        if (!box.begin(point.q, space.descent, layout.lower, layout.upper, movable)) return 0;
        do {
            space.orthogonal.solve(space, point, box, damping, space.scale, space.step);
        } while (box.clamp(point.q, space.step, layout.lower, layout.upper));
        return space.orthogonal.expectedDecrease(space, point, space.step);
    }
}
