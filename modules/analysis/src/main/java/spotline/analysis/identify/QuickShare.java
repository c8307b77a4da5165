package spotline.analysis.identify;

import spotline.core.Estimate;

/**
 * An element's share by the amplitudes of the survey's model: cross sections, a mean free path as KE^0.75 and the
 * transmission, no overlayer correction.
 *
 * @param line the line that carries most of it
 * @param atomicPercent of the elements in the model
 */
public record QuickShare(String element, String line, Estimate atomicPercent) {}
