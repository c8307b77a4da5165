package spotline.run;

import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * A component peak of a fit.
 *
 * @param measuredPosition binding energy as measured, eV
 * @param referencedEv on the referenced scale, eV; empty when the spot's reference failed
 * @param fwhm of the whole peak, eV
 * @param area counts eV
 */
public record FittedPeak(
        String spectrum,
        String line,
        String peak,
        String shape,
        Estimate measuredPosition,
        OptionalDouble referencedEv,
        Estimate fwhm,
        Estimate area,
        double reducedChiSquare) {}
