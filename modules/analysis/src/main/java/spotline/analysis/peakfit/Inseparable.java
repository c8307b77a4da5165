package spotline.analysis.peakfit;

import spotline.core.Estimate;

/**
 * Two components that trade area against each other: only their sum is measured.
 *
 * @param correlation of the two areas
 * @param sum of the two areas, counts eV
 */
public record Inseparable(String one, String other, double correlation, Estimate sum) {}
