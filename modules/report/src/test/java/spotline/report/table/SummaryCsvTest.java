package spotline.report.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spotline.analysis.quantify.Replicates;
import spotline.core.Estimate;
import spotline.run.SampleComposition;

class SummaryCsvTest {
    private static HolderSummary run(String name, int day, double percent) {
        // A shared factor error of 5 at.% would hide a change of 1 at.%; counting knows each run to 0.5. Derived.
        Replicates places = Replicates.of(
                List.of(Estimate.of(percent, "counting/" + name, 0.5).with("factor/cross section O 1s", 5)));
        SampleComposition.Mean oxygen = new SampleComposition.Mean(
                "O", OptionalDouble.of(percent), places.standardUncertainty(), Optional.of(places));
        return new HolderSummary(
                name,
                Optional.of(LocalDate.of(2026, 3, day)),
                List.of(new SampleComposition("check foil", List.of("7"), List.of(oxygen))),
                Set.of("check foil"),
                false);
    }

    @Test
    void aTrendOfControlsIsMeasuredByWhatTheRunsDoNotShare() {
        String table = new String(
                SummaryCsv.controls(List.of(run("first", 1, 60), run("second", 2, 62))), StandardCharsets.UTF_8);
        List<String> rows = table.lines().toList();
        assertThat(rows).hasSize(3);
        assertThat(rows.get(1))
                .startsWith("first,2026-03-01,check foil,O,60,5.02")
                .endsWith(",61,-1,-2");
        assertThat(rows.get(2)).endsWith(",61,1,2");
    }
}
