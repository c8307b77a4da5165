package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.fit.Tie;
import spotline.numerics.fit.Weighting;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Places a reference line by a peak fit: Voigt components on a straight background, fitted together to the counts by
 * Poisson likelihood.
 *
 * <p>Adventitious carbon gets the hydrocarbon component and, where the data ask for them, components of carbon bonded to
 * oxygen at fixed distances and of the same width. Source of the distances: Beamson and Briggs (1992), from memory.
 */
final class CarbonFit {
    private static final double SEARCH_FWHM = 1.3;
    private static final double MINIMUM_SIGNIFICANCE = 5;
    /** The hydrocarbon line is looked for this far to either side of where it is expected, eV. */
    private static final double SEARCH_REACH = 4;

    private static final double BELOW = 3.5;
    private static final double ABOVE = 6.5;
    /** A component with an area under this many of its uncertainties is not asked for by the data. */
    private static final double ASKED_FOR = 3;
    /** Natural width of C 1s, eV: J. Phys. Chem. Ref. Data style tables give 0.09 to 0.1; held in the fit. */
    private static final double CARBON_LORENTZIAN = 0.1;

    /** A component at a fixed distance above the reference. */
    private record Companion(String name, double offsetEv) {}

    private static final List<Companion> CARBON_OXYGEN = List.of(
            new Companion("carbon-oxygen single bond", 1.5),
            new Companion("carbon-oxygen double bond", 3.0),
            new Companion("carboxyl", 4.2));

    private CarbonFit() {}

    /** @param expectedEv where hydrocarbon carbon is expected on the measured scale, eV */
    static Optional<ReferenceLineFit> hydrocarbon(BindingScan scan, double expectedEv, Work work) {
        Window near = Window.around(expectedEv, SEARCH_REACH, SEARCH_REACH);
        Optional<SurveyPeak> top = top(scan, near);
        if (top.isEmpty()) return Optional.empty();
        double start = top.get().energyEv();
        Window window = Window.around(start, BELOW, ABOVE);
        List<Companion> companions = CARBON_OXYGEN;
        Attempt all = new Attempt("C 1s", scan, window, start, "hydrocarbon", companions, work);
        if (!all.possible()) return Optional.empty();
        Attempt kept = all;
        while (!companions.isEmpty()) {
            List<Companion> asked = kept.askedFor(companions);
            if (asked.size() == companions.size()) break;
            companions = asked;
            kept = new Attempt("C 1s", scan, window, start, "hydrocarbon", companions, work);
        }
        return kept.fit();
    }

    /** The strongest peak of a scan by its upper part alone: right for any line whose top is one component. */
    static Optional<ReferenceLineFit> strongest(Line line, BindingScan scan, Work work) {
        Optional<SurveyPeak> top = top(scan, scan.range());
        if (top.isEmpty()) return Optional.empty();
        double start = top.get().energyEv();
        Window window = Window.around(start, 2, 2);
        Attempt attempt = new Attempt(line.toString(), scan, window, start, "main component", List.of(), work);
        return attempt.possible() ? attempt.fit() : Optional.empty();
    }

    private static Optional<SurveyPeak> top(BindingScan scan, Window near) {
        return new PeakSearch(SEARCH_FWHM, MINIMUM_SIGNIFICANCE)
                .find(scan).stream()
                        .filter(p -> near.contains(p.energyEv()))
                        .max(Comparator.comparingDouble(SurveyPeak::area));
    }

    /** One fit of the reference component with some companions. */
    private static final class Attempt {
        private static final int FEWEST_SPARE_CHANNELS = 4;

        private final String line;
        private final BindingScan scan;
        private final String reference;
        private final List<Companion> companions;
        private final int from;
        private final int to;
        private final PeakModel model;
        private final Optional<FitResult> result;

