package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.reference.Line;

/**
 * An element whose main line falls on a peak, with what else is expected of it.
 *
 * @param expected its other photoelectron lines inside the survey
 * @param auger its Auger lines inside the survey
 */
record Candidate(String element, Line main, SurveyPeak peak, List<Expected> expected, List<AugerMatch> auger) {
    /** A line expected this far above noise must be there. */
    private static final double MUST_SHOW = 15;
    /** A line expected this far above noise counts as a second line when it is there. */
    private static final double MAY_COUNT = 4;
    /** Areas of one element's lines agree within this factor: overlayers, shake-up and the filter spoil them. */
    private static final double AREA_FACTOR = 3;
    /** Share of the main peak that nothing else explains. */
    private static final double OWN_SHARE = 0.5;

    /** @param significance expected; 0 for a line that tells nothing by its absence */
    record Expected(Line line, double energyEv, double area, double significance, Optional<SurveyPeak> peak) {
        boolean found() {
            return peak.isPresent() && peak.get().area() > area / AREA_FACTOR;
        }

        boolean fits() {
            return found() && peak.orElseThrow().area() < area * AREA_FACTOR;
        }
    }

    record AugerMatch(String transition, double energyEv, Optional<SurveyPeak> peak) {}

    /** No line that must show is missing. */
    boolean credible() {
        return expected.stream().noneMatch(e -> e.significance() > MUST_SHOW && !e.found());
    }

    private List<Expected> seconds() {
        return expected.stream()
                .filter(e -> e.significance() > MAY_COUNT && e.fits())
                .toList();
    }

    double weight(boolean declared) {
        double second = seconds().stream()
                .mapToDouble(e -> e.peak().orElseThrow().significance())
                .max()
                .orElse(0);
        boolean augerSeen = auger.stream().anyMatch(a -> a.peak().isPresent());
        double support = second + (augerSeen ? 0.5 * peak.significance() : 0);
        return Math.min(peak.significance(), 3 * support) + 0.1 * peak.significance() + (declared ? 1e6 : 0);
    }

    /** What is left of the candidate once stronger ones have claimed their peaks; empty when nothing is. */
    Optional<ElementSeen> judge(ClaimedPeaks claimed, boolean declared) {
        if (claimed.freeShare(peak) < OWN_SHARE) return Optional.empty();
        List<LineSeen> lines = new ArrayList<>();
        lines.add(new LineSeen(main.toString(), peak.energyEv(), peak.significance(), 1));
        int own = 0;
        for (Expected e : seconds()) {
            SurveyPeak seen = e.peak().orElseThrow();
            lines.add(new LineSeen(e.line().toString(), seen.energyEv(), seen.significance(), seen.area() / e.area()));
            if (claimed.freeShare(seen) >= OWN_SHARE) own++;
        }
        boolean augerSeen = false;
        for (AugerMatch match : auger) {
            if (match.peak().isEmpty()) continue;
            SurveyPeak seen = match.peak().get();
            if (claimed.freeShare(seen) < OWN_SHARE) continue;
            augerSeen = true;
            lines.add(
                    new LineSeen(element + " " + match.transition(), seen.energyEv(), seen.significance(), Double.NaN));
        }
        boolean otherExpected = expected.stream().anyMatch(e -> e.significance() > MAY_COUNT * 1.5);
        boolean onlyLine = !otherExpected && (declared || peak.significance() > MUST_SHOW);
        if (own > 0 || augerSeen || onlyLine) {
            return Optional.of(new ElementSeen(element, Verdict.PRESENT, lines, peak.significance()));
        }
        // One line and nothing to speak for or against it: said only of a clear peak.
        boolean clear = declared || peak.significance() > 2 * MUST_SHOW / 3;
        return clear && !otherExpected
                ? Optional.of(new ElementSeen(element, Verdict.POSSIBLE, lines, peak.significance()))
                : Optional.empty();
    }
}
