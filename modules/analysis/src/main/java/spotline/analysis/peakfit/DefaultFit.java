package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.background.TougaardTwo;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.Tied;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;

/**
 * Fits a model and leaves out, one by one, the components that the data do not ask for: those with an area under three of
 * its uncertainties, and the weaker of two of which only the sum is measured. The first component stays while another one
 * is tied to its position. Where the residuals are structured above the model's background, a two-parameter Tougaard one
 * is tried in its place and kept where it describes the data better.
 *
 * <p>Shape: one scan and one model in, the result of the last fit out; its model is the reduced one. Errors: as
 * {@link PeakFit}. Source: common practice, no source.
 */
public final class DefaultFit {
    private static final double ASKED_FOR = 3;
    private static final String ASYMMETRY = "asymmetry";
    /** A fall of the deviance that two more parameters would not explain; common practice, no source. */
    private static final double LEAST_GAIN = 10;

    private final PeakFit fit;

    public DefaultFit(PeakFit fit) {
        this.fit = requireNonNull(fit, "fit");
    }

    public Outcome<PeakFitResult> fit(BindingScan scan, FitModel model, String key, Work work) {
        Outcome<PeakFitResult> first = reduced(scan, model, key, work);
        if (first.result().isEmpty()
                || !FitChecks.structured(first.result().get().statistics())) return first;
        FitModel losses = model.withBackground(BackgroundModel.fittedAlong(
                TougaardTwo.universal(model.background().background().endpointChannels())));
        Outcome<PeakFitResult> second = reduced(scan, losses, key, work);
        if (second.result().isEmpty()) return first;
        double gain = first.result().get().statistics().deviance()
                - second.result().get().statistics().deviance();
        return gain > LEAST_GAIN ? second : first;
    }

    /** Asymmetric shapes are slow: they are tried only for components that a symmetric one has shown to be there. */
    private Outcome<PeakFitResult> reduced(BindingScan scan, FitModel model, String key, Work work) {
        FitModel symmetric = model.withComponents(
                model.components().stream().map(DefaultFit::symmetric).toList());
        Outcome<PeakFitResult> outcome = dropping(scan, symmetric, key, work);
        if (outcome.result().isEmpty()) return outcome;
        FitModel left = outcome.result().get().model();
        FitModel restored = left.withComponents(
                left.components().stream().map(c -> restored(c, model)).toList());
        return restored.equals(left) ? outcome : dropping(scan, restored, key, work);
    }

    private static ComponentModel symmetric(ComponentModel c) {
        if (!(c.shape() instanceof DoniachSunjic)) return c;
        Map<String, ParameterRule> rules = new LinkedHashMap<>(c.parameters());
        rules.remove(ASYMMETRY);
        return new ComponentModel(c.name(), new Voigt(), rules, c.doublet());
    }

    private static ComponentModel restored(ComponentModel c, FitModel model) {
        ComponentModel original = model.components().stream()
                .filter(o -> o.name().equals(c.name()))
                .findFirst()
                .orElseThrow();
        if (original.shape().equals(c.shape())) return c;
        ComponentModel asymmetric = new ComponentModel(c.name(), original.shape(), c.parameters(), c.doublet());
        ParameterRule rule = original.parameters().get(ASYMMETRY);
        return rule == null ? asymmetric : asymmetric.with(ASYMMETRY, rule);
    }

    private Outcome<PeakFitResult> dropping(BindingScan scan, FitModel model, String key, Work work) {
        FitModel tried = model;
        List<Finding> told = new ArrayList<>();
        while (true) {
            Outcome<PeakFitResult> outcome = fit.fit(scan, tried, key, work);
            Optional<PeakFitResult> result = outcome.result();
            if (result.isEmpty() || tried.components().size() == 1) return told(outcome, told);
            Optional<String> unwanted = unwanted(tried, result.get());
            if (unwanted.isEmpty()) return told(outcome, told);
            onlySum(unwanted.get(), result.get(), scan).ifPresent(told::add);
            tried = tried.withComponents(without(tried.components(), unwanted.get()));
        }
    }

    private static Outcome<PeakFitResult> told(Outcome<PeakFitResult> outcome, List<Finding> before) {
        if (before.isEmpty() || !(outcome instanceof Outcome.Done<PeakFitResult> done)) return outcome;
        List<Finding> all = new ArrayList<>(before);
        all.addAll(done.findings());
        return Outcome.done(done.value(), all);
    }

    /** One that is left out because another describes the data as well stands in that one's area. */
    private static Optional<Finding> onlySum(String gone, PeakFitResult result, BindingScan scan) {
        for (Inseparable pair : result.inseparable()) {
            if (!pair.one().equals(gone) && !pair.other().equals(gone)) continue;
            String stays = pair.one().equals(gone) ? pair.other() : pair.one();
            return Optional.of(Finding.note(
                            "fit-only-sum",
                            "Components " + gone + " and " + stays
                                    + " are not told apart by the data: only their sum is measured, and it stands under "
                                    + stays + ".")
                    .in(scan.label()));
        }
        return Optional.empty();
    }

    private static Optional<String> unwanted(FitModel model, PeakFitResult result) {
        List<FittedComponent> candidates = result.components().stream()
                .filter(c -> c.partnerOf().isEmpty())
                .filter(c -> !leads(model, c.name()))
                .toList();
        Optional<FittedComponent> weakest = candidates.stream()
                .filter(c -> significance(c) < ASKED_FOR)
                .min(Comparator.comparingDouble(DefaultFit::significance));
        if (weakest.isPresent()) return weakest.map(FittedComponent::name);
        for (Inseparable pair : result.inseparable()) {
            Optional<FittedComponent> weaker = candidates.stream()
                    .filter(c -> c.name().equals(pair.one()) || c.name().equals(pair.other()))
                    .min(Comparator.comparingDouble(DefaultFit::significance));
            if (weaker.isPresent()) return weaker.map(FittedComponent::name);
        }
        return Optional.empty();
    }

    private static double significance(FittedComponent c) {
        double u = c.area().standardUncertainty().orElse(Double.POSITIVE_INFINITY);
        return u > 0 ? c.area().value() / u : 0;
    }

    /** Led by more than equality: what follows would not know where to go. */
    private static boolean leads(FitModel model, String name) {
        return model.components().stream()
                .flatMap(c -> c.parameters().values().stream())
                .anyMatch(rule -> rule instanceof Tied tied
                        && !(tied instanceof EqualTo)
                        && tied.component().equals(name));
    }

    /** Of those that were equal to the one left out, the first gets its rule and the others follow that one. */
    private static List<ComponentModel> without(List<ComponentModel> components, String name) {
        ComponentModel gone = components.stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow();
        Map<String, String> heirs = new HashMap<>();
        List<ComponentModel> left = new ArrayList<>();
        for (ComponentModel c : components) {
            if (c == gone) continue;
            ComponentModel kept = c;
            for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
                if (!rule.getValue().equals(new EqualTo(name))) continue;
                String parameter = rule.getKey();
                String heir = heirs.putIfAbsent(parameter, c.name());
                kept = heir == null
                        ? kept.with(parameter, gone.parameters().getOrDefault(parameter, Free.UNBOUNDED))
                        : kept.with(parameter, new EqualTo(heir));
            }
            left.add(kept);
        }
        return left;
    }
}
