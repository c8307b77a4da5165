package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * Limits that an energy reference is held against; all are common practice, without a source, unless said.
 *
 * @param conductorToleranceEv a metal line of a grounded conductor may lie this far off, eV
 * @param fermiEdgeToleranceEv the Fermi edge of a grounded conductor may lie this far off 0, eV
 * @param measurementUEv a reference line known no better makes the decision doubtful, eV
 * @param referenceFwhmEv a C 1s reference line wider makes the decision doubtful, eV (monochromated source)
 * @param widthExcessEv a line may be this much wider than where the surface does not charge differentially, eV
 * @param driftEv first and last reference line may differ by this, eV
 * @param reducedChiSquare a fit worse makes the decision doubtful where the misfit shows as well
 * @param misfit share of the line's height that counts may differ from the fitted sum beyond their noise
 * @param carbonAtPercent less carbon than this makes adventitious carbon doubtful, at.%
 * @param siblingSpreadEv referenced lines of one sample may differ by this between its spots, eV
 */
public record ChargeLimits(
        double conductorToleranceEv,
        double fermiEdgeToleranceEv,
        double measurementUEv,
        double referenceFwhmEv,
        double widthExcessEv,
        double driftEv,
        double reducedChiSquare,
        double misfit,
        double carbonAtPercent,
        double siblingSpreadEv) {
    public static final ChargeLimits USUAL = new ChargeLimits(0.2, 0.05, 0.1, 1.45, 0.05, 0.1, 3, 0.02, 1, 0.2);

    public ChargeLimits {
        List<Problem> problems = new ArrayList<>();
        positive(problems, "conductorToleranceEv", conductorToleranceEv);
        positive(problems, "fermiEdgeToleranceEv", fermiEdgeToleranceEv);
        positive(problems, "largestMeasurementUEv", measurementUEv);
        positive(problems, "widestReferenceFwhmEv", referenceFwhmEv);
        positive(problems, "largestWidthExcessEv", widthExcessEv);
        positive(problems, "largestDriftEv", driftEv);
        positive(problems, "largestReducedChiSquare", reducedChiSquare);
        positive(problems, "largestMisfit", misfit);
        positive(problems, "leastCarbonAtPercent", carbonAtPercent);
        positive(problems, "siblingSpreadEv", siblingSpreadEv);
        Problems.throwIfAny(problems);
    }

    private static void positive(List<Problem> problems, String field, double value) {
        if (!(value > 0)) problems.add(new Problem(field, String.valueOf(value), "a number above 0"));
    }
}
