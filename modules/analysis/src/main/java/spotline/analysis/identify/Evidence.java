package spotline.analysis.identify;

import java.util.List;

/**
 * Why an element is thought to be there.
 *
 * @param likelihoodGain twice the gain in log-likelihood that its lines bring to the model of the whole survey
 * @param missing lines expected above detection and not found
 * @param overlaps lines of it that other elements in the model lie under
 * @param alternatives other explanations that come close, the likeliest first
 * @param reasons the same in sentences, for a person
 */
public record Evidence(
        double likelihoodGain,
        List<LineMissing> missing,
        List<String> overlaps,
        List<Alternative> alternatives,
        List<String> reasons) {
    public static final Evidence NONE = new Evidence(Double.NaN, List.of(), List.of(), List.of(), List.of());

    public Evidence {
        missing = List.copyOf(missing);
        overlaps = List.copyOf(overlaps);
        alternatives = List.copyOf(alternatives);
        reasons = List.copyOf(reasons);
    }

    /**
     * A line that should be seen and is not.
     *
     * @param energyEv where it was expected, measured binding energy
     * @param expectedSignificance standard deviations it should stand out by
     * @param significance those it does
     */
    public record LineMissing(String line, double energyEv, double expectedSignificance, double significance) {}

    /**
     * Something else that would explain the same lines.
     *
     * @param explanation for a person: {@code "Pt"}, {@code "C 1s excited by stray Mg Ka"}
     * @param likelihoodGain as of the element itself; not a number where no model was fitted
     */
    public record Alternative(String explanation, double likelihoodGain) {}
}
