package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spotline.analysis.background.FittedBackground;
import spotline.analysis.background.Subtraction;
import spotline.core.Work;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.FitWorker;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.Weighting;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** A model laid on a scan: what is to be fitted to what. Not copied out: package-private, and nobody writes to the arrays. */
final class PreparedFit {
    /** A satellite that stays this far outside the window whatever its peak's position does is left out, eV. */
    private static final double SATELLITE_REACH = 8;

    private static final FitSettings SETTINGS = FitSettings.DEFAULT.with(FitSettings.Scaling.NEVER);

    final BindingScan scan;
    final FitModel model;
    final Optional<Subtraction> subtraction;
    final double[] energies;
    final double[] counts;
    /** Whether the channels of the window are counts with Poisson statistics. */
    final boolean counted;

    final ParameterGraph graph;
    final SpectrumModel function;
    private final ReferenceData reference;

    /** @param subtraction the background taken first, empty where it is fitted along */
    PreparedFit(BindingScan scan, FitModel model, Optional<Subtraction> subtraction, ReferenceData reference) {
        this.scan = scan;
        this.model = model;
        this.subtraction = subtraction;
        this.reference = reference;
        int from = scan.firstAtOrAbove(model.window().lowEv());
        int to = scan.lastAtOrBelow(model.window().highEv()) + 1;
        energies = Arrays.copyOfRange(scan.energies(), from, to);
        counts = Arrays.copyOfRange(scan.counts(), from, to);
        counted = scan.countsKnown() && Arrays.stream(counts).allMatch(c -> c >= 0);
        graph = new ParameterGraph(Member.of(model, reference, scan.photonEnergyEv()));
        Optional<FittedBackground> along =
                model.background().fitted() ? model.background().background().fitted(energies) : Optional.empty();
        double[] given = subtraction.map(Subtraction::backgrounds).orElseGet(() -> new double[energies.length]);
        function = new SpectrumModel(energies, graph, satellites(), given, along);
    }

    /** The same scan and background with other components. */
    PreparedFit with(List<ComponentModel> components) {
        return new PreparedFit(scan, model.withComponents(components), subtraction, reference);
    }

    /** Those that can show in the window. */
    private List<Satellite> satellites() {
        double low = energies[0] - SATELLITE_REACH;
        double high = energies[energies.length - 1] + SATELLITE_REACH;
        double width = model.window().widthEv();
        return model.satellites().stream()
                .filter(s -> model.window().highEv() + width - s.displacementEv() > low)
                .filter(s -> model.window().lowEv() - width - s.displacementEv() < high)
                .toList();
    }

    double[] guess() {
        int m = model.background().background().endpointChannels();
        return FirstGuess.of(energies, counts, subtraction.map(Subtraction::backgrounds), function, m);
    }

    /** @param start one value a slot of the graph, then a value a parameter of a background fitted along */
    FitResult solve(double[] start, Work work) {
        List<Parameter> parameters = new ArrayList<>();
        for (int k = 0; k < graph.slots().size(); k++) {
            ParameterGraph.Slot slot = graph.slots().get(k);
            double inside = Math.max(slot.min(), Math.min(slot.max(), start[k]));
            parameters.add(Parameter.bounded(slot.name(), inside, slot.min(), slot.max()));
        }
        for (int k = parameters.size(); k < start.length; k++) {
            parameters.add(Parameter.free("background " + (k - graph.slots().size()), start[k]));
        }
        Weighting weighting = counted ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        return new FitWorker().solve(FitProblem.of(function, counts, weighting, parameters), SETTINGS, work);
    }

    FitCovariance covariance(FitResult fit, String key) {
        return subtraction
                .map(s -> FitCovariance.of(fit, s, scan.counts(), counted, key))
                .orElseGet(() -> FitCovariance.of(fit, counted, key));
    }
}
