package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
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
import spotline.reference.Doublet;
import spotline.reference.Line;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Places the strongest peak of a scan by its upper part: right for any line whose top is one component. A doublet split by
 * less than a line's usual width is fitted as the pair it is.
 *
 * <p>Shape: one scan in, one fit out. Units: measured binding energy, eV. Errors: empty when the scan shows no line or the
 * fit leaves its position undetermined.
 */
final class TopFit {
    private static final double SEARCH_FWHM = 1.3;
    private static final double MINIMUM_SIGNIFICANCE = 5;
    private static final double REACH = 2;
    private static final int FEWEST_SPARE_CHANNELS = 4;
    /** Natural width held where the line's own is not known, eV. */
    private static final double LORENTZIAN_EV = 0.1;

    static final String MAIN = "main component";
    private static final String PARTNER = "doublet partner";

    private TopFit() {}

    /** @param doublet of the line, where the position of its first member is wanted and not that of the pair's top */
    static Optional<ReferenceLineFit> place(Line line, BindingScan scan, Optional<Doublet> doublet, Work work) {
        return place(line.toString(), scan, scan.range(), doublet, work);
    }

    /** The strongest peak within a part of the scan. */
    static Optional<ReferenceLineFit> place(
            String line, BindingScan scan, Window within, Optional<Doublet> doublet, Work work) {
        Optional<SurveyPeak> top = new PeakSearch(SEARCH_FWHM, MINIMUM_SIGNIFICANCE)
                .find(scan).stream()
                        .filter(p -> within.contains(p.energyEv()))
                        .max(Comparator.comparingDouble(SurveyPeak::area));
        return top.flatMap(peak -> at(line, scan, peak.energyEv(), doublet, work));
    }

    private static Optional<ReferenceLineFit> at(
            String line, BindingScan scan, double start, Optional<Doublet> doublet, Work work) {
        Optional<Doublet> pair = doublet.filter(d -> d.splittingEv() > 0 && d.splittingEv() < REACH);
        double above = REACH + pair.map(Doublet::splittingEv).orElse(0.0);
        Window window = Window.around(start, REACH, above);
        int from = scan.firstAtOrAbove(window.lowEv());
        int to = scan.lastAtOrBelow(window.highEv()) + 1;
        if (to - from < 5 + FEWEST_SPARE_CHANNELS) return Optional.empty();
        double[] y = Arrays.copyOfRange(scan.counts(), from, to);
        double low = Arrays.stream(y).min().orElse(0);
        double area = Math.max(1e-6, 1.2 * (Arrays.stream(y).max().orElse(1) - low));
        PeakModel model =
                PeakModel.on(Arrays.copyOfRange(scan.energies(), from, to)).plus(MAIN, new Voigt());
        if (pair.isPresent()) model = model.plus(PARTNER, new Voigt());
        PeakModel peaks = model;
        model = model.polynomialBackground(1, start);
        List<Parameter> parameters = new ArrayList<>();
        List<Tie> ties = new ArrayList<>();
        voigt(parameters, MAIN, start, area);
        if (pair.isPresent()) {
            voigt(parameters, PARTNER, start, area);
            ties.add(Tie.offset(
                    PARTNER + ".position", MAIN + ".position", pair.get().splittingEv()));
            ties.add(Tie.ratio(PARTNER + ".area", MAIN + ".area", pair.get().areaRatioLowToHigh()));
            ties.add(Tie.equal(PARTNER + ".gaussianFwhm", MAIN + ".gaussianFwhm"));
        }
        parameters.add(Parameter.free("background.0", low));
        parameters.add(Parameter.free("background.1", 0));
        Weighting weighting = scan.countsKnown() ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        FitResult fit = Fit.solve(FitProblem.of(model, y, weighting, parameters, ties), FitSettings.DEFAULT, work);
        if (!fit.converged() || fit.state(MAIN + ".position") != FitResult.ParameterState.FREE) return Optional.empty();
        PeakModel whole = model;
        return Optional.of(FittedLine.of(line, scan, peaks, whole::background, fit));
    }

    private static void voigt(List<Parameter> parameters, String name, double position, double area) {
        boolean main = name.equals(MAIN);
        parameters.add(
                main
                        ? Parameter.bounded(name + ".position", position, position - 1.5, position + 1.5)
                        : Parameter.free(name + ".position", position));
        parameters.add(Parameter.bounded(name + ".area", area, 0, Double.POSITIVE_INFINITY));
        parameters.add(Parameter.bounded(name + ".gaussianFwhm", 1.1, 0.1, 5));
        parameters.add(Parameter.fixed(name + ".lorentzianFwhm", LORENTZIAN_EV));
    }

    /** The doublet of a line that is named by its first member alone. */
    static Optional<Doublet> doubletOf(Optional<Doublet> doublet, Line line) {
        return line.orbital().isWhole() ? Optional.empty() : doublet;
    }

    static OptionalDouble height(ReferenceLineFit fit) {
        double most = 0;
        for (int i = 0; i < fit.sum().channels(); i++) {
            most = Math.max(most, fit.sum().value(i) - fit.background().value(i));
        }
        return most > 0 ? OptionalDouble.of(most) : OptionalDouble.empty();
    }
}
