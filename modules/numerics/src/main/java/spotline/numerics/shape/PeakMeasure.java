package spotline.numerics.shape;

import java.util.Optional;

/**
 * What a person reads off a peak.
 *
 * @param maximumAt abscissa of the maximum, eV; not the position parameter where the shape is asymmetric
 * @param height ordinate of the maximum above the background
 * @param fwhm full width at half maximum of the whole shape, eV
 * @param area ordinate times eV, over the limits where there are any
 * @param areaLimits present where the integral of the shape diverges
 */
public record PeakMeasure(double maximumAt, double height, double fwhm, double area, Optional<AreaLimits> areaLimits) {}
