package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spotline.analysis.background.FittedBackground;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Work;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.FitWorker;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.StopReason;
import spotline.numerics.fit.Weighting;
import spotline.numerics.shape.LineShape;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/**
 * Fits a model to a narrow scan.
 *
 * <p>Shape: one scan of n channels and one model in, one result out. Units: measured binding energy in eV, counts, areas
 * in counts eV before transmission. Counts are fitted by their Poisson likelihood, never with weights from the counts
 * themselves; an ordinate of unknown statistics by plain least squares, its uncertainties taken from the residuals.
 * Variances are multiplied by the reduced chi-square, over what a background taken first lets expect of it, where that is
 * above 1.
 *
 * <p>Errors: untreated, with every problem, when the model does not suit the scan; untreated with the background's reason
 * when that does not exist for the data.
 *
 * <p>Source: Poisson likelihood for spectra, P.J. Cumpson and M.P. Seah, Surf. Interface Anal. 18 (1992) 345;
 * uncertainties GUM (JCGM 100:2008) 5.
 */
public final class PeakFit {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "peak-fit/1";

    /** A satellite that stays this far outside the window whatever its peak's position does is left out, eV. */
    private static final double SATELLITE_REACH = 8;

    private final ReferenceData reference;
    private final FitSettings settings;

    public PeakFit(ReferenceData reference) {
        this(reference, FitSettings.DEFAULT.with(FitSettings.Scaling.NEVER));
    }

    private PeakFit(ReferenceData reference, FitSettings settings) {
        this.reference = requireNonNull(reference, "reference");
        this.settings = requireNonNull(settings, "settings");
    }

    /** @param key names the uncertainty contributions: estimates of one key are taken to be of one fit */
    public Outcome<PeakFitResult> fit(BindingScan scan, FitModel model, String key, Work work) {
        List<Problem> problems = model.check(scan, reference);
        if (!problems.isEmpty()) {
            String all = problems.stream().map(Problem::sentence).collect(Collectors.joining("; "));
            return untreated(scan, "fit-model", "The fit model does not suit the scan: " + all + ".");
        }
        Optional<Subtraction> subtraction = Optional.empty();
        List<Finding> findings = new ArrayList<>();
        if (!model.background().fitted()) {
            Outcome<Subtraction> taken = model.background().background().subtract(scan, model.window(), key, work);
            if (taken instanceof Outcome.Untreated<Subtraction> refused) return Outcome.untreated(refused.finding());
            findings.addAll(taken.allFindings());
            subtraction = taken.result();
        }
        return new Attempt(scan, model, subtraction, key, findings).solve(work);
    }

    public Outcome<PeakFitResult> fit(BindingScan scan, FitModel model, Work work) {
        return fit(scan, model, scan.label(), work);
    }

    private static Outcome<PeakFitResult> untreated(BindingScan scan, String rule, String message) {
        return Outcome.untreated(Finding.caution(rule, message).in(scan.label()));
    }

    /** One fit in the making. */
    private final class Attempt {
        private final BindingScan scan;
        private final FitModel model;
        private final Optional<Subtraction> subtraction;
        private final String key;
        private final List<Finding> findings;
        private final double[] energies;
        private final double[] counts;
        private final boolean counted;
        private final List<Member> members;
        private final ParameterGraph graph;
        private final SpectrumModel function;

        Attempt(
                BindingScan scan,
                FitModel model,
                Optional<Subtraction> subtraction,
                String key,
                List<Finding> findings) {
            this.scan = scan;
            this.model = model;
            this.subtraction = subtraction;
            this.key = key;
            this.findings = findings;
            int from = scan.firstAtOrAbove(model.window().lowEv());
            int to = scan.lastAtOrBelow(model.window().highEv()) + 1;
            energies = Arrays.copyOfRange(scan.energies(), from, to);
            counts = Arrays.copyOfRange(scan.counts(), from, to);
            counted = scan.countsKnown() && Arrays.stream(counts).allMatch(c -> c >= 0);
            if (scan.countsKnown() && !counted) {
                findings.add(Finding.caution(
                                "fit-negative-counts",
                                "Some counts in the window are negative: they were fitted by plain least squares, and"
                                        + " uncertainties come from the residuals.")
                        .in(scan.label()));
            }
            members = Member.of(model, reference, scan.photonEnergyEv());
            graph = new ParameterGraph(members);
            Optional<FittedBackground> along = model.background().fitted()
                    ? model.background().background().fitted(energies)
                    : Optional.empty();
            double[] given = subtraction.map(Subtraction::backgrounds).orElseGet(() -> new double[energies.length]);
            function = new SpectrumModel(energies, graph, satellites(), given, along);
        }

        /** Of every member, those that can show in the window. */
        private List<List<Satellite>> satellites() {
            double low = energies[0] - SATELLITE_REACH;
            double high = energies[energies.length - 1] + SATELLITE_REACH;
            double width = model.window().widthEv();
            List<List<Satellite>> all = new ArrayList<>();
            for (int m = 0; m < members.size(); m++) {
                List<Satellite> shown = new ArrayList<>();
                for (Satellite s : model.satellites()) {
                    double lowest = model.window().lowEv() - width - s.displacementEv();
                    double highest = model.window().highEv() + width - s.displacementEv();
                    if (highest > low && lowest < high) shown.add(s);
                }
                all.add(List.copyOf(shown));
            }
            return all;
        }

