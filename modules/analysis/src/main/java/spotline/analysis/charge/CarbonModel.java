package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Work;
import spotline.numerics.fit.DataSet;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.fit.Tie;
import spotline.numerics.fit.Weighting;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * C 1s of adventitious carbon as a fitted sum: hydrocarbon, and carbon bonded to oxygen at distances known within what
 * chemistry leaves open, all of one width, on a background that slopes and rises.
 *
 * <p>The distances are known beforehand with an uncertainty and fitted: held, they bend the hydrocarbon line towards
 * their error; free, they trade counts with it. Source of the distances: Beamson and Briggs (1992), from memory; their
 * uncertainties and the usual rise of the background: common practice, no source.
 */
final class CarbonModel {
    static final String HYDROCARBON = "hydrocarbon";

    /** Natural width of C 1s, eV, held: tables of atomic level widths give 0.09 to 0.1. */
    static final double LORENTZIAN_EV = 0.1;

    private static final double USUAL_FWHM = 1.1;
    /** How far the hydrocarbon line may end from where it was looked for, eV. */
    private static final double REACH = 1.5;
    /** Rise of the background per area passed, 1/eV: what surfaces under a thin carbon layer show. */
    private static final Expected RISE = new Expected("background.rise", 0.01, 0.01);

    /** A component some way above (or below) hydrocarbon: eV, with what is known of the distance beforehand. */
    record Companion(String name, double offsetEv, double offsetU, boolean ownWidth) {
        String offset() {
            return name + ".offset";
        }
    }

    static final List<Companion> CARBON_OXYGEN = List.of(
            new Companion("carbon-oxygen single bond", 1.5, 0.1, false),
            new Companion("carbon-oxygen double bond", 3.0, 0.1, false),
            new Companion("carboxyl", 4.2, 0.1, false));
    static final Companion CARBONATE = new Companion("carbonate", 4.9, 0.2, true);
    static final Companion BELOW = new Companion("carbon below hydrocarbon", -1.4, 0.5, true);

    /** A second patch of the same surface at another potential: each component again, further up by one distance. */
    record SecondPatch(double share) {
        static final String SEPARATION = "separation";
    }

    private final BindingScan scan;
    private final int from;
    private final int to;
    private final List<Companion> companions;
    private final List<SecondPatch> patches;
    private final PeakModel peaks;
    private final SteppedPeaks model;
    private final double start;

    CarbonModel(BindingScan scan, Window window, double start, List<Companion> companions, List<SecondPatch> patches) {
        this.scan = scan;
        this.start = start;
        this.companions = List.copyOf(companions);
        this.patches = List.copyOf(patches);
        from = scan.firstAtOrAbove(window.lowEv());
        to = Math.max(from, scan.lastAtOrBelow(window.highEv()) + 1);
        double[] x = from < to ? Arrays.copyOfRange(scan.energies(), from, to) : new double[] {start};
        PeakModel building = PeakModel.on(x);
        for (String name : names()) building = building.plus(name, new Voigt());
        peaks = building;
        model = new SteppedPeaks(peaks, start);
    }

    private List<String> names() {
        List<String> first = new ArrayList<>(List.of(HYDROCARBON));
        companions.forEach(c -> first.add(c.name()));
        List<String> names = new ArrayList<>(first);
        if (!patches.isEmpty()) first.forEach(name -> names.add(second(name)));
        return names;
    }

    private static String second(String name) {
        return name + ", second patch";
    }

    /** Whether the window holds enough channels to tell the components apart. */
    boolean possible() {
        return to - from >= 12 + 2 * companions.size();
    }

    BindingScan scan() {
        return scan;
    }

    PeakModel peaks() {
        return peaks;
    }

    double[] background(double[] p) {
        return model.background(p);
    }

