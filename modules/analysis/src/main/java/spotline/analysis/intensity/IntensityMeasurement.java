package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.background.Background;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
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
    public static final String STEP = "intensity/5";

    /** Relative uncertainty of a narrow window for states beside the strongest. Common practice, no source. */
    private static final double UNSEEN_STATES_U = 0.1;

    /** No window ends nearer to its highest component, in widths of the line, and never nearer than 2 eV. */
    private static final double NEAREST_END_FWHM = 1.75;

    private final IntensitySettings settings;

    public IntensityMeasurement(IntensitySettings settings) {
        this.settings = settings;
    }

    /** @param key names the uncertainty contributions of the area */
    public Outcome<Intensity> measure(BindingScan scan, LineTarget target, String key, Work work) {
        return measure(scan, target, Optional.empty(), key, work);
    }

    /** @param stated a window of the analyst's, which is taken as it is */
    public Outcome<Intensity> measure(
            BindingScan scan, LineTarget target, Optional<Window> stated, String key, Work work) {
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
        if (stated.isPresent()) return stated(scan, target, shape, stated.get(), key, work);
        if (shape.significance() == 0) {
            return faint(
                    scan, target, shape, FaintLine.best(scan, target, shape.fwhmEv(), shape.avoidedEv(), key, work));
        }
        Optional<FaintLine> view = FaintLine.at(scan, target, shape.peakEv(), shape.fwhmEv(), 1, key, work);
        Outcome<Intensity> clear = clear(scan, target, shape, window(scan, target, shape), view, key, work);
        boolean hump = view.filter(v -> v.isHump(target, shape.fwhmEv())).isPresent();
        boolean drowned = clear.result()
                .map(i -> BackgroundFitness.drowned(i.subtraction()))
                .orElse(true);
        if (!(hump || drowned) || view.isEmpty() || !scan.countsKnown()) return clear;
        return faint(
                scan,
                target,
                shape,
                hump
                        ? FaintLine.best(scan, target, shape.fwhmEv(), shape.avoidedEv(), key, work)
                                .or(() -> view)
                        : view);
    }

    /** A line in the analyst's window, whatever the peak search makes of it. */
    private Outcome<Intensity> stated(
            BindingScan scan, LineTarget target, LineShapeOnData shape, Window window, String key, Work work) {
        Window range = scan.range();
        if (window.lowEv() < range.lowEv() || window.highEv() > range.highEv()) {
            return Outcome.untreated(Finding.caution(
                            "window-outside-scan",
                            String.format(
                                    Locale.ROOT,
                                    "The window stated for %s, %.2f to %.2f eV, reaches beyond the measured %.2f to %.2f"
                                            + " eV: it was not measured.",
                                    target.line(),
                                    window.lowEv(),
                                    window.highEv(),
                                    range.lowEv(),
                                    range.highEv()))
                    .in(scan.label()));
        }
        Optional<FaintLine> view = FaintLine.at(scan, target, shape.peakEv(), shape.fwhmEv(), 1, key, work);
        return clear(scan, target, shape, window, view, key, work);
    }

    /** A line that the peak search has placed: the window reaches over all its states. */
    private Outcome<Intensity> clear(
            BindingScan scan,
            LineTarget target,
            LineShapeOnData shape,
            Window window,
            Optional<FaintLine> view,
            String key,
            Work work) {
        Window range = scan.range();
        List<Finding> findings = new ArrayList<>();
        narrowWindow(range, target, shape).ifPresent(f -> findings.add(f.in(scan.label())));
        Outcome<Subtraction> chosen = settings.background().subtract(scan, window, key, work);
        Outcome<Subtraction> second = settings.fallback().subtract(scan, window, key, work);
        Optional<String> unfit = BackgroundFitness.objection(scan, window, settings.background(), chosen, second);
        boolean fallen = unfit.isPresent() && !settings.fallback().equals(settings.background());
        Background used = fallen ? settings.fallback() : settings.background();
        Outcome<Subtraction> taken = fallen ? second : chosen;
        if (fallen) {
            findings.add(Finding.note(
                            "background-fallback",
                            target.line() + ": " + unfit.orElseThrow() + " A " + used.describe()
                                    + " background was subtracted instead.")
                    .in(scan.label()));
        }
        if (taken instanceof Outcome.Untreated<Subtraction> refused) return Outcome.untreated(refused.finding());
        Subtraction subtraction = taken.result().orElseThrow();
        Estimate whole = BackgroundChoice.with(
                LorentzianTails.wholePerWindow(scan, window, used, target, shape.peakEv(), shape.fwhmEv()),
                subtraction,
                fallen ? chosen : second,
                key);
        Optional<Levels> levels = levels(scan, view);
        boolean detected =
                subtraction.netArea().value() > levels.map(Levels::critical).orElse(0.0);
        return Outcome.done(
                new Intensity(
                        target.line(),
                        scan.label(),
                        shape.peakEv(),
                        shape.fwhmEv(),
                        window,
                        used.describe(),
                        subtraction.netArea(),
                        whole,
                        detected,
                        level(levels.map(Levels::critical)),
                        level(levels.map(Levels::detection)),
                        subtraction,
                        List.of()),
                findings);
    }

    /** A line at the edge of detection, in a window just wide enough for it. */
    private Outcome<Intensity> faint(
            BindingScan scan, LineTarget target, LineShapeOnData shape, Optional<FaintLine> view) {
        if (view.isEmpty()) {
            return Outcome.untreated(Finding.note(
                            "scan-too-short",
                            target.line() + " shows no peak, and the scan is too short to tell how much would.")
                    .in(scan.label()));
        }
        FaintLine line = view.get();
        Optional<Levels> levels = levels(scan, view);
        boolean asked = settings.detection() == DetectionRule.CRITICAL_LEVEL || shape.significance() > 0;
        boolean detected = asked
                && levels.isPresent()
                && line.area().value() > levels.get().critical();
        return Outcome.done(new Intensity(
                target.line(),
                scan.label(),
                line.centreEv(),
                shape.fwhmEv(),
                line.window(),
                line.background().describe(),
                line.area(),
                LorentzianTails.wholePerWindow(
                                scan, line.window(), line.background(), target, line.centreEv(), shape.fwhmEv())
                        .with("faint/" + scan.label() + " " + target.line(), UNSEEN_STATES_U),
                detected,
                level(levels.map(Levels::critical)),
                level(levels.map(Levels::detection)),
                line.subtraction(),
                List.of()));
    }

    /** Critical level and detection limit as areas of the whole line, counts eV. */
    private record Levels(double critical, double detection) {}

    private Optional<Levels> levels(BindingScan scan, Optional<FaintLine> view) {
        if (!scan.countsKnown() || view.isEmpty()) return Optional.empty();
        FaintLine line = view.get();
        CriticalLevel level = settings.detection() == DetectionRule.CLEAR_PEAK
                ? line.level().atLeast(settings.minimumSignificance())
                : line.level();
        return Optional.of(new Levels(
                line.toArea(level.critical(), scan.stepEv()), line.toArea(level.detection(), scan.stepEv())));
    }

    private static OptionalDouble level(Optional<Double> counts) {
        return counts.isPresent() ? OptionalDouble.of(counts.get()) : OptionalDouble.empty();
    }

    private Window window(BindingScan scan, LineTarget target, LineShapeOnData shape) {
        Window range = scan.range();
        double below = Math.max(settings.smallestMarginEv(), settings.lowMarginFwhm() * shape.fwhmEv());
        double above = Math.max(settings.smallestMarginEv(), settings.highMarginFwhm() * shape.fwhmEv());
        double highest =
                Math.max(shape.highestEv(), Math.min(target.highEv(), shape.peakEv() + settings.stateReachEv()));
        WindowEnds ends = new WindowEnds(scan);
        double furthest = Math.max(Math.max(range.lowEv(), shape.floorEv()), target.lowEv() - below);
        double usualLow = Math.max(Math.max(range.lowEv(), shape.floorEv()), shape.lowestEv() - below);
        double low = ends.low(usualLow, furthest);
        double usual = Math.min(Math.min(range.highEv(), shape.ceilingEv()), highest + target.splittingEv() + above);
        double nearest = shape.highestEv() + target.splittingEv() + Math.max(2, NEAREST_END_FWHM * shape.fwhmEv());
        double high = nearest < usual ? ends.high(nearest, usual) : usual;
        return new Window(low, high);
    }

    private static Optional<Finding> narrowWindow(Window range, LineTarget target, LineShapeOnData shape) {
        double below = (shape.lowestEv() - range.lowEv()) / shape.fwhmEv();
        double above = (range.highEv() - shape.highestEv() - target.splittingEv()) / shape.fwhmEv();
        double smallest = Math.min(below, above);
        if (smallest >= 2 || shape.significance() == 0) return Optional.empty();
        return Optional.of(Finding.caution(
                "scan-too-narrow",
                String.format(
                        Locale.ROOT,
                        "The scan of %s ends %.1f FWHM %s the outermost component (limit 2): its background ends on the"
                                + " line.",
                        target.line(),
                        smallest,
                        below < above ? "below" : "above")));
    }
}
