package spotline.analysis.quantify;

import spotline.core.Estimate;
import spotline.spectra.Window;

/**
 * What one line brings to a composition.
 *
 * @param normalised intensity over time and transmission over factor: proportional to the number of atoms, with all its
 *     uncertainty contributions
 * @param limitNormalised detection limit of the intensity, on the same scale
 * @param detected whether the intensity is above its critical level
 */
public record Contribution(
        String element,
        String line,
        String spectrum,
        Basis basis,
        Window window,
        Estimate normalised,
        double limitNormalised,
        boolean detected) {}
