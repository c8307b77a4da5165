package spotline.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.ListedFactors;
import spotline.core.Finding;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/** Gives the spots whose treatment asks for it the factors of reference spots, which are treated first. */
final class ReferenceSpots {
    private final ReferenceData reference;
    private final SpotTreatment treatment;
    private final Memo memo;
    private final Map<QuantifySettings.FactorChoice.FromSpots, Made> made = new HashMap<>();

    /** What became of one choice: factors, or the reason why not. */
    private record Made(Optional<ListedFactors> factors, String reason) {}

    ReferenceSpots(ReferenceData reference, SpotTreatment treatment, Memo memo) {
        this.reference = reference;
        this.treatment = treatment;
        this.memo = memo;
    }

    /** The run with those factors; a spot that cannot have them keeps the computed ones, and a finding stops it. */
    HolderRun applied(HolderRun run, Work work) {
        List<SpotInput> inputs = new ArrayList<>();
        for (SpotInput input : run.spots()) {
            if (!(input.treatment().quantify().factors() instanceof QuantifySettings.FactorChoice.FromSpots choice)
                    || choice.spots().contains(input.spot().id())) {
                inputs.add(input);
                continue;
            }
            Made result = made.computeIfAbsent(choice, c -> make(run, c, work));
            inputs.add(
                    result.factors().isPresent()
                            ? input.quantifiedBy(result.factors().get())
                            : input.with(Finding.stop(
                                    "reference-factors-missing",
                                    "The factors of the reference spots cannot be had: " + result.reason() + ".")));
        }
        return new HolderRun(
                run.plan(), inputs, run.files(), run.findings(), run.seed(), run.planFindings(), run.calibration());
    }

    /** The sets that the spots of a run ask for, each once. Errors: {@link IllegalArgumentException} says why one cannot be had. */
    List<ListedFactors> sets(HolderRun run, Work work) {
        return run.spots().stream()
                .map(s -> s.treatment().quantify().factors())
                .filter(QuantifySettings.FactorChoice.FromSpots.class::isInstance)
                .map(QuantifySettings.FactorChoice.FromSpots.class::cast)
                .distinct()
                .map(choice -> {
                    Made result = make(run, choice, work);
                    return result.factors().orElseThrow(() -> new IllegalArgumentException(result.reason()));
                })
                .toList();
    }

    private Made make(HolderRun run, QuantifySettings.FactorChoice.FromSpots choice, Work work) {
        List<SpotResult> spots = new ArrayList<>();
        OptionalDouble angle = OptionalDouble.empty();
        for (String id : choice.spots()) {
            Optional<SpotInput> input =
                    run.spots().stream().filter(s -> s.spot().id().equals(id)).findFirst();
            if (input.isEmpty()) return new Made(Optional.empty(), "there is no spot " + id);
            spots.add(treatment.treat(input.get(), work));
            OptionalDouble stated = input.get().treatment().quantify().angleDeg();
            angle = stated.isPresent() ? stated : input.get().sourceAnalyserAngleDeg();
        }
        OptionalDouble measuredAt = angle;
        try {
            Memo.Key key = Memo.Key.of(
                    "reference-factors",
                    choice,
                    measuredAt,
                    spots.stream().map(Memo.Same::new).toList());
            return new Made(Optional.of(memo.of(key, () -> LabFactors.of(spots, choice, measuredAt, reference))), "");
        } catch (IllegalArgumentException e) {
            return new Made(Optional.empty(), String.valueOf(e.getMessage()));
        }
    }
}
