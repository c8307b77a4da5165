package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;

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
 * @param evidence what speaks for and against the decision
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
        Optional<ReferenceLineFit> fit,
        ChargeEvidence evidence) {
    public ChargeReference(
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
        this(
                method,
                referenceLine,
                referenceEv,
                measuredEv,
                shiftEv,
                measurementU,
                referenceU,
                verdict,
                sentence,
                fit,
                ChargeEvidence.NONE);
    }

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

    /**
     * A measured binding energy on the referenced scale, with its uncertainty; empty when the reference failed.
     *
     * <p>The reference value is one source that all lines of the spot share, so that the difference of two referenced
     * energies does not carry it.
     */
    public Optional<Estimate> referenced(Estimate measured) {
        return shift().map(measured::plus);
    }

    /** The shift with its uncertainty: of the reference value, and of the measured position under the fit's own keys. */
    public Optional<Estimate> shift() {
        if (shiftEv.isEmpty()) return Optional.empty();
        Optional<Estimate> placed = fit.filter(f -> measuredEv.isPresent())
                .map(f -> f.reference().position().times(-1));
        double shift = shiftEv.getAsDouble();
        Estimate measured = placed.map(p -> p.plus(shift - p.value())).orElseGet(() -> Estimate.exact(shift));
        boolean measuredByOther = placed.isEmpty() && method != ChargeMethod.NONE && measurementU.isPresent();
        if (measuredByOther)
            measured = measured.with("charge " + referenceLine + ":measured", -measurementU.getAsDouble());
        if (method == ChargeMethod.NONE) return Optional.of(measured);
        String key = "charge " + method.word() + ":reference";
        return Optional.of(measured.with(key, referenceU.orElse(Double.NaN)));
    }

    /** What every table of referenced energies has to say: {@code "C 1s set to 284.80 eV"}. */
    public String scale() {
        if (verdict == ChargeVerdict.FAILED) return "measured, not referenced";
        if (method == ChargeMethod.NONE) return "measured, Fermi level of the spectrometer";
        if (referenceEv.isEmpty()) return "shifted by " + spotline.core.Decimal.fixed(shiftEv.orElse(0), 2) + " eV";
        return referenceLine + " set to " + spotline.core.Decimal.fixed(referenceEv.getAsDouble(), 2) + " eV";
    }

    /** The same decision with more evidence. */
    public ChargeReference with(ChargeEvidence more) {
        return new ChargeReference(
                method,
                referenceLine,
                referenceEv,
                measuredEv,
                shiftEv,
                measurementU,
                referenceU,
                verdict,
                sentence,
                fit,
                more);
    }

    /** The same decision, doubted for further reasons; a failed one stays failed. */
    public ChargeReference doubted(List<String> doubts) {
        if (doubts.isEmpty() || verdict == ChargeVerdict.FAILED) return this;
        List<String> parts = new ArrayList<>(List.of(sentence));
        parts.add((verdict == ChargeVerdict.DOUBTFUL ? "Also: " : "Doubtful: ") + String.join("; ", doubts) + ".");
        return new ChargeReference(
                method,
                referenceLine,
                referenceEv,
                measuredEv,
                shiftEv,
                measurementU,
                referenceU,
                ChargeVerdict.DOUBTFUL,
                String.join(" ", parts),
                fit,
                evidence);
    }
}
