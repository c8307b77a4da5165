package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.background.Background;
import spotline.analysis.background.Subtraction;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * The intensity of a line that lies under lines of other elements, by a fit of all of them together: Voigt lines of their
 * natural widths, doublets held at their splitting and area ratio, one Gaussian width, each line free to move within the
 * reach of its chemical states.
 *
 * <p>Shape: one scan in, the intensity of one line out. Units: measured binding energy in eV, counts eV of the whole line
 * before transmission. Errors: untreated where the fit is. Source: common practice; carbon's oxygen-bound states at 1.5,
 * 3.0 and 4.2 eV above its hydrocarbon, from memory.
 */
public final class OverlapFit {
    /**
     * A line of another element.
     *
     * @param firstEv where its first peak is expected, measured binding energy, eV
     * @param reachEv how far from there it may lie, eV
     * @param splittingEv to the doublet partner, 0 where the scan does not hold one
     * @param areaEv area expected of the first peak from another line of its element, counts eV; empty where none is known
     */
    public record Neighbour(
            Line line,
            double firstEv,
            double reachEv,
            double splittingEv,
            LineTarget.Widths widths,
            OptionalDouble areaEv) {
        public Neighbour expecting(double area) {
            return new Neighbour(line, firstEv, reachEv, splittingEv, widths, OptionalDouble.of(area));
        }
    }

    private static final double MARGIN_EV = 4.5;
    private static final double LEAST_WIDTH = 0.3;
    private static final double USUAL_WIDTH = 1.1;
    private static final double LARGEST_WIDTH = 3.5;
    private static final double CRITICAL = 1.645;
    private static final double DETECTION = 3.29;
    private static final double USUAL_REACH_EV = 4.5;
    private static final double STATE_FROM_EV = 1;
    private static final int MOST_STARTS = 3;
    /** An area expected from another line may be out by this factor. Common practice, no source. */
    private static final double AREA_REACH = 1.25;

    /** What a component must be worth in deviance. Common practice, no source. */
    private static final double PRICE = 12;

    private static final String CARBON = "C 1s";
    private static final double[] CARBON_COMPANIONS = {1.5, 3.0, 4.2};
    private static final double COMPANION_REACH = 0.3;
    private static final String OWN = "own";
    private static final String POSITION = "position";
    private static final String AREA = "area";
    private static final String GAUSSIAN = "gaussianFwhm";
    private static final String LORENTZIAN = "lorentzianFwhm";

    private final PeakFit fit;
    private final IntensitySettings settings;

    public OverlapFit(ReferenceData reference, IntensitySettings settings) {
        this.fit = new PeakFit(reference);
        this.settings = settings;
    }

    /** @param key names the uncertainty contributions of the area */
    public Outcome<Intensity> measure(
            BindingScan scan, LineTarget target, Collection<Neighbour> neighbours, String key, Work work) {
        Window window = window(scan, target, neighbours);
        Outcome<PeakFitResult> best =
                fit(scan, window, settings.background(), target, target.expectedEv(), neighbours, 1, key, work);
        for (Background background : List.of(settings.background(), settings.fallback())) {
            for (double start : starts(scan, target)) {
                Outcome<PeakFitResult> tried = fit(scan, window, background, target, start, neighbours, 1, key, work);
                if (cost(tried) < cost(best)) best = tried;
            }
        }
        if (best.result().isEmpty() || target.line().toString().equals(CARBON))
            return finished(scan, target, neighbours, window, best, key, work);
        PeakFitResult one = best.result().get();
        double at = one.component(OWN).position().value();
        Background used = one.model().background().background();
        Outcome<PeakFitResult> two = fit(scan, window, used, target, at, neighbours, 2, key, work);
        return finished(scan, target, neighbours, window, cost(two) < cost(best) ? two : best, key, work);
    }

    private Outcome<Intensity> finished(
            BindingScan scan,
            LineTarget target,
            Collection<Neighbour> neighbours,
            Window window,
            Outcome<PeakFitResult> best,
            String key,
            Work work) {
        if (best instanceof Outcome.Untreated<PeakFitResult> refused) return Outcome.untreated(refused.finding());
        return intensity(scan, target, neighbours, window, best.result().orElseThrow(), key, work);
    }

    private Outcome<PeakFitResult> fit(
            BindingScan scan,
            Window window,
            Background background,
            LineTarget target,
            double start,
            Collection<Neighbour> neighbours,
            int states,
            String key,
            Work work) {
        ComponentModel[] components =
                components(target, start, neighbours, states).toArray(ComponentModel[]::new);
        return fit.fit(scan, FitModel.of(window, BackgroundModel.fittedAlong(background), components), key, work);
    }

