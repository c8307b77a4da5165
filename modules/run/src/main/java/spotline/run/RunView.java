package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.Sample;
import spotline.reference.ReferenceData;

/**
 * The whole run at once, for rules that weigh plan, neighbours and results together.
 *
 * @param spots in the order of the holder run
 * @param samples their means
 * @param planFindings of the mounting checks; empty where those were not made
 * @param findings all that was found so far, those of the plan included
 */
public record RunView(
        HolderPlan plan,
        List<SpotView> spots,
        List<SampleComposition> samples,
        Optional<List<Finding>> planFindings,
        List<Finding> findings,
        ReferenceData reference) {
    public RunView {
        spots = List.copyOf(spots);
        samples = List.copyOf(samples);
        planFindings = planFindings.map(List::copyOf);
        findings = List.copyOf(findings);
    }

    static RunView of(
            HolderRun run,
            List<SpotResult> results,
            List<SampleComposition> samples,
            Optional<List<Finding>> planFindings,
            List<Finding> findings,
            ReferenceData reference) {
        List<SpotView> spots = new ArrayList<>();
        for (int i = 0; i < results.size(); i++) {
            SpotInput input = run.spots().get(i);
            spots.add(SpotView.of(input.spot(), results.get(i), input.treatment(), reference));
        }
        return new RunView(run.plan(), spots, samples, planFindings, findings, reference);
    }

    public List<SpotView> others(SpotView spot) {
        return spots.stream().filter(s -> !s.id().equals(spot.id())).toList();
    }

    /** Other spots of the same sample. */
    public List<SpotView> siblings(SpotView spot) {
        Optional<String> key = spot.spot().sample().map(Sample::key);
        return others(spot).stream()
                .filter(s ->
                        key.isPresent() && s.spot().sample().map(Sample::key).equals(key))
                .toList();
    }
}
