package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.List;
import spotline.analysis.background.Background;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * How an intensity is taken.
 *
 * @param background subtracted where it exists for the data
 * @param fallback subtracted where it does not, with a finding
 * @param detection what tells a line from noise
 * @param searchFwhmEv width of a line that the search is tuned to, eV
 * @param minimumSignificance a peak less clear than this is not one to lay a window on
 * @param lowMarginFwhm window below the lowest component, in widths of the line
 * @param highMarginFwhm window above the highest component, in widths of the line
 * @param smallestMarginEv neither margin is below this, eV
 * @param stateReachEv how far above the main peak chemical states are expected, eV
 */
public record IntensitySettings(
        Background background,
        Background fallback,
        DetectionRule detection,
        double searchFwhmEv,
        double minimumSignificance,
        double lowMarginFwhm,
        double highMarginFwhm,
        double smallestMarginEv,
        double stateReachEv) {
    public IntensitySettings {
        Problems.throwIfAny(check(
                searchFwhmEv, minimumSignificance, lowMarginFwhm, highMarginFwhm, smallestMarginEv, stateReachEv));
    }

    /** The same with a background that nothing stands in for. */
    public IntensitySettings on(Background stated) {
        return new IntensitySettings(
                stated,
                stated,
                detection,
                searchFwhmEv,
                minimumSignificance,
                lowMarginFwhm,
                highMarginFwhm,
                smallestMarginEv,
                stateReachEv);
    }

    /** The same, with the fallback put first: for a line of which a replicate spot refuses the chosen background. */
    public IntensitySettings fallbackFirst() {
        return new IntensitySettings(
                fallback,
                background,
                detection,
                searchFwhmEv,
                minimumSignificance,
                lowMarginFwhm,
                highMarginFwhm,
                smallestMarginEv,
                stateReachEv);
    }

    public static List<Problem> check(
            double searchFwhmEv,
            double minimumSignificance,
            double lowMarginFwhm,
            double highMarginFwhm,
            double smallestMarginEv,
            double stateReachEv) {
        List<Problem> problems = new ArrayList<>();
        if (!(searchFwhmEv > 0 && searchFwhmEv <= 10))
            problems.add(new Problem("searchFwhmEv", searchFwhmEv + " eV", "above 0 and at most 10 eV"));
        if (!(minimumSignificance >= 3))
            problems.add(new Problem("minimumSignificance", "" + minimumSignificance, "3 or more"));
        if (!(lowMarginFwhm >= 1)) problems.add(new Problem("lowMarginFwhm", "" + lowMarginFwhm, "1 or more"));
        if (!(highMarginFwhm >= 1)) problems.add(new Problem("highMarginFwhm", "" + highMarginFwhm, "1 or more"));
        if (!(smallestMarginEv >= 0))
            problems.add(new Problem("smallestMarginEv", smallestMarginEv + " eV", "0 eV or more"));
        if (!(stateReachEv >= 0)) problems.add(new Problem("stateReachEv", stateReachEv + " eV", "0 eV or more"));
        return problems;
    }
}
