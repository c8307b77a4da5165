package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * How a spot's energy reference is to be found.
 *
 * @param referenceEv energy that the reference line is set to, eV; for adventitious carbon 284.8 unless said; the other
 *     methods have no default
 * @param referenceUncertaintyEv its standard uncertainty, eV
 * @param referenceLine line of an internal reference: {@code "O 1s"}
 * @param shiftEv the shift of the method fixed, eV
 * @param reason in the analyst's words; required for internal-line, sample-carbon and fixed
 * @param conductorToleranceEv a metal line of a grounded conductor may lie this far off, eV
 * @param largestMeasurementUEv a reference line known no better makes the decision doubtful, eV
 * @param widestReferenceFwhmEv a reference line wider makes the decision doubtful, eV
 * @param largestDriftEv first and last reference line may differ by this, eV
 */
public record ChargeSettings(
        ChargeMethod method,
        OptionalDouble referenceEv,
        OptionalDouble referenceUncertaintyEv,
        String referenceLine,
        OptionalDouble shiftEv,
        String reason,
        double conductorToleranceEv,
        double largestMeasurementUEv,
        double widestReferenceFwhmEv,
        double largestDriftEv) {
    public ChargeSettings {
        Problems.throwIfAny(check(method, referenceUncertaintyEv, referenceEv, referenceLine, shiftEv, reason));
    }

    public static List<Problem> check(
            ChargeMethod method,
            OptionalDouble referenceUncertaintyEv,
            OptionalDouble referenceEv,
            String referenceLine,
            OptionalDouble shiftEv,
            String reason) {
        List<Problem> problems = new ArrayList<>();
        if (referenceUncertaintyEv.isPresent() && !(referenceUncertaintyEv.getAsDouble() >= 0))
            problems.add(new Problem(
                    "referenceUncertaintyEv", referenceUncertaintyEv.getAsDouble() + " eV", "0 eV or more"));
        boolean named = method == ChargeMethod.SAMPLE_CARBON || method == ChargeMethod.INTERNAL_LINE;
        if (named && referenceEv.isEmpty())
            problems.add(
                    new Problem("referenceEv", "nothing", "an energy in eV: " + method.word() + " has no default"));
        if (method == ChargeMethod.INTERNAL_LINE && referenceLine.isBlank())
            problems.add(new Problem("referenceLine", "nothing", "a line such as \"O 1s\""));
        if (method == ChargeMethod.FIXED && shiftEv.isEmpty())
            problems.add(new Problem("shiftEv", "nothing", "a shift in eV"));
        if ((named || method == ChargeMethod.FIXED) && reason.isBlank())
            problems.add(new Problem("reason", "nothing", "why " + method.word() + " is right for this sample"));
        return problems;
    }
}
