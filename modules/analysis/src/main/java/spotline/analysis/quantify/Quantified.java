package spotline.analysis.quantify;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * One row of a composition.
 *
 * @param line the line it was measured by, empty for an element that no line was measured of
 * @param spectrum label of the spectrum
 * @param atomicPercent of all elements of the composition, at.%; empty when below detection or withheld
 * @param statisticalU the part of its standard uncertainty that counting and end points make, at.%
 * @param detectionLimit at.%; empty when it cannot be told
 */
public record Quantified(
        String element,
        String line,
        String spectrum,
        Basis basis,
        Optional<Estimate> atomicPercent,
        OptionalDouble statisticalU,
        boolean belowDetection,
        OptionalDouble detectionLimit) {

    /** Where the standard uncertainty comes from, at.%; empty where there is no number or its uncertainty is unknown. */
    public Optional<UncertaintyBudget> budget() {
        return atomicPercent.map(UncertaintyBudget::of).filter(UncertaintyBudget::known);
    }

    /** The same row with its numbers taken out. */
    public Quantified withheld() {
        return new Quantified(
                element,
                line,
                spectrum,
                basis,
                Optional.empty(),
                OptionalDouble.empty(),
                belowDetection,
                OptionalDouble.empty());
    }
}
