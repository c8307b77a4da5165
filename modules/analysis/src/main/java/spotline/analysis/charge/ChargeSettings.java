package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * How a spot's energy reference is to be found.
 *
 * @param referenceEv energy that the reference line is set to, eV; for adventitious carbon 284.8 unless said; sample-carbon
 *     and internal-line have no default
 * @param referenceUncertaintyEv its standard uncertainty, eV
 * @param referenceLine line of an internal reference: {@code "O 1s"}
 * @param shiftEv the shift of the method fixed, eV
 * @param workFunction of the surface, for the method work-function; measured from the low-energy cutoff where empty
 * @param temperatureK of the sample while its Fermi edge was measured, K
 * @param check a second reference that the first is held against
 * @param uncharged width of the reference line on a surface that does not charge, at the same settings
 * @param interpolateDrift whether each scan is shifted by what its own time asks for; a decision of the analyst
 * @param reason in the analyst's words, with the source of the value; required for internal-line, sample-carbon and fixed,
 *     and for adventitious carbon where the record speaks against it
 */
public record ChargeSettings(
        ChargeMethod method,
        OptionalDouble referenceEv,
        OptionalDouble referenceUncertaintyEv,
        String referenceLine,
        OptionalDouble shiftEv,
        Optional<WorkFunction> workFunction,
        double temperatureK,
        Optional<SecondReference> check,
        Optional<UnchargedWidth> uncharged,
        boolean interpolateDrift,
        String reason,
        ChargeLimits limits) {
    /** Room temperature, K. */
    public static final double ROOM_TEMPERATURE_K = 300;

    /** A work function and its standard uncertainty, eV. */
    public record WorkFunction(double valueEv, double standardUncertaintyEv) {
        public WorkFunction {
            List<Problem> problems = new ArrayList<>();
            if (!(valueEv > 1 && valueEv < 10))
                problems.add(new Problem("workFunctionEv", valueEv + " eV", "1 to 10 eV"));
            uncertainty(problems, "workFunctionUncertaintyEv", standardUncertaintyEv);
            Problems.throwIfAny(problems);
        }
    }

    /** Another line of known state: {@code "O 1s"}, its energy and standard uncertainty, eV. */
    public record SecondReference(String line, double energyEv, double standardUncertaintyEv) {
        public SecondReference {
            List<Problem> problems = new ArrayList<>();
            if (line.isBlank()) problems.add(new Problem("checkLine", "nothing", "a line such as \"O 1s\""));
            uncertainty(problems, "checkUncertaintyEv", standardUncertaintyEv);
            Problems.throwIfAny(problems);
        }
    }

    /** Full width at half maximum and its standard uncertainty, eV. */
    public record UnchargedWidth(double fwhmEv, double standardUncertaintyEv) {
        public UnchargedWidth {
            List<Problem> problems = new ArrayList<>();
            if (!(fwhmEv > 0)) problems.add(new Problem("unchargedFwhmEv", fwhmEv + " eV", "above 0 eV"));
            uncertainty(problems, "unchargedFwhmUncertaintyEv", standardUncertaintyEv);
            Problems.throwIfAny(problems);
        }
    }

    /** An uncertainty that was not stated is no 0. */
    private static void uncertainty(List<Problem> problems, String field, double value) {
        if (value >= 0) return;
        problems.add(new Problem(field, Double.isNaN(value) ? "nothing" : value + " eV", "0 eV or more"));
    }

    public ChargeSettings {
        Problems.throwIfAny(
                check(method, referenceEv, referenceUncertaintyEv, referenceLine, shiftEv, temperatureK, reason));
    }

    /** Nothing stated: the method is chosen from what the record says. */
    public static ChargeSettings byRecord() {
        return of(ChargeMethod.BY_RECORD, OptionalDouble.empty(), OptionalDouble.empty(), "", "");
    }

    /** A method with its reference; everything else as usual. */
    public static ChargeSettings of(
            ChargeMethod method, OptionalDouble referenceEv, OptionalDouble u, String line, String reason) {
        return new ChargeSettings(
                method,
                referenceEv,
                u,
                line,
                OptionalDouble.empty(),
                Optional.empty(),
                ROOM_TEMPERATURE_K,
                Optional.empty(),
                Optional.empty(),
                false,
                reason,
                ChargeLimits.USUAL);
    }

    public static List<Problem> check(
            ChargeMethod method,
            OptionalDouble referenceEv,
            OptionalDouble referenceUncertaintyEv,
            String referenceLine,
            OptionalDouble shiftEv,
            double temperatureK,
            String reason) {
        List<Problem> problems = new ArrayList<>();
        if (referenceUncertaintyEv.isPresent() && !(referenceUncertaintyEv.getAsDouble() >= 0))
            problems.add(new Problem(
                    "referenceUncertaintyEv", referenceUncertaintyEv.getAsDouble() + " eV", "0 eV or more"));
        if (!(temperatureK > 0 && temperatureK < 3000))
            problems.add(new Problem("temperatureK", temperatureK + " K", "above 0 and below 3000 K"));
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
