package spotline.numerics.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;

/**
 * Fits from many starts: the problem's own, then starts drawn evenly between the bounds of each free parameter, or, where
 * one is missing, within {@code spread} times the size of its start (1 for a start of 0).
 *
 * @param starts number of starts, the problem's own included
 * @param seed of the draws
 * @param spread half width of the draws without bounds, relative to the start
 */
public record MultiStart(int starts, long seed, double spread) {
    /**
     * @param best fit with the smallest objective
     * @param objectives of all starts, infinite where a fit did not converge, in the order of the starts
     * @param reached number of starts that ended within 1e-6 of the best objective, relative
     */
    public record Outcome(FitResult best, List<Double> objectives, int reached) {
        public Outcome {
            objectives = List.copyOf(objectives);
        }
    }

    public MultiStart {
        if (starts < 1) throw new IllegalArgumentException("starts must be 1 or more, was " + starts);
        if (!(spread > 0) || Double.isInfinite(spread)) {
            throw new IllegalArgumentException("spread must be finite and above 0, was " + spread);
        }
    }

    public Outcome solve(FitProblem problem, FitSettings settings, Work work) {
        FitWorker worker = new FitWorker();
        FitResult best = worker.solve(problem, settings, work);
        List<Double> objectives = new ArrayList<>();
        objectives.add(score(best));
        for (int k = 1; k < starts; k++) {
            work.progress((double) k / starts, "starts");
            RandomGenerator random = RandomStreams.stream(seed, "multi-start", Integer.toString(k));
            FitResult next = worker.solve(problem.startingAt(draw(problem, random)), settings, work);
            objectives.add(score(next));
            if (score(next) < score(best)) best = next;
        }
        double limit = best.objective() + 1e-6 * Math.abs(best.objective());
        int reached = (int) objectives.stream().filter(value -> value <= limit).count();
        return new Outcome(best, objectives, reached);
    }

    private static double score(FitResult result) {
        return result.converged() ? result.objective() : Double.POSITIVE_INFINITY;
    }

    private double[] draw(FitProblem problem, RandomGenerator random) {
        Layout layout = problem.layout();
        double[] values = new double[problem.parameters().size()];
        for (int j = 0; j < layout.free.length; j++) {
            double start = layout.start[j];
            double half = spread * (start == 0 ? 1 : Math.abs(start));
            boolean bounded = Double.isFinite(layout.lower[j]) && Double.isFinite(layout.upper[j]);
            double low = bounded ? layout.lower[j] : Math.max(layout.lower[j], start - half);
            double high = bounded ? layout.upper[j] : Math.min(layout.upper[j], start + half);
            values[layout.free[j]] = low + (high - low) * random.nextDouble();
        }
        return values;
    }
}
