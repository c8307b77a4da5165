package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spotline.analysis.charge.CarbonModel.Companion;
import spotline.analysis.charge.CarbonModel.SecondPatch;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.core.Work;
import spotline.numerics.fit.FitResult;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Places the hydrocarbon line of adventitious carbon in a C 1s scan.
 *
 * <p>Shape: one scan in, one fit out. Units: measured binding energy, eV. Errors: empty when the scan shows no line there,
 * the window holds too few channels, or the fit leaves the position undetermined.
 */
final class HydrocarbonFit {
    private static final double SEARCH_FWHM = 1.3;
    private static final double MINIMUM_SIGNIFICANCE = 5;
    /** The hydrocarbon line is looked for this far to either side of where it is expected, eV. */
    private static final double SEARCH_REACH = 4;

    private static final double BELOW = 3.5;
    private static final double ABOVE = 6.5;
    /** A further component is taken up when it lowers the deviance by this much. */
    private static final double ASKED_FOR = 20;
    /** A reduced chi-square this many standard deviations above 1 asks for further components. */
    private static final double POOR = 3;

    /** Shares of the surface at the higher binding energy that two patches are tried with. */
    private static final double[] SHARES = {0.5, 0.3, 0.7};
    /** Gain in deviance that two potentials need: one in 200 fits of one potential gains more (simulated). */
    private static final double TWO_POTENTIALS = 9;
    /** A line this much narrower than the widest of its kind says nothing of two potentials by its width, eV. */
    private static final double WIDTH_SPEAKS = 0.05;

    /** The fit, and what it was chosen from. */
    record Placed(
            ReferenceLineFit fit, BindingScan scan, double startEv, List<Companion> companions, FitResult result) {
        boolean hasBelow() {
            return fit.components().stream().anyMatch(c -> c.name().equals(CarbonModel.BELOW.name()));
        }
    }

    private record Solved(CarbonModel model, FitResult result, List<Companion> companions) {}

    private final BindingScan scan;
    private final double start;
    private final Work work;

    private HydrocarbonFit(BindingScan scan, double start, Work work) {
        this.scan = scan;
        this.start = start;
        this.work = work;
    }

    /** @param expectedEv where hydrocarbon is expected on the measured scale, eV */
    static Optional<Placed> place(BindingScan scan, double expectedEv, Work work) {
        Window near = Window.around(expectedEv, SEARCH_REACH, SEARCH_REACH);
        return new PeakSearch(SEARCH_FWHM, MINIMUM_SIGNIFICANCE)
                .find(scan).stream()
                        .filter(p -> near.contains(p.energyEv()))
                        .max(Comparator.comparingDouble(SurveyPeak::area))
                        .flatMap(top -> new HydrocarbonFit(scan, top.energyEv(), work).best());
    }

    private Optional<Placed> best() {
        Optional<Solved> usual = solve(CarbonModel.CARBON_OXYGEN, List.of());
        if (usual.isEmpty()) return Optional.empty();
        Solved kept = usual.get();
        for (int round = 0; round < 2 && poor(kept.result()); round++) {
            Solved before = kept;
            Optional<Solved> better = Stream.of(CarbonModel.CARBONATE, CarbonModel.BELOW)
                    .filter(c -> !before.companions().contains(c))
                    .map(c -> plus(before.companions(), c))
                    .flatMap(c -> solve(c, List.of()).stream())
                    .filter(s -> s.result().converged())
                    .min(Comparator.comparingDouble(s -> s.result().objective()));
            if (better.isEmpty()
                    || before.result().objective() - better.get().result().objective() < ASKED_FOR) break;
            kept = better.get();
        }
        Solved chosen = kept;
        FitResult result = chosen.result();
        boolean placed = result.converged()
                && result.state(CarbonModel.position(CarbonModel.HYDROCARBON)) == FitResult.ParameterState.FREE;
        if (!placed) return Optional.empty();
        ReferenceLineFit fit = FittedLine.of("C 1s", scan, chosen.model().peaks(), chosen.model()::background, result);
        return Optional.of(new Placed(fit, scan, start, chosen.companions(), result));
    }

    /**
     * Whether the same lines at two potentials fit better; empty where the counts are not known.
     *
     * <p>Two potentials less than a line's width apart show in its width long before they show in its shape: a width at
     * the widest that one potential gives counts as much as the gain asked for, one well below it nothing.
     *
     * @param widestEv of hydrocarbon at one potential, eV; empty where a better width is known to hold the line against
     */
    static Optional<ChargeEvidence.TwoPotentials> twoPotentials(Placed placed, OptionalDouble widestEv, Work work) {
        if (!placed.scan().countsKnown()) return Optional.empty();
        double fwhm = placed.fit().reference().fwhm().value();
        double beyond = widestEv.isPresent() ? 1 + (fwhm - widestEv.getAsDouble()) / WIDTH_SPEAKS : 0;
        double widthGain = TWO_POTENTIALS * Math.max(0, beyond);
        HydrocarbonFit again = new HydrocarbonFit(placed.scan(), placed.startEv(), work);
        ChargeEvidence.TwoPotentials best = null;
        for (double share : SHARES) {
            Optional<FitResult> tried = again.solve(placed.companions(), List.of(new SecondPatch(share)))
                    .map(Solved::result)
                    .filter(FitResult::converged);
            if (tried.isEmpty()) continue;
            double gain = placed.result().objective() - tried.get().objective();
            if (best != null && gain <= best.devianceGain()) continue;
            best = new ChargeEvidence.TwoPotentials(
                    tried.get().value(SecondPatch.SEPARATION),
                    tried.get().standardUncertainty(SecondPatch.SEPARATION),
                    share,
                    gain,
                    widthGain,
                    gain + widthGain > TWO_POTENTIALS);
        }
        return Optional.ofNullable(best);
    }

    private static List<Companion> plus(List<Companion> companions, Companion one) {
        List<Companion> more = new ArrayList<>(companions);
        more.add(one);
        return more;
    }

    private Optional<Solved> solve(List<Companion> companions, List<SecondPatch> patches) {
        CarbonModel model = new CarbonModel(scan, Window.around(start, BELOW, ABOVE), start, companions, patches);
        if (!model.possible()) return Optional.empty();
        return Optional.of(new Solved(model, model.solve(OptionalDouble.empty(), work), companions));
    }

    private boolean poor(FitResult result) {
        if (!scan.countsKnown()) return false;
        double freedom = result.degreesOfFreedom();
        return result.chiSquare() - freedom > POOR * Math.sqrt(2 * freedom);
    }
}
