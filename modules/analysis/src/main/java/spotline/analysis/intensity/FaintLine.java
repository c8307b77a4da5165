package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spotline.analysis.background.EndpointPlacement;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * A line looked at through a window just wide enough for it, above a straight background from beside: the view in which
 * it stands out best, and the one its critical level is for.
 *
 * @param centreEv of the (first) peak, eV
 * @param curved what a background bent like its flanks takes besides
 * @param share of the line's intensity inside the window: a partner far from the first peak stays outside
 */
record FaintLine(
        double centreEv,
        Window window,
        Linear background,
        Subtraction subtraction,
        Optional<FlankCurvature> curved,
        double share,
        CriticalLevel level,
        String key,
        double stepEv) {
    /** Half the window, in widths of the line: it holds 99.7 % of a Gaussian. */
    private static final double HALF_WIDTH = 1.25;

    private static final double PLACES_PER_WIDTH = 2;

    /** A loss hump's crest leaves less above a straight background, relative to it. Common practice, no source. */
    private static final double LARGEST_HUMP = 0.25;

    /** Places a window apart are independent; half a width apart, every second or so counts. */
    private static final double INDEPENDENT = 0.6;

    /** The view at one place; empty where the scan has no room for it. */
    static Optional<FaintLine> at(
            BindingScan scan, LineTarget target, double centreEv, double fwhmEv, double places, String key, Work work) {
        double half = HALF_WIDTH * fwhmEv;
        boolean both = target.splittingEv() > 0 && target.splittingEv() <= 2 * half;
        double reach = both ? target.splittingEv() : 0;
        Window range = scan.range();
        Window window =
                new Window(Math.max(range.lowEv(), centreEv - half), Math.min(range.highEv(), centreEv + half + reach));
        int wings = Math.max(3, (int) Math.round(half / scan.stepEv()));
        Linear beside = new Linear(wings, EndpointPlacement.OUTSIDE);
        Optional<Subtraction> taken = beside.subtract(scan, window, key, work).result();
        if (taken.isEmpty()) return Optional.empty();
        double share = target.splittingEv() == 0 || both ? 1 : target.firstMemberShare();
        Optional<FlankCurvature> curved = FlankCurvature.of(scan, taken.get(), half);
        CriticalLevel level = level(scan, taken.get(), curved, places);
        return Optional.of(
                new FaintLine(centreEv, window, beside, taken.get(), curved, share, level, key, scan.stepEv()));
    }

    /**
     * The place among all that the target allows where the line stands out best, if it does so above the critical level;
     * else the place where it is expected, so that the area of nothing is not the largest of many.
     */
    static Optional<FaintLine> best(
            BindingScan scan, LineTarget target, double fwhmEv, List<Double> avoidedEv, String key, Work work) {
        double room =
                HALF_WIDTH * fwhmEv + Math.max(3, Math.round(HALF_WIDTH * fwhmEv / scan.stepEv())) * scan.stepEv();
        Window range = scan.range();
        double low = Math.max(target.lowEv(), range.lowEv() + room);
        double high = Math.min(target.highEv(), range.highEv() - room - target.splittingEv());
        double expected = Math.max(low, Math.min(high, target.expectedEv()));
        double step = fwhmEv / PLACES_PER_WIDTH;
        List<Double> centres = new ArrayList<>();
        centres.add(expected);
        for (double c = expected - step; c >= low; c -= step) centres.add(c);
        for (double c = expected + step; c <= high; c += step) centres.add(c);
        centres.removeIf(c ->
                c != expected && avoidedEv.stream().anyMatch(a -> Math.abs(a - c) < 2 * HALF_WIDTH * fwhmEv));
        double places = places(centres.size());
        Optional<FaintLine> atExpected = at(scan, target, expected, fwhmEv, places, key, work);
        return centres.stream()
                .map(centre -> at(scan, target, centre, fwhmEv, places, key, work))
                .flatMap(Optional::stream)
                .filter(view -> view.clearness() > 1)
                .max(Comparator.comparingDouble(FaintLine::clearness))
                .or(() -> atExpected);
    }

    private static double places(int centres) {
        return 1 + (centres - 1) * INDEPENDENT;
    }

    /** Net counts over the critical level. */
    private double clearness() {
        return netCounts() / Math.max(level.critical(), 1e-9);
    }

    private double netCounts() {
        double sum = 0;
        for (int i = subtraction.from(); i < subtraction.to(); i++) sum += subtraction.net(i);
        return sum - curved.map(FlankCurvature::counts).orElse(0.0);
    }

    /** Whether all that stands above a straight background is the bend of its flanks; the search has chosen the place. */
    boolean isHump(LineTarget target, double fwhmEv) {
        double straight = netCounts() + curved.map(FlankCurvature::counts).orElse(0.0);
        if (curved.isEmpty() || straight > LARGEST_HUMP * backgroundCounts(subtraction)) return false;
        double places = places(1 + (int) (PLACES_PER_WIDTH * (target.highEv() - target.lowEv()) / fwhmEv));
        double critical = CriticalLevel.ofBest(level.deviation() * level.deviation(), 0, places)
                .critical();
        return netCounts() <= critical;
    }

    /** Area of the whole line, counts eV. */
    Estimate area() {
        Estimate straight = subtraction.netArea();
        Estimate net = curved.map(c -> Estimate.exact(straight.value() - c.counts() * stepEv)
                        .with("counting/" + key, straight.contribution("counting/" + key))
                        .with("endpoints/" + key, Math.sqrt(c.variance()) * stepEv))
                .orElse(straight);
        return net.times(1 / share);
    }

    double toArea(double counts, double stepEv) {
        return counts * stepEv / share;
    }

    private static CriticalLevel level(
            BindingScan scan, Subtraction straight, Optional<FlankCurvature> curved, double places) {
        double background = backgroundCounts(straight);
        double endpoints = straight.netArea()
                        .uncertaintyFrom(source -> source.startsWith("endpoints/"))
                        .orElse(0)
                / scan.stepEv();
        double variance = curved.map(FlankCurvature::variance).orElse(endpoints * endpoints);
        // Against the fixed flanks of a bend each place stands for itself
        return CriticalLevel.ofBest(background, variance, curved.isPresent() ? 1 + (places - 1) / INDEPENDENT : places);
    }

    private static double backgroundCounts(Subtraction straight) {
        double sum = 0;
        for (int i = straight.from(); i < straight.to(); i++) sum += straight.background(i);
        return sum;
    }
}
