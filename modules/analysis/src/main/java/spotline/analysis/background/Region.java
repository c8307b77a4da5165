package spotline.analysis.background;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * The channels a background is computed from: those of the window, and the endpoint channels inside or beside it.
 *
 * <p>Indices count from the region's first channel. Not copied out: package-private, and nobody writes to the arrays.
 */
final class Region {
    final BindingScan scan;
    final String key;
    /** Channel of the scan where the region begins. */
    final int first;

    final double[] energy;
    final double[] counts;
    /** The window's channels within the region: from inclusive, to exclusive. */
    final int from;

    final int to;
    final int endpointChannels;
    /** First channel of the endpoint averages. */
    final int lowStart;

    final int highStart;
    final List<Finding> findings;

    private Region(
            BindingScan scan, String key, int windowFrom, int windowTo, int m, boolean outside, List<Finding> f) {
        this.scan = scan;
        this.key = key;
        this.first = outside ? windowFrom - m : windowFrom;
        int end = outside ? windowTo + m : windowTo;
        this.energy = Arrays.copyOfRange(scan.energies(), first, end);
        this.counts = Arrays.copyOfRange(scan.counts(), first, end);
        this.from = windowFrom - first;
        this.to = windowTo - first;
        this.endpointChannels = m;
        this.lowStart = 0;
        this.highStart = energy.length - m;
        this.findings = List.copyOf(f);
    }

    /** Finds the channels, refuses what cannot be treated, and adds the region's own findings to the outcome. */
    static Outcome<Subtraction> treat(
            Background settings,
            BindingScan scan,
            Window window,
            String key,
            int channelsBetween,
            Function<Region, Outcome<Subtraction>> computation) {
        double tolerance = 0.5 * scan.stepEv();
        Window range = scan.range();
        if (window.lowEv() < range.lowEv() - tolerance || window.highEv() > range.highEv() + tolerance) {
            return untreated(
                    scan,
                    "background-window",
                    "The window " + ev(window.lowEv()) + " to " + ev(window.highEv())
                            + " eV reaches beyond the scan, which runs from " + ev(range.lowEv()) + " to "
                            + ev(range.highEv()) + " eV.");
        }
        int windowFrom = scan.firstAtOrAbove(window.lowEv());
        int windowTo = scan.lastAtOrBelow(window.highEv()) + 1;
        int m = settings.endpointChannels();
        boolean wanted = settings.placement() == EndpointPlacement.OUTSIDE;
        boolean outside = wanted && windowFrom >= m && windowTo + m <= scan.channels();
        int needed = channelsBetween + (outside ? 0 : 2 * m);
        if (windowTo - windowFrom < needed) {
            return untreated(
                    scan,
                    "background-channels",
                    "The window " + ev(window.lowEv()) + " to " + ev(window.highEv()) + " eV holds "
                            + Math.max(0, windowTo - windowFrom) + " channels, fewer than the " + needed + " that a "
                            + settings.describe() + " background needs.");
        }
        List<Finding> findings = new ArrayList<>();
        if (wanted && !outside) {
            findings.add(Finding.caution(
                            "background-endpoints",
                            "The scan has " + Math.min(windowFrom, scan.channels() - windowTo)
                                    + " channels beside the window where " + m
                                    + " were asked for, so the endpoint channels were taken inside the window.")
                    .in(scan.label()));
        }
        Region region = new Region(scan, key, windowFrom, windowTo, m, outside, findings);
        return computation.apply(region);
    }

    static Outcome<Subtraction> untreated(BindingScan scan, String rule, String message) {
        return Outcome.untreated(Finding.caution(rule, message).in(scan.label()));
    }

    Outcome<Subtraction> untreated(String rule, String message) {
        return untreated(scan, rule, message);
    }

    int channels() {
        return to - from;
    }

    double[] windowCounts() {
        return Arrays.copyOfRange(counts, from, to);
    }

    double[] windowEnergies() {
        return Arrays.copyOfRange(energy, from, to);
    }

    /** Energy each channel of the window stands for, eV. */
    double[] widths() {
        return Arrays.copyOfRange(regionWidths(), from, to);
    }

    /** The same for every channel of the region. */
    double[] regionWidths() {
        double[] widths = new double[counts.length];
        for (int i = 0; i < widths.length; i++) widths[i] = scan.channelWidthEv(first + i);
        return widths;
    }

    double low() {
        return Endpoints.mean(counts, lowStart, endpointChannels);
    }

    double high() {
        return Endpoints.mean(counts, highStart, endpointChannels);
    }

    double lowEnergy() {
        return Endpoints.mean(energy, lowStart, endpointChannels);
    }

    double highEnergy() {
        return Endpoints.mean(energy, highStart, endpointChannels);
    }

    /** Adds the derivative of the low and the high endpoint average to a gradient over the region. */
    void addEndpoints(double lowSlope, double highSlope, double[] gradient) {
        for (int i = 0; i < endpointChannels; i++) {
            gradient[lowStart + i] += lowSlope / endpointChannels;
            gradient[highStart + i] += highSlope / endpointChannels;
        }
    }

    /**
     * Standard uncertainty of the difference of the two endpoint averages: from the counts where they are counts, else
     * from the scatter of the averaged channels; 0 where neither says anything.
     */
    double differenceUncertainty() {
        double variance = 0;
        for (int start : new int[] {lowStart, highStart}) {
            double mean = Endpoints.mean(counts, start, endpointChannels);
            double sum = 0;
            for (int i = start; i < start + endpointChannels; i++) {
                sum += scan.countsKnown() ? Math.max(0, counts[i]) : (counts[i] - mean) * (counts[i] - mean);
            }
            double freedom = scan.countsKnown() ? endpointChannels : Math.max(1, endpointChannels - 1);
            variance += sum / (freedom * endpointChannels);
        }
        return Math.sqrt(variance);
    }

    private static String ev(double value) {
        return Decimal.fixed(value, 2);
    }
}