        Attempt(
                String line,
                BindingScan scan,
                Window window,
                double start,
                String reference,
                List<Companion> companions,
                Work work) {
            this.line = line;
            this.scan = scan;
            this.reference = reference;
            this.companions = companions;
            from = scan.firstAtOrAbove(window.lowEv());
            to = scan.lastAtOrBelow(window.highEv()) + 1;
            PeakModel building = PeakModel.on(
                            from < to ? Arrays.copyOfRange(scan.energies(), from, to) : new double[] {start})
                    .plus(reference, new Voigt());
            for (Companion c : companions) building = building.plus(c.name(), new Voigt());
            model = building.polynomialBackground(1, start);
            boolean enough = to - from >= model.parameterCount() - 2 * companions.size() + FEWEST_SPARE_CHANNELS;
            result = enough ? Optional.of(solve(start, work)) : Optional.empty();
        }

        boolean possible() {
            return result.isPresent();
        }

        private FitResult solve(double start, Work work) {
            double[] y = Arrays.copyOfRange(scan.counts(), from, to);
            double low = Arrays.stream(y).min().orElse(0);
            double high = Arrays.stream(y).max().orElse(1);
            double area = Math.max(1e-6, 1.2 * (high - low));
            List<Parameter> parameters = new ArrayList<>();
            List<Tie> ties = new ArrayList<>();
            voigt(parameters, reference, start, area);
            for (Companion c : companions) {
                voigt(parameters, c.name(), start + c.offsetEv(), 0.1 * area);
                ties.add(Tie.offset(c.name() + ".position", reference + ".position", c.offsetEv()));
                ties.add(Tie.equal(c.name() + ".gaussianFwhm", reference + ".gaussianFwhm"));
            }
            parameters.add(Parameter.free("background.0", low));
            parameters.add(Parameter.free("background.1", 0));
            Weighting weighting = scan.countsKnown() ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
            return Fit.solve(FitProblem.of(model, y, weighting, parameters, ties), FitSettings.DEFAULT, work);
        }

        private static void voigt(List<Parameter> parameters, String name, double position, double area) {
            parameters.add(Parameter.bounded(name + ".position", position, position - 1.5, position + 1.5));
            parameters.add(Parameter.bounded(name + ".area", area, 0, Double.POSITIVE_INFINITY));
            parameters.add(Parameter.bounded(name + ".gaussianFwhm", 1.1, 0.2, 5));
            parameters.add(Parameter.fixed(name + ".lorentzianFwhm", CARBON_LORENTZIAN));
        }

        List<Companion> askedFor(List<Companion> candidates) {
            FitResult fit = result.orElseThrow();
            return candidates.stream()
                    .filter(c -> {
                        String area = c.name() + ".area";
                        double u = fit.standardUncertainty(area).orElse(Double.POSITIVE_INFINITY);
                        return fit.value(area) > ASKED_FOR * u;
                    })
                    .toList();
        }

        /** Empty when the fit did not converge or the position is held by a bound. */
        Optional<ReferenceLineFit> fit() {
            FitResult fit = result.orElseThrow();
            if (!fit.converged() || fit.state(reference + ".position") != FitResult.ParameterState.FREE) {
                return Optional.empty();
            }
            double[] values = fit.values();
            List<ReferenceLineFit.Component> components = new ArrayList<>();
            for (int c = 0; c < model.components().size(); c++) {
                String name = model.components().get(c).name();
                String prefix = "fit " + scan.label() + " " + line;
                Estimate fwhm = fit.estimate(p -> width(fit, p, name), prefix);
                components.add(new ReferenceLineFit.Component(
                        name,
                        "Voigt",
                        fit.estimate(name + ".position", prefix),
                        fwhm,
                        fit.estimate(name + ".area", prefix),
                        new ReferenceLineFit.Curve(model.component(c, values))));
            }
            return Optional.of(new ReferenceLineFit(
                    line,
                    scan.label(),
                    new ReferenceLineFit.Curve(model.abscissae()),
                    new ReferenceLineFit.Curve(model.background(values)),
                    new ReferenceLineFit.Curve(fit.fitted()),
                    components,
                    fit.reducedChiSquare().orElse(Double.NaN)));
        }

        private static double width(FitResult fit, double[] p, String name) {
            return new Voigt().fwhm(0, 1, p[fit.index(name + ".gaussianFwhm")], p[fit.index(name + ".lorentzianFwhm")]);
        }
    }
}
