package spotline.numerics.fit;

import spotline.core.Work;

/**
 * Fits a problem.
 *
 * <p>Source: Levenberg-Marquardt with scaling and step control in the manner of J. J. More, Lecture Notes in Mathematics
 * 630 (1978) 105; counting likelihood by Fisher scoring; bounds by an active set inside each step.
 */
public final class Fit {
    private Fit() {}

    /** Errors: {@link java.util.concurrent.CancellationException} when the work is cancelled. */
    public static FitResult solve(FitProblem problem, FitSettings settings, Work work) {
        return new FitWorker().solve(problem, settings, work);
    }

    public static FitResult solve(FitProblem problem) {
        return solve(problem, FitSettings.DEFAULT, Work.UNWATCHED);
    }
}
