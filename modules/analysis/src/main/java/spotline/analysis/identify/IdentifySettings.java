package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * How a survey is searched.
 *
 * @param peakFwhmEv width that the search is tuned to, eV
 * @param minimumSignificance a peak below it is noise
 * @param lowestShiftEv range of shifts tried, eV added to measured binding energies
 * @param toleranceEv how far a line may lie outside the span of its known states, eV
 */
public record IdentifySettings(
        double peakFwhmEv,
        double minimumSignificance,
        double lowestShiftEv,
        double highestShiftEv,
        double toleranceEv) {
    public IdentifySettings {
        Problems.throwIfAny(check(peakFwhmEv, minimumSignificance, lowestShiftEv, highestShiftEv, toleranceEv));
    }

    public static List<Problem> check(
            double peakFwhmEv,
            double minimumSignificance,
            double lowestShiftEv,
            double highestShiftEv,
            double toleranceEv) {
        List<Problem> problems = new ArrayList<>();
        if (!(peakFwhmEv > 0 && peakFwhmEv <= 10))
            problems.add(new Problem("peakFwhmEv", peakFwhmEv + " eV", "above 0 and at most 10 eV"));
        if (!(minimumSignificance >= 3))
            problems.add(new Problem("minimumSignificance", "" + minimumSignificance, "3 or more"));
        if (!(lowestShiftEv <= 0 && highestShiftEv >= 0))
            problems.add(new Problem(
                    "lowestShiftEv", lowestShiftEv + " to " + highestShiftEv + " eV", "a range that holds 0 eV"));
        if (!(toleranceEv >= 0)) problems.add(new Problem("toleranceEv", toleranceEv + " eV", "0 eV or more"));
        return problems;
    }
}
