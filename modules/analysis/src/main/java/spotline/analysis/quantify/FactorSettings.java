package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * What the theoretical factors take for granted, and how sure they are.
 *
 * @param meanFreePathExponent the inelastic mean free path goes as kinetic energy to this power
 * @param crossSectionRelativeU relative standard uncertainty of one cross section, independent for each line
 * @param meanFreePathExponentU standard uncertainty of the exponent, shared by all lines
 * @param transmissionExponentU standard uncertainty of the transmission as a power of kinetic energy, shared by all
 *     lines
 * @param sourceAnalyserAngleDeg angle between X-ray direction and analyser axis, degree, where the record gives none
 */
public record FactorSettings(
        double meanFreePathExponent,
        double crossSectionRelativeU,
        double meanFreePathExponentU,
        double transmissionExponentU,
        double sourceAnalyserAngleDeg) {
    public FactorSettings {
        Problems.throwIfAny(check(
                meanFreePathExponent,
                crossSectionRelativeU,
                meanFreePathExponentU,
                transmissionExponentU,
                sourceAnalyserAngleDeg));
    }

    public static List<Problem> check(
            double meanFreePathExponent,
            double crossSectionRelativeU,
            double meanFreePathExponentU,
            double transmissionExponentU,
            double sourceAnalyserAngleDeg) {
        List<Problem> problems = new ArrayList<>();
        if (!(meanFreePathExponent >= 0 && meanFreePathExponent <= 1.5))
            problems.add(new Problem("meanFreePathExponent", "" + meanFreePathExponent, "0 to 1.5"));
        if (!(crossSectionRelativeU >= 0 && crossSectionRelativeU < 1))
            problems.add(new Problem("crossSectionRelativeU", "" + crossSectionRelativeU, "0 to below 1"));
        if (!(meanFreePathExponentU >= 0 && meanFreePathExponentU < 1))
            problems.add(new Problem("meanFreePathExponentU", "" + meanFreePathExponentU, "0 to below 1"));
        if (!(transmissionExponentU >= 0 && transmissionExponentU < 1))
            problems.add(new Problem("transmissionExponentU", "" + transmissionExponentU, "0 to below 1"));
        if (!(sourceAnalyserAngleDeg >= 0 && sourceAnalyserAngleDeg <= 180))
            problems.add(new Problem("sourceAnalyserAngleDeg", sourceAnalyserAngleDeg + " degree", "0 to 180 degree"));
        return problems;
    }
}
