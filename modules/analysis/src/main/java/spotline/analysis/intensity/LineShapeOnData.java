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
 */
record LineShapeOnData(double peakEv, double significance, double fwhmEv, double lowestEv, double highestEv) {
    /** A component with less of the strongest one's area is left to the margins. */
    private static final double SMALLEST_SHARE = 0.03;

    private static final double USUAL_FWHM = 1.5;

    static LineShapeOnData find(BindingScan scan, LineTarget target, IntensitySettings settings) {
        double searchFwhm = Math.max(settings.searchFwhmEv(), 2.5 * scan.stepEv());
        List<SurveyPeak> peaks = new PeakSearch(searchFwhm, settings.minimumSignificance()).find(scan);
        Optional<SurveyPeak> top = peaks.stream()
                .filter(p -> p.energyEv() >= target.lowEv() && p.energyEv() <= target.highEv())
                .max((a, b) -> Double.compare(a.area(), b.area()));
        double usual = Math.max(USUAL_FWHM, searchFwhm);
        if (top.isEmpty()) {
            return new LineShapeOnData(target.expectedEv(), 0, usual, target.expectedEv(), target.expectedEv());
        }
        double peak = top.get().energyEv();
        double lowest = peak;
        double highest = peak;
        for (SurveyPeak p : peaks) {
            boolean inside = p.energyEv() >= target.lowEv() && p.energyEv() <= target.highEv();
            boolean partner = target.splittingEv() > 0
                    && Math.abs(p.energyEv() - peak - target.splittingEv()) < 0.3 * target.splittingEv();
            if (!inside || partner || p.area() < SMALLEST_SHARE * top.get().area()) continue;
            lowest = Math.min(lowest, p.energyEv());
            highest = Math.max(highest, p.energyEv());
        }
        return new LineShapeOnData(peak, top.get().significance(), width(scan, peak, usual), lowest, highest);
    }

    /** Width at half height above the lower of the two feet, each side walked by itself. */
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
        double width = left + right;
        return width > 0 && Double.isFinite(width) ? Math.max(width, 2 * scan.stepEv()) : usual;
    }

    private static double halfWay(BindingScan scan, int top, int end, double height) {
        double foot = height;
        int step = end >= top ? 1 : -1;
        for (int i = top; i != end + step; i += step) foot = Math.min(foot, scan.counts(i));
        double half = 0.5 * (height + foot);
        for (int i = top; i != end + step; i += step) {
            if (scan.counts(i) < half) return Math.abs(scan.energy(i) - scan.energy(top));
        }
        return Math.abs(scan.energy(end) - scan.energy(top));
    }
}
