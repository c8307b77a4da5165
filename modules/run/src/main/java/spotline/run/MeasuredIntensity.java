package spotline.run;

import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;

/**
 * An intensity and what was done with it.
 *
 * @param transmissionApplied the response it was divided by, in words
 */
public record MeasuredIntensity(Intensity intensity, Basis basis, String transmissionApplied) {}
