package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spotline.reference.XraySatellite;

/** Which peaks of a survey are already explained, and how much of each. */
final class ClaimedPeaks {
    /** Energy losses follow a strong line up to this far, eV, with at most this share of its area in one peak. */
    private static final double LOSS_REACH = 32;

    private static final double LOSS_SHARE = 0.2;
    /** An Auger group reaches this far to either side of its main line, eV (common practice, no source). */
    private static final double AUGER_BELOW = 28;

    private static final double AUGER_ABOVE = 45;

    private final List<SurveyPeak> peaks;
    private final List<XraySatellite> satellites;
    private final Map<SurveyPeak, Double> explained = new HashMap<>();

    /** @param satellites of the source; none behind a monochromator */
    ClaimedPeaks(List<SurveyPeak> peaks, List<XraySatellite> satellites) {
        this.peaks = peaks;
        this.satellites = satellites;
    }

    /** Share of a peak's area that nothing explains yet. */
    double freeShare(SurveyPeak peak) {
        return Math.max(0, 1 - explained.getOrDefault(peak, 0.0) / peak.area());
    }

    void claim(Candidate candidate) {
        explain(candidate.peak(), candidate.peak().area());
        lossesOf(candidate.peak());
        for (Candidate.Expected e : candidate.expected()) {
            e.peak().ifPresent(p -> explain(p, e.fits() ? p.area() : e.area() * 1.5));
            e.peak().filter(p -> e.fits()).ifPresent(this::lossesOf);
            // Broad or shaken-up lines come out as more than one peak.
            for (SurveyPeak p : peaks) {
                if (p.energyEv() > e.energyEv() + 2 && p.energyEv() < e.energyEv() + 8) explain(p, 0.3 * e.area());
            }
        }
        for (Candidate.AugerMatch match : candidate.auger()) {
            for (SurveyPeak p : peaks) {
                double distance = p.energyEv() - match.energyEv();
                if (distance > -AUGER_BELOW && distance < AUGER_ABOVE)
                    explain(p, candidate.peak().area());
            }
        }
        satellitesOf(candidate.peak());
    }

    private void lossesOf(SurveyPeak strong) {
        for (SurveyPeak p : peaks) {
            double distance = p.energyEv() - strong.energyEv();
            if (distance > 1.5 && distance < LOSS_REACH) explain(p, LOSS_SHARE * strong.area());
        }
    }

    private void satellitesOf(SurveyPeak strong) {
        for (XraySatellite satellite : satellites) {
            for (SurveyPeak p : peaks) {
                double distance = strong.energyEv() - satellite.displacementEv() - p.energyEv();
                if (Math.abs(distance) < 1.5) explain(p, 2 * satellite.relativeHeight() * strong.area());
            }
        }
    }

    private void explain(SurveyPeak peak, double area) {
        explained.merge(peak, area, Double::sum);
    }

    List<SurveyPeak> unclaimed() {
        List<SurveyPeak> left = new ArrayList<>();
        for (SurveyPeak peak : peaks) if (freeShare(peak) > 0.5) left.add(peak);
        return left;
    }
}
