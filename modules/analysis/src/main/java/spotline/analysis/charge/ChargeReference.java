package spotline.analysis.charge;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The energy reference of one spot, as a decision that can be defended.
 *
 * @param referenceLine line whose position was used, empty when none was
 * @param referenceEv energy it is set to, eV
 * @param measuredEv where it was measured, eV
 * @param shiftEv what is added to a measured binding energy, eV: 0 when not needed, empty when failed
 * @param measurementU standard uncertainty of the measured position, eV
 * @param referenceU standard uncertainty of the reference value, eV
 * @param sentence the decision in one plain sentence
 * @param fit the peak fit that placed the line
 */
public record ChargeReference(
        ChargeMethod method,
        String referenceLine,
        OptionalDouble referenceEv,
        OptionalDouble measuredEv,
        OptionalDouble shiftEv,
        OptionalDouble measurementU,
        OptionalDouble referenceU,
        ChargeVerdict verdict,
        String sentence,
        Optional<ReferenceLineFit> fit) {

    /** Uncertainty of the shift: measurement and reference together; empty when either is unknown. */
    public OptionalDouble standardUncertainty() {
        return measurementU.isPresent() && referenceU.isPresent()
                ? OptionalDouble.of(Math.hypot(measurementU.getAsDouble(), referenceU.getAsDouble()))
                : OptionalDouble.empty();
    }

    /** A measured binding energy on the referenced scale; empty when the reference failed. */
    public OptionalDouble referenced(double measured) {
        return shiftEv.isPresent() ? OptionalDouble.of(measured + shiftEv.getAsDouble()) : OptionalDouble.empty();
    }
}