        Outcome<PeakFitResult> solve(Work work) {
            int m = model.background().background().endpointChannels();
            double[] start = FirstGuess.of(energies, counts, subtraction.map(Subtraction::backgrounds), function, m);
            List<Parameter> parameters = new ArrayList<>();
            for (int k = 0; k < graph.slots().size(); k++) {
                ParameterGraph.Slot slot = graph.slots().get(k);
                parameters.add(Parameter.bounded(slot.name(), start[k], slot.min(), slot.max()));
            }
            for (int k = parameters.size(); k < start.length; k++) {
                parameters.add(Parameter.free("background " + (k - graph.slots().size()), start[k]));
            }
            Weighting weighting = counted ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
            FitResult fit =
                    new FitWorker().solve(FitProblem.of(function, counts, weighting, parameters), settings, work);
            if (fit.stopReason() == StopReason.NOT_FINITE) {
                return untreated(scan, "fit-not-finite", "The model is not finite where the fit starts.");
            }
            PeakFitResult result = result(fit);
            findings.addAll(FitChecks.of(result, scan.label()));
            return Outcome.done(result, findings);
        }

        private PeakFitResult result(FitResult fit) {
            FitCovariance covariance = subtraction
                    .map(s -> FitCovariance.of(fit, s, scan.counts(), counted, key))
                    .orElseGet(() -> FitCovariance.of(fit, counted, key));
            double[] slots = fit.values();
            double[] values = function.values(slots);
            Map<List<Double>, PeakWidth> widths = new LinkedHashMap<>();
            List<FittedComponent> components = new ArrayList<>();
            for (int m = 0; m < members.size(); m++) {
                components.add(component(m, fit, slots, values, covariance, widths));
            }
            return new PeakFitResult(
                    scan.label(),
                    model,
                    components,
                    FitStatistics.of(fit, counted, covariance.factor()),
                    FitChecks.inseparable(components),
                    counted,
                    energies,
                    counts,
                    function.background(slots),
                    fit.fitted(),
                    fit.residuals());
        }

        private FittedComponent component(
                int m,
                FitResult fit,
                double[] slots,
                double[] values,
                FitCovariance covariance,
                Map<List<Double>, PeakWidth> widths) {
            Member member = members.get(m);
            LineShape shape = member.shape();
            int first = graph.first(m);
            double[] own = Arrays.copyOfRange(values, first, first + shape.parameterCount());
            Map<String, FittedParameter> parameters = new LinkedHashMap<>();
            List<Estimate> estimates = new ArrayList<>();
            for (int k = 0; k < own.length; k++) {
                Estimate estimate = estimate(values[first + k], first + k, slots, values, covariance);
                estimates.add(estimate);
                parameters.put(shape.parameterNames().get(k), new FittedParameter(estimate, hold(first + k, fit)));
            }
            PeakWidth width = widths.computeIfAbsent(shapeKey(m, own), any -> PeakWidth.of(shape, own));
            double[] byValue = new double[values.length];
            for (int k = 0; k < own.length; k++) byValue[first + k] = width.slope(k);
            Estimate fwhm = covariance.estimate(width.fwhm, graph.gradient(slots, values, byValue));
            Estimate position = estimates.get(LineShape.POSITION);
            return new FittedComponent(
                    member.name(),
                    shape.name(),
                    member.partnerOf(),
                    position,
                    position.value() + width.maximumOffset,
                    fwhm,
                    estimates.get(LineShape.AREA),
                    parameters,
                    function.curve(m, values));
        }

        /** Peaks of one shape and the same widths measure alike, wherever they stand. */
        private List<Double> shapeKey(int m, double[] own) {
            List<Double> key = new ArrayList<>();
            int same = m;
            for (int k = 0; k <= m; k++) {
                if (members.get(k).shape().equals(members.get(m).shape())) {
                    same = k;
                    break;
                }
            }
            key.add((double) same);
            for (int k = LineShape.AREA + 1; k < own.length; k++) key.add(own[k]);
            return key;
        }

        private Estimate estimate(double value, int v, double[] slots, double[] values, FitCovariance covariance) {
            double[] byValue = new double[values.length];
            byValue[v] = 1;
            return covariance.estimate(value, graph.gradient(slots, values, byValue));
        }

        private FittedParameter.Hold hold(int value, FitResult fit) {
            int slot = graph.numberOf(value);
            if (slot < 0) return graph.moves(value) ? FittedParameter.Hold.TIED : FittedParameter.Hold.FIXED;
            return switch (fit.state(slot)) {
                case AT_LOWER_BOUND -> FittedParameter.Hold.AT_LOWER_BOUND;
                case AT_UPPER_BOUND -> FittedParameter.Hold.AT_UPPER_BOUND;
                default -> graph.leaderOf(value) < 0 ? FittedParameter.Hold.FREE : FittedParameter.Hold.TIED;
            };
        }
    }
}
