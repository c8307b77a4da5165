package spotline.report.table;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import spotline.holder.Spot;
import spotline.holder.SpotPurpose;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/**
 * What is kept of one of many holder runs: little, so that memory does not grow with their number.
 *
 * @param run what the run is called in tables
 * @param controls names of the samples that come along as controls
 */
public record HolderSummary(
        String run, Optional<LocalDate> date, List<SampleComposition> samples, Set<String> controls, boolean stopped) {
    public HolderSummary {
        samples = List.copyOf(samples);
        controls = Set.copyOf(controls);
    }

    public static HolderSummary of(String run, RunResult result) {
        Set<String> controls = result.plan().spots().stream()
                .filter(s -> s.purpose() == SpotPurpose.CONTROL)
                .map(Spot::sampleName)
                .collect(Collectors.toSet());
        return new HolderSummary(run, result.plan().file().date(), result.samples(), controls, result.stopped());
    }
}
