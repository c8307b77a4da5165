package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * What the theoretical factors take for granted, and how sure they are.
 *
 * @param kind {@link FactorKind#THEORETICAL} for the material's own mean free path, {@link FactorKind#AVERAGE_MATRIX} for
 *     that of the average matrix
 * @param meanFreePath of theoretical factors
 * @param crossSectionRelativeU relative standard uncertainty of one cross section, independent for each line
 * @param meanFreePathExponentU standard uncertainty of the mean free path as a power of kinetic energy, shared by all lines
 * @param transmissionExponentU standard uncertainty of the transmission as a power of kinetic energy, shared by all
 *     lines
 * @param sourceAnalyserAngleDeg angle between X-ray direction and analyser axis, degree, where the record gives none
 */
public record FactorSettings(
        FactorKind kind,
        MeanFreePathModel meanFreePath,
        Anisotropy anisotropy,
        double crossSectionRelativeU,
        double meanFreePathExponentU,
        double transmissionExponentU,
        double sourceAnalyserAngleDeg) {
    public FactorSettings {
        if (kind != FactorKind.THEORETICAL && kind != FactorKind.AVERAGE_MATRIX) {
            throw new IllegalArgumentException("factors of kind " + kind.word() + " are not computed");
        }
        Problems.throwIfAny(
                check(crossSectionRelativeU, meanFreePathExponentU, transmissionExponentU, sourceAnalyserAngleDeg));
    }

    public static List<Problem> check(
            double crossSectionRelativeU,
            double meanFreePathExponentU,
            double transmissionExponentU,
            double sourceAnalyserAngleDeg) {
        List<Problem> problems = new ArrayList<>();
        below1(problems, "crossSectionRelativeU", crossSectionRelativeU);
        below1(problems, "meanFreePathExponentU", meanFreePathExponentU);
        below1(problems, "transmissionExponentU", transmissionExponentU);
        if (!(sourceAnalyserAngleDeg >= 0 && sourceAnalyserAngleDeg <= 180))
            problems.add(new Problem("sourceAnalyserAngleDeg", sourceAnalyserAngleDeg + " degree", "0 to 180 degree"));
        return problems;
    }

    private static void below1(List<Problem> problems, String field, double value) {
        if (!(value >= 0 && value < 1)) problems.add(new Problem(field, "" + value, "0 to below 1"));
    }
}
