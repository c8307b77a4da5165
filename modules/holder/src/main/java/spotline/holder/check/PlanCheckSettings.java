package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * Thresholds of {@link PlanCheck}.
 *
 * @param overhangLimitMm how far a specimen may reach beyond the holder's outline, mm
 * @param usableLimitMm how far a specimen may reach beyond the usable area, mm
 * @param offSpecimenLimitMm how far a spot may lie beside its specimen, mm
 * @param overlapLimitMm2 area that two specimens, or a specimen and a keep-out area, may share, mm2
 * @param sampleCurrentA current that flows from the sample to the holder, A
 * @param negligiblePotentialV potential of the surface that a grounded sample may take, V
 */
public record PlanCheckSettings(
        double overhangLimitMm,
        double usableLimitMm,
        double offSpecimenLimitMm,
        double overlapLimitMm2,
        double sampleCurrentA,
        double negligiblePotentialV) {
    /**
     * No overhang, no overlap, no spot beside its specimen; 10 nA and 0.1 V, so that a grounded sample may have 10 Mohm.
     * Common practice, no source.
     */
    public static final PlanCheckSettings DEFAULT = new PlanCheckSettings(0, 0, 0, 0, 10e-9, 0.1);

    public PlanCheckSettings {
        Problems.throwIfAny(check(
                overhangLimitMm,
                usableLimitMm,
                offSpecimenLimitMm,
                overlapLimitMm2,
                sampleCurrentA,
                negligiblePotentialV));
    }

    /** Every problem at once. */
    public static List<Problem> check(
            double overhangLimitMm,
            double usableLimitMm,
            double offSpecimenLimitMm,
            double overlapLimitMm2,
            double sampleCurrentA,
            double negligiblePotentialV) {
        List<Problem> problems = new ArrayList<>();
        notNegative(problems, "overhangLimitMm", overhangLimitMm, "mm");
        notNegative(problems, "usableLimitMm", usableLimitMm, "mm");
        notNegative(problems, "offSpecimenLimitMm", offSpecimenLimitMm, "mm");
        notNegative(problems, "overlapLimitMm2", overlapLimitMm2, "mm2");
        above0(problems, "sampleCurrentA", sampleCurrentA, "A");
        above0(problems, "negligiblePotentialV", negligiblePotentialV, "V");
        return problems;
    }

    private static void notNegative(List<Problem> problems, String field, double value, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            problems.add(new Problem(field, value + " " + unit, "0 " + unit + " or more"));
        }
    }

    private static void above0(List<Problem> problems, String field, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            problems.add(new Problem(field, value + " " + unit, "above 0 " + unit));
        }
    }

    /** Resistance at which the surface takes the negligible potential, ohm. */
    public double resistanceLimitOhm() {
        return negligiblePotentialV / sampleCurrentA;
    }
}
