package spotline.demo.corpus;

import java.util.List;
import java.util.Optional;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * A simulated survey with what was put into it.
 *
 * @param transmission as an analyst would know it: not quite the one the survey was made with
 * @param chargingEv surface charging: added to every apparent binding energy
 * @param hydrocarbonPercent atomic percent of carbon bound to carbon and hydrogen, as it appears
 * @param elements those put in, the most abundant first
 */
public record SurveyCase(
        int number,
        BindingScan scan,
        Transmission transmission,
        boolean monochromated,
        double chargingEv,
        double hydrocarbonPercent,
        List<ElementTruth> elements) {
    public SurveyCase {
        elements = List.copyOf(elements);
    }

    public Optional<ElementTruth> element(String symbol) {
        return elements.stream().filter(e -> e.symbol().equals(symbol)).findFirst();
    }

    /**
     * An element put in.
     *
     * <p>Limits are of the main line in the counts expected under it: with B the counts of everything else between the
     * points where the line has fallen to 5 % of its top, and a background drawn from as many channels beside it,
     * {@code s0^2 = 2 B + (0.1 O)^2}, critical level {@code 1.645 s0}, detection limit {@code 2.71 + 3.29 s0}. O is the
     * part of B that lines and Auger groups of other elements make: an overlapping line is known to a tenth at best.
     *
     * <p>Source: ISO 19668 for the two limits; the tenth is common practice, no source.
     *
     * @param apparentPercent atomic percent from the areas of the main lines over cross section and KE^0.75
     * @param counts expected of the main line
     * @param countingLimit the detection limit without the overlap term
     */
    public record ElementTruth(
            String symbol,
            String mainLine,
            double apparentPercent,
            double counts,
            double criticalLevel,
            double detectionLimit,
            double countingLimit) {}
}
