package spotline.numerics.fit;

import java.util.Arrays;
import spotline.core.Work;

/** One run of the solver on one problem. */
final class LevenbergMarquardt {
    /** Below this part of the objective a change of it is rounding. */
    private static final double RESOLUTION = 1e-13;
    /** Below this pivot the normal matrix has lost too many digits and the rows are decomposed instead. */
    private static final double PIVOT_LIMIT = 1e-9;

    private final Workspace space;
    private final FitProblem problem;
    private final Layout layout;
    private final FitSettings settings;
    private final Work work;
    private final boolean[] movable;
    private double lambda = 1e-3;
    private double growth = 4;
    private int iterations;
    private int evaluations;

    LevenbergMarquardt(Workspace space, FitProblem problem, FitSettings settings, Work work) {
        this.space = space;
        this.problem = problem;
        this.layout = problem.layout();
        this.settings = settings;
        this.work = work;
        movable = new boolean[space.count];
        Arrays.fill(movable, true);
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
        space.buildNormal(space.current);
        space.buildDescent(space.current);
        raiseScale();
        double lastExpected = Double.POSITIVE_INFINITY;
        while (iterations < settings.maxIterations()) {
            work.check();
            double objective = space.current.objective;
            double expected = findStep(lambda);
            if (objective == 0 || !(expected > 0)) return StopReason.PRECISION_REACHED;
            if (expected <= settings.tolerance() * objective) {
                if (lambda <= 1e-6) return StopReason.CONVERGED;
                expected = findStep(1e-9);
                if (expected <= settings.tolerance() * objective) return StopReason.CONVERGED;
                expected = findStep(lambda);
            }
            boolean fine = expected < RESOLUTION * objective;
            if (fine && expected > 0.3 * lastExpected) return StopReason.PRECISION_REACHED;
            lastExpected = fine ? expected : Double.POSITIVE_INFINITY;
            if (!moves()) return StopReason.PRECISION_REACHED;
            iterations++;
            evaluate(space.trial);
            if (!accept(expected, fine)) continue;
            space.swap();
            space.buildNormal(space.current);
            space.buildDescent(space.current);
            raiseScale();
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
        double ratio = (before - after) / expected;
        if (fine && Math.abs(before - after) <= 10 * RESOLUTION * before) ratio = 1;
        if (!Double.isFinite(after) || !(ratio > 1e-4)) {
            lambda = Math.max(lambda, 1e-12) * growth;
            growth *= 2;
            return false;
        }
        growth = 4;
        if (ratio > 0.75) lambda *= 0.05;
        else if (ratio < 0.25) lambda *= 4;
        if (lambda < 1e-40) lambda = 0;
        return true;
    }

    private void raiseScale() {
        for (int j = 0; j < space.count; j++) {
            double diagonal = space.normal[j * space.count + j];
            space.scale[j] = Math.max(space.scale[j], diagonal);
        }
    }

    private boolean moves() {
        boolean moves = false;
        for (int j = 0; j < space.count; j++) {
            double from = space.current.q[j];
            double to = Math.max(layout.lower[j], Math.min(layout.upper[j], from + space.step[j]));
            space.trial.q[j] = to;
            moves |= to != from;
        }
        return moves;
    }

    /** The step for a damping, with the decrease of the objective that the quadratic model expects of it. */
    private double findStep(double damping) {
        double[] q = space.current.q;
        BoxStep box = space.boxStep;
        boolean solved = box.solve(
                space.normal, space.scale, damping, space.descent, q, layout.lower, layout.upper, movable, space.step);
        if (!solved || box.worstPivot() < PIVOT_LIMIT) orthogonalStep(damping);
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

    private void orthogonalStep(double damping) {
        Arrays.fill(space.step, 0);
        BoxStep box = space.boxStep;
        double[] q = space.current.q;
        if (!box.begin(q, space.descent, layout.lower, layout.upper, movable)) return;
        do {
            space.orthogonal.solve(space, space.current, box, damping, space.scale, space.step);
        } while (box.clamp(q, space.step, layout.lower, layout.upper));
    }
}
