package spotline.viewer.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spotline.holder.SpectrumRole;
import spotline.run.LinkedSpectrum;

/**
 * Every scan of a spot as an interval on one binding-energy axis.
 *
 * @param lowEv,highEv ends of the axis, eV as measured
 * @param lanes how many rows the intervals take so that none lies on another
 */
public record ScanLanes(double lowEv, double highEv, int lanes, List<Interval> intervals) {
    /**
     * @param spectrum label of the spectrum
     * @param name what the file calls it
     * @param lane 0 is the topmost
     * @param main whether it is quantified rather than kept to test drift and damage
     */
    public record Interval(
            String spectrum, String name, double lowEv, double highEv, int lane, boolean survey, boolean main) {}

    public static final ScanLanes NONE = new ScanLanes(0, 1, 0, List.of());

    public ScanLanes {
        intervals = List.copyOf(intervals);
    }

    /** Surveys take the first lanes; a narrow scan the first lane below them in which it does not lie on another. */
    public static ScanLanes of(List<LinkedSpectrum> spectra) {
        if (spectra.isEmpty()) return NONE;
        List<LinkedSpectrum> sorted = new ArrayList<>(spectra);
        sorted.sort(Comparator.comparing(LinkedSpectrum::survey).reversed());
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (LinkedSpectrum s : sorted) {
            low = Math.min(low, s.scan().range().lowEv());
            high = Math.max(high, s.scan().range().highEv());
        }
        double gap = 0.004 * (high - low);
        List<Interval> intervals = new ArrayList<>();
        int lanes = 0;
        for (LinkedSpectrum s : sorted) {
            double from = s.scan().range().lowEv();
            double to = s.scan().range().highEv();
            int lane = 0;
            while (taken(intervals, lane, from - gap, to + gap)) lane++;
            lanes = Math.max(lanes, lane + 1);
            boolean main = s.role() == SpectrumRole.MAIN || s.role() == SpectrumRole.UNKNOWN;
            intervals.add(new Interval(s.label(), s.region(), from, to, lane, s.survey(), main));
        }
        return new ScanLanes(low, high, lanes, intervals);
    }

    private static boolean taken(List<Interval> intervals, int lane, double from, double to) {
        return intervals.stream().anyMatch(i -> i.lane() == lane && i.lowEv() < to && i.highEv() > from);
    }
}
