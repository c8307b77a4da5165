package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.analysis.background.Background;
import spotline.analysis.background.EndpointPlacement;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Subtraction;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Takes the intensity of one line: lays the window on the data, subtracts the background, and says whether the line is
 * more than noise.
 *
 * <p>Shape: one scan and one target in, one intensity out. Units: measured binding energy in eV, areas in counts eV
 * before transmission. Errors: untreated when the scan does not hold the line.
 *
 * <p>Source: window and end points ISO 20903; critical level ISO 19668.
 */
public final class IntensityMeasurement {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "intensity/1";

    /** The window in which a line is told from noise, in widths to either side of its top. */
    private static final double DETECTION_HALF_WIDTH = 1.25;

    private final IntensitySettings settings;

    public IntensityMeasurement(IntensitySettings settings) {
        this.settings = settings;
    }

    /** @param key names the uncertainty contributions of the area */
    public Outcome<Intensity> measure(BindingScan scan, LineTarget target, String key, Work work) {
        Window range = scan.range();
        if (!range.contains(target.expectedEv())) {
            return Outcome.untreated(Finding.caution(
                            "line-outside-scan",
                            String.format(
                                    Locale.ROOT,
                                    "%s is expected at %.1f eV, outside the measured %.1f to %.1f eV.",
                                    target.line(),
                                    target.expectedEv(),
                                    range.lowEv(),
                                    range.highEv()))
                    .in(scan.label()));
        }
        LineShapeOnData shape = LineShapeOnData.find(scan, target, settings);
        Window window = window(range, target, shape);
        List<Finding> findings = new ArrayList<>();
        narrowWindow(range, target, shape).ifPresent(f -> findings.add(f.in(scan.label())));
        Outcome<Subtraction> taken = settings.background().subtract(scan, window, key, work);
        Background used = settings.background();
        if (taken instanceof Outcome.Untreated<Subtraction> refused) {
            used = settings.fallback();
            taken = used.subtract(scan, window, key, work);
            if (shape.significance() > 0) {
                Finding why = refused.finding();
                findings.add(Finding.note(
                                "background-fallback",
                                target.line() + ": " + why.message() + " A " + used.describe()
                                        + " background was subtracted instead.")
                        .in(scan.label()));
            }
        }
        if (taken instanceof Outcome.Untreated<Subtraction> refused) return Outcome.untreated(refused.finding());
        Subtraction subtraction = taken.result().orElseThrow();
        double share = target.splittingEv() > 0 ? 0.5 : 1;
        OptionalDouble critical = OptionalDouble.empty();
        OptionalDouble limit = OptionalDouble.empty();
        if (scan.countsKnown()) {
            CriticalLevel level = criticalLevel(scan, shape, window, key, work);
            critical = OptionalDouble.of(level.critical() * scan.stepEv() / share);
            limit = OptionalDouble.of(level.detection() * scan.stepEv() / share);
        }
        boolean detected = shape.significance() > 0 && subtraction.netArea().value() > critical.orElse(0);
        return Outcome.done(
                new Intensity(
                        target.line(),
                        scan.label(),
                        shape.peakEv(),
                        shape.fwhmEv(),
                        window,
                        used.describe(),
                        subtraction.netArea(),
                        detected,
                        critical,
                        limit,
                        subtraction),
                findings);
    }

    private Window window(Window range, LineTarget target, LineShapeOnData shape) {
        double below = Math.max(settings.smallestMarginEv(), settings.lowMarginFwhm() * shape.fwhmEv());
        double above = Math.max(settings.smallestMarginEv(), settings.highMarginFwhm() * shape.fwhmEv());
        double highest =
                Math.max(shape.highestEv(), Math.min(target.highEv(), shape.peakEv() + settings.stateReachEv()));
        double low = Math.max(Math.max(range.lowEv(), shape.floorEv()), shape.lowestEv() - below);
        double high = Math.min(Math.min(range.highEv(), shape.ceilingEv()), highest + target.splittingEv() + above);
        return new Window(low, high);
    }

    private static java.util.Optional<Finding> narrowWindow(Window range, LineTarget target, LineShapeOnData shape) {
        double below = (shape.lowestEv() - range.lowEv()) / shape.fwhmEv();
        double above = (range.highEv() - shape.highestEv() - target.splittingEv()) / shape.fwhmEv();
        double smallest = Math.min(below, above);
        if (smallest >= 2 || shape.significance() == 0) return java.util.Optional.empty();
        return java.util.Optional.of(Finding.caution(
                "scan-too-narrow",
                String.format(
                        Locale.ROOT,
                        "The scan of %s ends %.1f FWHM %s the outermost component (limit 2): its background ends on the"
                                + " line.",
                        target.line(),
                        smallest,
                        below < above ? "below" : "above")));
    }

    /** Counts, over a window just wide enough for one peak, with a straight background from beside it. */
    private static CriticalLevel criticalLevel(
            BindingScan scan, LineShapeOnData shape, Window whole, String key, Work work) {
        double half = DETECTION_HALF_WIDTH * shape.fwhmEv();
        Window range = scan.range();
        double centre = Math.max(range.lowEv() + half, Math.min(range.highEv() - half, shape.peakEv()));
        Window narrow = new Window(Math.max(range.lowEv(), centre - half), Math.min(range.highEv(), centre + half));
        int m = Math.max(3, (int) Math.round(half / scan.stepEv()));
        Outcome<Subtraction> beside = new Linear(m, EndpointPlacement.OUTSIDE).subtract(scan, narrow, key, work);
        if (beside instanceof Outcome.Untreated) beside = Linear.of(2).subtract(scan, whole, key, work);
        if (beside.result().isEmpty()) return CriticalLevel.of(0, 0);
        Subtraction straight = beside.result().get();
        double background = 0;
        for (int i = straight.from(); i < straight.to(); i++) background += straight.background(i);
        double endpoints = straight.netArea()
                        .uncertaintyFrom(source -> source.startsWith("endpoints/"))
                        .orElse(0)
                / scan.stepEv();
        return CriticalLevel.of(background, endpoints * endpoints);
    }
}
