package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import spotline.analysis.quantify.Quantified;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.run.findings.RuleBook;

/** The demonstration holder, whose truth is known because it was made. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoBarsTest {
    private static final Path DEMO = Path.of("../../demo-spectra");

    private final RunResult result;
    private final JsonNode truth;

    DemoBarsTest() throws Exception {
        ReferenceData reference = ReferenceData.shipped();
        HolderRun run = new HolderRunLoader(reference)
                .load(DEMO.resolve("footbridge-bearing.json"), Optional.empty(), 1, Work.UNWATCHED);
        result = new RunPipeline(reference, "test", RuleBook.standard()).treat(run, 2, Work.UNWATCHED);
        truth = new ObjectMapper().readTree(DEMO.resolve("truth.json").toFile());
    }

    @Test
    void everyElementIsWithinThreeAtomicPercent() {
        for (JsonNode spot : truth.path("spots")) {
            Map<String, Double> found = new TreeMap<>();
            for (Quantified row : spot(spot).composition()) {
                row.atomicPercent().ifPresent(x -> found.put(row.element(), x.value()));
            }
            Map<String, Double> expected = new TreeMap<>();
            for (Map.Entry<String, JsonNode> e : spot.path("atomic_percent").properties()) {
                expected.put(e.getKey(), e.getValue().doubleValue());
            }
            assertThat(found.keySet())
                    .as("elements of spot %s", spot.path("spot"))
                    .isEqualTo(expected.keySet());
            expected.forEach((element, percent) -> assertThat(found.get(element))
                    .as("%s at spot %s", element, spot.path("spot"))
                    .isCloseTo(percent, within(3.0)));
        }
    }

    /** Spots 5 and 6 are places of one sample. */
    @Test
    void replicatesHaveTheSameBackgroundUnderEachLine() {
        List<List<String>> backgrounds = result.spots().stream()
                .filter(s -> s.sample().equals("titanium dioxide pigment"))
                .map(s -> s.intensities().stream()
                        .map(m -> m.basis() + " " + m.intensity().line() + " "
                                + m.intensity().background())
                        .toList())
                .toList();
        assertThat(backgrounds).hasSize(2);
        assertThat(backgrounds.get(0)).isEqualTo(backgrounds.get(1));
    }

    @Test
    void everyShiftIsWithinTwoTenths() {
        for (JsonNode spot : truth.path("spots")) {
            assertThat(spot(spot).charge().shiftEv().orElseThrow())
                    .as("shift of spot %s", spot.path("spot"))
                    .isCloseTo(spot.path("shift_ev").doubleValue(), within(0.2));
        }
    }

    @Test
    void everySpotSumsToOneHundred() {
        for (SpotResult spot : result.spots()) {
            double sum = 0;
            for (Quantified row : spot.composition()) {
                if (row.atomicPercent().isPresent())
                    sum += row.atomicPercent().get().value();
            }
            assertThat(sum).isCloseTo(100, within(1e-9));
        }
    }

    private SpotResult spot(JsonNode truthOfSpot) {
        String id = truthOfSpot.path("spot").asText();
        return result.spots().stream()
                .filter(s -> s.spot().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
