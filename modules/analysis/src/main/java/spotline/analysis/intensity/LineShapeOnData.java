package spotline.analysis.intensity;

import java.util.List;
import java.util.Optional;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Where a line really lies in a scan: its top, its width, and how far its components reach.
 *
 * @param peakEv top of the strongest component, eV
 * @param significance of that top in the peak search; 0 when the search found none
 * @param fwhmEv width at half height, eV
 * @param lowestEv lowest component found, eV
 * @param highestEv highest component found (doublet partners left out), eV
 * @param floorEv halfway to the next line of another element below, eV; negative infinity when there is none
 * @param ceilingEv halfway to the next line of another element above, eV; infinity when there is none
 * @param avoidedEv peaks of other elements in the scan, eV
 */
record LineShapeOnData(
        double peakEv,
        double significance,
        double fwhmEv,
        double lowestEv,
        double highestEv,
        double floorEv,
        double ceilingEv,
        List<Double> avoidedEv) {
    LineShapeOnData {
        avoidedEv = List.copyOf(avoidedEv);
    }

    /** A component with less of the strongest one's area is left to the margins. */
    private static final double SMALLEST_SHARE = 0.03;

    private static final double USUAL_FWHM = 1.5;

    static LineShapeOnData find(BindingScan scan, LineTarget target, IntensitySettings settings) {
        double searchFwhm = Math.max(settings.searchFwhmEv(), 2.5 * scan.stepEv());
        List<SurveyPeak> peaks = new PeakSearch(searchFwhm, settings.minimumSignificance()).find(scan);
        List<SurveyPeak> foreign =
                peaks.stream().filter(p -> target.foreign(p.energyEv())).toList();
        List<SurveyPeak> own = peaks.stream()
                .filter(p -> p.energyEv() >= target.lowEv() && p.energyEv() <= target.highEv())
                .filter(p -> !foreign.contains(p))
                .toList();
        Optional<SurveyPeak> top = own.stream().max((a, b) -> Double.compare(a.area(), b.area()));
        double usual = Math.max(USUAL_FWHM, searchFwhm);
        if (top.isEmpty()) {
            double expected = target.expectedEv();
            return new LineShapeOnData(
                    expected,
                    0,
                    usual,
                    expected,
                    expected,
                    Double.NEGATIVE_INFINITY,
                    Double.POSITIVE_INFINITY,
                    foreign.stream().map(SurveyPeak::energyEv).toList());
        }
        double peak = top.get().energyEv();
        double lowest = peak;
        double highest = peak;
        for (SurveyPeak p : own) {
            boolean partner = target.splittingEv() > 0
                    && Math.abs(p.energyEv() - peak - target.splittingEv()) < 0.3 * target.splittingEv();
            if (partner || p.area() < SMALLEST_SHARE * top.get().area()) continue;
            lowest = Math.min(lowest, p.energyEv());
            highest = Math.max(highest, p.energyEv());
        }
        double last = highest + target.splittingEv();
        double floor = Double.NEGATIVE_INFINITY;
        double ceiling = Double.POSITIVE_INFINITY;
        for (SurveyPeak f : foreign) {
            if (f.area() < SMALLEST_SHARE * top.get().area()) continue;
            if (f.energyEv() < lowest) floor = Math.max(floor, 0.5 * (f.energyEv() + lowest));
            if (f.energyEv() > last) ceiling = Math.min(ceiling, 0.5 * (f.energyEv() + last));
        }
        return new LineShapeOnData(
                peak,
                top.get().significance(),
                Math.max(searchFwhm, width(scan, peak, usual)),
                lowest,
                highest,
                floor,
                ceiling,
                List.of());
    }

    /** Twice the smaller half width at half height: shoulders and partners spoil one side, seldom both. */
    private static double width(BindingScan scan, double peak, double usual) {
        Window around = new Window(peak - 6 * usual, peak + 6 * usual);
        int from = Math.max(0, scan.firstAtOrAbove(around.lowEv()));
        int to = Math.min(scan.channels() - 1, scan.lastAtOrBelow(around.highEv()));
        int top = Math.max(from, Math.min(to, scan.firstAtOrAbove(peak)));
        double height = scan.counts(top);
        for (int i = Math.max(from, top - 1); i <= Math.min(to, top + 1); i++)
            height = Math.max(height, scan.counts(i));
        double left = halfWay(scan, top, from, height);
        double right = halfWay(scan, top, to, height);
        double width = 2 * Math.min(left, right);
        return width > 0 && Double.isFinite(width) ? Math.max(width, 2 * scan.stepEv()) : usual;
    }

    private static double halfWay(BindingScan scan, int top, int end, double height) {
        double foot = height;
        int step = end >= top ? 1 : -1;
        for (int i = top; i != end + step; i += step) foot = Math.min(foot, scan.counts(i));
        double half = 0.5 * (height + foot);
        for (int i = top; i != end + step; i += step) {
            if (scan.counts(i) >= half) continue;
            int before = i - step;
            double share = (scan.counts(before) - half) / (scan.counts(before) - scan.counts(i));
            double at = scan.energy(before) + share * (scan.energy(i) - scan.energy(before));
            return Math.abs(at - scan.energy(top));
        }
        return Math.abs(scan.energy(end) - scan.energy(top));
    }
}
