package spotline.reference;

/**
 * A spin-orbit doublet.
 *
 * @param splittingEv binding energy of j = l - 1/2 less that of j = l + 1/2, eV, above 0
 * @param areaRatioLowToHigh intensity of j = l - 1/2 over that of j = l + 1/2 (0.5 for p, 0.667 for d, 0.75 for f by
 *     statistics)
 */
public record Doublet(double splittingEv, double areaRatioLowToHigh, String source) {}
