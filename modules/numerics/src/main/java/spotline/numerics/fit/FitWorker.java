package spotline.numerics.fit;

import org.jspecify.annotations.Nullable;
import spotline.core.Work;

/**
 * A solver that keeps its scratch between fits of one layout: for batches, one worker a thread. Results do not depend on
 * what it solved before.
 */
public final class FitWorker {
    private @Nullable Workspace workspace;

    /** As {@link Fit#solve(FitProblem, FitSettings, Work)}. */
    public FitResult solve(FitProblem problem, FitSettings settings, Work work) {
        Workspace mine = workspace;
        if (mine == null || !mine.fits(problem)) {
            mine = new Workspace(problem);
            workspace = mine;
        }
        return new LevenbergMarquardt(mine, problem, settings, work).run();
    }
}
