package spotline.analysis.intensity;

import spotline.spectra.BindingScan;

/**
 * Where the data let a window end.
 *
 * <p>Behind a line the counts go through a minimum between the zero-loss electrons and their loss structure. An end beyond
 * it gives the background a step that does not lie under the line: the end moves in to the minimum when this is clearly
 * (three standard deviations of counting) below the usual end and nothing but a steady rise lies between; a bump may be a
 * chemical state, and leaves the end where it was. Before a line an end that stands on a slope moves out to its foot.
 *
 * <p>Shape: one energy. Units: eV. Errors: none. Source: derived; losses below the band gap of an insulator do not occur.
 */
final class WindowEnds {
    private static final double CLEAR = 3;
    private static final double SMOOTHED_EV = 0.7;

    private final BindingScan scan;
    private final int half;

    WindowEnds(BindingScan scan) {
        this.scan = scan;
        this.half = Math.max(1, (int) Math.round(0.5 * SMOOTHED_EV / scan.stepEv()));
    }

    /**
     * @param usualEv where the window ends otherwise
     * @param furthestEv no end is further out
     */
    double low(double usualEv, double furthestEv) {
        int at = Math.max(half, scan.firstAtOrAbove(usualEv) + half);
        int last = Math.max(half, scan.firstAtOrAbove(furthestEv) + half);
        if (at >= scan.channels() - half || last >= at) return usualEv;
        double atUsual = mean(at);
        int lowest = at;
        for (int i = at - 1; i >= last; i--) {
            if (mean(i) > mean(lowest) + CLEAR * deviation(mean(lowest))) break;
            if (mean(i) < mean(lowest)) lowest = i;
        }
        boolean onSlope = mean(lowest) < atUsual - CLEAR * Math.sqrt(2) * deviation(atUsual) && steep(lowest, at);
        return onSlope ? Math.max(furthestEv, scan.energy(lowest - half)) : usualEv;
    }

    /** The foot of a peak falls faster near the window than further out; a sloping background does not. */
    private boolean steep(int lowest, int at) {
        int middle = (lowest + at) / 2;
        return mean(at) - mean(middle) > 2 * (mean(middle) - mean(lowest));
    }

    /**
     * @param nearestEv no end is nearer to the line
     * @param usualEv where the window ends otherwise
     */
    double high(double nearestEv, double usualEv) {
        int first = Math.max(half, scan.firstAtOrAbove(nearestEv) - half);
        int last = Math.min(scan.channels() - 1, scan.lastAtOrBelow(usualEv)) - half;
        if (last <= first) return usualEv;
        int lowest = last;
        double highest = mean(last);
        double noise = deviation(mean(last));
        for (int i = last - 1; i >= first; i--) {
            if (mean(i) > highest + CLEAR * noise) break;
            if (mean(i) < mean(lowest)) lowest = i;
        }
        boolean clear = mean(lowest) < mean(last) - CLEAR * Math.sqrt(2) * noise;
        return clear ? Math.min(usualEv, scan.energy(lowest + half)) : usualEv;
    }

    private double mean(int channel) {
        double sum = 0;
        for (int k = channel - half; k <= channel + half; k++) sum += scan.counts(k);
        return sum / (2 * half + 1);
    }

    private double deviation(double mean) {
        return scan.countsKnown() ? Math.sqrt(Math.max(1, mean) / (2 * half + 1)) : 0.01 * Math.abs(mean);
    }
}
