package spotline.analysis.charge;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import spotline.analysis.background.Linear;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DefaultFit;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.FittedParameter;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Work;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Places a reference line by a constrained peak fit.
 *
 * <p>Adventitious carbon gets the default model of C 1s, reduced to the components that the data ask for, laid where the
 * strongest peak near the expected energy stands. Any other line is placed by its top alone.
 */
final class CarbonFit {
    private static final double SEARCH_FWHM = 1.3;
    private static final double MINIMUM_SIGNIFICANCE = 5;
    /** The hydrocarbon line is looked for this far to either side of where it is expected, eV. */
    private static final double SEARCH_REACH = 4;
    /** Half the window, and how far the position may move in it, where a line is placed by its top, eV. */
    private static final double TOP_HALF_WIDTH = 2;

    private static final double TOP_REACH = 1.5;
    private static final int FEWEST_SPARE_CHANNELS = 4;
    private static final Line CARBON = Line.parse("C 1s");

    private final ReferenceData reference;
    private final PeakFit fit;

    CarbonFit(ReferenceData reference) {
        this.reference = requireNonNull(reference, "reference");
        fit = new PeakFit(reference);
    }

    /**
     * @param expectedEv where hydrocarbon carbon is expected on the measured scale, eV
     * @param elements symbols of the elements at the spot
     */
    Optional<ReferenceLineFit> hydrocarbon(BindingScan scan, double expectedEv, Set<String> elements, Work work) {
        Optional<SurveyPeak> top = top(scan, Window.around(expectedEv, SEARCH_REACH, SEARCH_REACH));
        if (top.isEmpty()) return Optional.empty();
        double usual = reference.bindingEnergy(CARBON).orElseThrow().valueEv();
        double shift = usual - top.get().energyEv();
        DefaultModels models = new DefaultModels(reference);
        Optional<FitModel> model =
                models.of(CARBON, scan, shift, elements).or(() -> models.of(CARBON, scan, shift, Set.of("C")));
        if (model.isEmpty()) return placedByTop(CARBON, scan, top.get(), work);
        return new DefaultFit(fit)
                .fit(scan, model.get(), key(CARBON, scan), work)
                .result()
                .flatMap(result -> placed(CARBON, result));
    }

    /** The strongest peak of a scan by its upper part alone: right for any line whose top is one component. */
    Optional<ReferenceLineFit> strongest(Line line, BindingScan scan, Work work) {
        return top(scan, scan.range()).flatMap(top -> placedByTop(line, scan, top, work));
    }

    private Optional<ReferenceLineFit> placedByTop(Line line, BindingScan scan, SurveyPeak top, Work work) {
        double start = top.energyEv();
        double natural = reference.naturalWidth(line).map(NaturalWidth::fwhmEv).orElse(0.1);
        ComponentModel component = ComponentModel.of("main component", new Voigt())
                .with("position", Free.from(start, start - TOP_REACH, start + TOP_REACH))
                .with("gaussianFwhm", Free.from(1.1, 0.2, 5))
                .with("lorentzianFwhm", new Fixed(natural));
        Window range = scan.range();
        double low = Math.max(range.lowEv(), start - TOP_HALF_WIDTH);
        double high = Math.min(range.highEv(), start + TOP_HALF_WIDTH);
        if (!(low < high)) return Optional.empty();
        FitModel model = FitModel.of(new Window(low, high), BackgroundModel.fittedAlong(Linear.of(1)), component);
        int channels = scan.lastAtOrBelow(high) + 1 - scan.firstAtOrAbove(low);
        if (channels < 5 + FEWEST_SPARE_CHANNELS) return Optional.empty();
        return fit.fit(scan, model, key(line, scan), work).result().flatMap(result -> placed(line, result));
    }

    private static String key(Line line, BindingScan scan) {
        return "fit " + scan.label() + " " + line;
    }

    private static Optional<SurveyPeak> top(BindingScan scan, Window near) {
        return new PeakSearch(SEARCH_FWHM, MINIMUM_SIGNIFICANCE)
                .find(scan).stream()
                        .filter(p -> near.contains(p.energyEv()))
                        .max(Comparator.comparingDouble(SurveyPeak::area));
    }

    /** Empty when the fit did not converge or the position is held by a bound. */
    private static Optional<ReferenceLineFit> placed(Line line, PeakFitResult result) {
        FittedComponent first = result.components().get(0);
        boolean free = first.parameter("position").hold() == FittedParameter.Hold.FREE;
        if (!free || !result.statistics().stopReason().converged()) return Optional.empty();
        List<ReferenceLineFit.Component> components = new ArrayList<>();
        for (FittedComponent c : result.components()) {
            components.add(new ReferenceLineFit.Component(
                    c.name(), c.shape(), c.position(), c.fwhm(), c.area(), new ReferenceLineFit.Curve(c.curve())));
        }
        return Optional.of(new ReferenceLineFit(
                line.toString(),
                result.spectrum(),
                new ReferenceLineFit.Curve(result.energies()),
                new ReferenceLineFit.Curve(result.background()),
                new ReferenceLineFit.Curve(result.sum()),
                components,
                result.statistics().reducedChiSquare().orElse(Double.NaN)));
    }
}
