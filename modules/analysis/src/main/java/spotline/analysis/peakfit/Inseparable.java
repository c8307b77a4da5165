package spotline.analysis.peakfit;

import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * Two components that trade area against each other: only their sum is measured.
 *
 * @param correlation of the two areas; empty where an uncertainty is unknown
 * @param sum of the two areas, counts eV
 */
public record Inseparable(String one, String other, OptionalDouble correlation, Estimate sum) {}
