package spotline.run.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.demo.MixedSpot;
import spotline.run.RunResult;

/** Simulated holders with nothing wrong: noise alone may raise a caution at one spot in fifty. */
class CleanHoldersTest {

    private final List<String> raised = new ArrayList<>();

    /** Three spots, each with a survey and narrow scans, everything as before but the counting noise. */
    private int spotsWithACaution(int holder) throws Exception {
        PlantedTrapsTest.Load load = new PlantedTrapsTest.Load();
        for (String id : List.of("3", "4", "5")) {
            load.taken.put(id, MixedSpot.of(id, 1).taken("holder " + holder + " spot " + id));
        }
        RunResult result = PlantedTrapsTest.treated(load);
        TreeMap<String, Finding> spots = new TreeMap<>();
        for (Finding f : result.findings()) {
            if (f.severity() != Severity.NOTE) spots.put(f.spot(), f);
        }
        spots.values().forEach(f -> raised.add(holder + ": " + f));
        return spots.size();
    }

    private void atMostTwoPercent(int holders) throws Exception {
        int spots = 0;
        for (int i = 0; i < holders; i++) spots += spotsWithACaution(i);
        assertThat(spots).as("%s", raised).isLessThanOrEqualTo((int) Math.floor(0.02 * 3 * holders));
    }

    @Test
    void tenHolders() throws Exception {
        atMostTwoPercent(10);
    }

    @Tag("slow")
    @Test
    void twoHundredHolders() throws Exception {
        atMostTwoPercent(200);
    }
}