    /** Errors: {@link java.util.concurrent.CancellationException} when the work is cancelled. */
    FitResult solve(OptionalDouble heldFwhm, Work work) {
        boolean counted = scan.countsKnown();
        double[] y = Arrays.copyOfRange(scan.counts(), from, to);
        double low = Arrays.stream(y).min().orElse(0);
        double area = Math.max(1e-6, 1.2 * (Arrays.stream(y).max().orElse(1) - low));
        List<Parameter> parameters = new ArrayList<>();
        List<Tie> ties = new ArrayList<>();
        List<Expected> expected = new ArrayList<>(List.of(RISE));
        List<Parameter> extra = new ArrayList<>();
        double share = patches.isEmpty() ? 0 : patches.get(0).share();
        voigt(parameters, HYDROCARBON, start, area * (1 - share), heldFwhm);
        for (Companion c : companions) {
            voigt(parameters, c.name(), start + c.offsetEv(), 0.1 * area, OptionalDouble.empty());
            ties.add(Tie.freeOffset(position(c.name()), position(HYDROCARBON), c.offset()));
            if (counted) {
                double reach = 3 * c.offsetU();
                extra.add(Parameter.bounded(c.offset(), c.offsetEv(), c.offsetEv() - reach, c.offsetEv() + reach));
                expected.add(new Expected(c.offset(), c.offsetEv(), c.offsetU()));
            } else {
                extra.add(Parameter.fixed(c.offset(), c.offsetEv()));
            }
            if (c.ownWidth() && counted) expected.add(new Expected(width(c.name()), USUAL_FWHM, 0.2));
            else ties.add(Tie.equal(width(c.name()), width(HYDROCARBON)));
        }
        if (!patches.isEmpty()) secondPatch(parameters, extra, ties, share);
        parameters.add(Parameter.free(SteppedPeaks.BACKGROUND.get(0), low));
        parameters.add(Parameter.free(SteppedPeaks.BACKGROUND.get(1), 0));
        String rise = RISE.parameter();
        parameters.add(
                counted ? Parameter.bounded(rise, RISE.value(), -0.05, 0.2) : Parameter.fixed(rise, RISE.value()));
        parameters.addAll(extra);
        Weighting weighting = counted ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        List<DataSet> data = new ArrayList<>(List.of(new DataSet(model, y, weighting, model.parameterNames())));
        if (counted) data.add(Expected.data(expected));
        return Fit.solve(new FitProblem(data, parameters, ties), FitSettings.DEFAULT, work);
    }

    private void secondPatch(List<Parameter> parameters, List<Parameter> extra, List<Tie> ties, double share) {
        List<String> first = new ArrayList<>(List.of(HYDROCARBON));
        companions.forEach(c -> first.add(c.name()));
        extra.add(Parameter.bounded(SecondPatch.SEPARATION, 0.6, 0.1, 3));
        for (String name : first) {
            voigt(parameters, second(name), start, 1, OptionalDouble.empty());
            ties.add(Tie.freeOffset(position(second(name)), position(name), SecondPatch.SEPARATION));
            ties.add(Tie.ratio(second(name) + ".area", name + ".area", share / (1 - share)));
            ties.add(Tie.equal(width(second(name)), width(name)));
        }
    }

    private static void voigt(
            List<Parameter> parameters, String name, double position, double area, OptionalDouble heldFwhm) {
        parameters.add(
                name.equals(HYDROCARBON)
                        ? Parameter.bounded(position(name), position, position - REACH, position + REACH)
                        : Parameter.free(position(name), position));
        parameters.add(Parameter.bounded(name + ".area", area, 0, Double.POSITIVE_INFINITY));
        parameters.add(
                heldFwhm.isPresent()
                        ? Parameter.fixed(width(name), heldFwhm.getAsDouble())
                        : Parameter.bounded(width(name), USUAL_FWHM, 0.2, 5));
        parameters.add(Parameter.fixed(name + ".lorentzianFwhm", LORENTZIAN_EV));
    }

    static String position(String name) {
        return name + ".position";
    }

    static String width(String name) {
        return name + ".gaussianFwhm";
    }
}
