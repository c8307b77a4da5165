package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import spotline.analysis.background.Background;

/**
 * The background of a fit.
 *
 * @param fitted fitted along with the peaks; otherwise taken first, its own variance carried into every result
 */
public record BackgroundModel(Background background, boolean fitted) {
    public BackgroundModel {
        requireNonNull(background, "background");
    }

    public static BackgroundModel fittedAlong(Background background) {
        return new BackgroundModel(background, true);
    }

    public static BackgroundModel takenFirst(Background background) {
        return new BackgroundModel(background, false);
    }

    /** What a table or report calls it. */
    public String describe() {
        return background.describe() + (fitted ? ", fitted along" : ", taken first");
    }
}