    /** Deviance and a price for each component, so that a state is not added for noise. */
    private static double cost(Outcome<PeakFitResult> outcome) {
        return outcome.result()
                .map(r -> r.statistics().deviance()
                        + PRICE * r.model().components().size())
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Window window(BindingScan scan, LineTarget target, Collection<Neighbour> neighbours) {
        double low = target.lowEv() - MARGIN_EV;
        double high =
                Math.min(target.highEv(), target.expectedEv() + USUAL_REACH_EV) + target.splittingEv() + MARGIN_EV;
        for (Neighbour n : neighbours) {
            double margin = Math.max(MARGIN_EV, 2 * n.widths().partnerEv());
            low = Math.min(low, n.firstEv() - margin);
            high = Math.max(high, n.firstEv() + n.splittingEv() + margin);
        }
        Window range = scan.range();
        return new Window(Math.max(range.lowEv(), low), Math.min(range.highEv(), high));
    }

    private static List<ComponentModel> components(
            LineTarget target, double start, Collection<Neighbour> neighbours, int states) {
        LineTarget.Widths widths = target.widths().orElse(new LineTarget.Widths(0.2, 0.2, 0));
        List<ComponentModel> components = new ArrayList<>();
        ComponentModel own = component(OWN, target.line(), target.splittingEv(), widths)
                .with(POSITION, Free.from(start, target.lowEv(), target.highEv()))
                .with(GAUSSIAN, Free.from(USUAL_WIDTH, LEAST_WIDTH, LARGEST_WIDTH));
        components.add(own);
        if (target.line().toString().equals(CARBON)) {
            components.addAll(companions(OWN, target.line(), widths));
        } else if (states > 1) {
            components.add(component(OWN + ", second state", target.line(), target.splittingEv(), widths)
                    .with(POSITION, offset(STATE_FROM_EV, 2, USUAL_REACH_EV))
                    .with(GAUSSIAN, new EqualTo(OWN)));
        }
        for (Neighbour n : neighbours) {
            ComponentModel other = component(n.line().toString(), n.line(), n.splittingEv(), n.widths())
                    .with(POSITION, Free.from(n.firstEv(), n.firstEv() - n.reachEv(), n.firstEv() + n.reachEv()))
                    .with(GAUSSIAN, new EqualTo(OWN));
            if (n.areaEv().isPresent()) {
                double area = n.areaEv().getAsDouble();
                other = other.with(AREA, Free.from(area, area / AREA_REACH, area * AREA_REACH));
            }
            components.add(other);
            if (n.line().toString().equals(CARBON)) components.addAll(companions(CARBON, n.line(), n.widths()));
        }
        return components;
    }

    /** Carbon bound to oxygen, which is seldom absent. */
    private static List<ComponentModel> companions(String leader, Line line, LineTarget.Widths widths) {
        List<ComponentModel> companions = new ArrayList<>();
        for (double offset : CARBON_COMPANIONS) {
            OffsetFrom place =
                    new OffsetFrom(leader, Free.from(offset, offset - COMPANION_REACH, offset + COMPANION_REACH));
            companions.add(component(leader + " +" + offset, line, 0, widths)
                    .with(POSITION, place)
                    .with(GAUSSIAN, new EqualTo(OWN)));
        }
        return companions;
    }

    /** Where the line may be: at its usual place, and wherever the data have a peak within its reach. */
    private List<Double> starts(BindingScan scan, LineTarget target) {
        List<Double> starts = new ArrayList<>(List.of(target.expectedEv()));
        double width = Math.max(settings.searchFwhmEv(), 2.5 * scan.stepEv());
        new PeakSearch(width, settings.minimumSignificance())
                .find(scan).stream()
                        .map(SurveyPeak::energyEv)
                        .filter(e -> e > target.lowEv() && e < target.highEv())
                        .filter(e -> Math.abs(e - target.expectedEv()) > 0.3)
                        .limit(MOST_STARTS)
                        .forEach(starts::add);
        return starts;
    }

    private static OffsetFrom offset(double min, double start, double max) {
        return new OffsetFrom(OWN, Free.from(start, min, max));
    }

    private static ComponentModel component(String name, Line line, double splittingEv, LineTarget.Widths widths) {
        ComponentModel component = ComponentModel.of(name, new Voigt()).with(LORENTZIAN, new Fixed(widths.firstEv()));
        if (splittingEv == 0) return component;
        DoubletRule partner = new DoubletRule(
                line.whole(),
                Optional.of(new Fixed(splittingEv)),
                Optional.of(new Fixed(widths.partnerRatio())),
                new Fixed(1),
                Optional.of(new Fixed(widths.partnerEv())));
        return component.with(partner);
    }

    private Outcome<Intensity> intensity(
            BindingScan scan,
            LineTarget target,
            Collection<Neighbour> neighbours,
            Window window,
            PeakFitResult result,
            String key,
            Work work) {
        List<Estimate> areas = result.stateNames().stream()
                .filter(name -> name.startsWith(OWN))
                .map(result::stateArea)
                .toList();
        Estimate area = Estimate.sum(areas);
        double u = area.standardUncertainty().orElse(0);
        Outcome<Subtraction> drawn = settings.fallback().subtract(scan, window, key, work);
        if (drawn instanceof Outcome.Untreated<Subtraction> refused) return Outcome.untreated(refused.finding());
        Set<String> separated = new TreeSet<>();
        List<String> names = new ArrayList<>();
        for (Neighbour n : neighbours) {
            separated.add(n.line().element());
            names.add(n.line().toString());
        }
        String beside = String.join(" and ", names);
        boolean known = area.standardUncertainty().isPresent();
        return Outcome.done(
                new Intensity(
                        target.line(),
                        scan.label(),
                        result.component(OWN).position().value(),
                        result.component(OWN).fwhm().value(),
                        window,
                        result.model().background().describe() + " with " + beside,
                        area,
                        Estimate.exact(1),
                        area.value() > CRITICAL * u && area.value() > 0,
                        known ? OptionalDouble.of(CRITICAL * u) : OptionalDouble.empty(),
                        known ? OptionalDouble.of(DETECTION * u) : OptionalDouble.empty(),
                        drawn.result().orElseThrow(),
                        List.copyOf(separated)),
                List.of(Finding.note(
                                "overlap-fitted",
                                target.line() + " lies under " + beside + ": they were fitted together.")
                        .in(scan.label())));
    }
}
