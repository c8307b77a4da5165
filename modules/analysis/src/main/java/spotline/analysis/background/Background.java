package spotline.analysis.background;

import java.util.Optional;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * A background as settings, and the subtraction they stand for.
 *
 * <p>Every background works on a rising scale of binding energy: the low end is before the line, the high end is where
 * the line's own loss electrons are.
 */
public sealed interface Background
        permits Constant, Linear, Polynomial, Shirley, DataCappedShirley, TougaardTwo, TougaardThree {
    /** Channels averaged at each end of the window. */
    int endpointChannels();

    EndpointPlacement placement();

    /** What a table or report calls it, with the settings that matter for comparing results. */
    String describe();

    /**
     * The background under a window and the area above it.
     *
     * <p>Shape: one scan of n channels in; the channels inside the window out. Units: counts, and counts eV for areas,
     * before any transmission. Errors: untreated, with one sentence of what was measured against which limit, when the
     * window reaches beyond the scan, holds too few channels, or the background does not exist for these data.
     *
     * @param key what the area's uncertainty contributions are called after: {@code counting/KEY}, {@code endpoints/KEY}
     */
    Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work);

    /**
     * The same background as part of a peak fit; empty where it depends on the data in a way that a fit cannot follow.
     *
     * @param energy channels of the fit, rising binding energy, eV, at least as many as both ends need
     */
    Optional<FittedBackground> fitted(double[] energy);
}
