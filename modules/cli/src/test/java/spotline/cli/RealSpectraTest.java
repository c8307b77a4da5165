package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measured spectra (MIT and BSD-3-Clause test data of two readers of the format), kept beside the project and not in it:
 * skipped where they are missing.
 */
class RealSpectraTest {
    private static final Path FOLDER =
            CommandRun.ROOT.resolve("../shared/real-spectra").normalize();

    @TempDir
    private Path folder;

    @BeforeEach
    void needsTheMeasurements() {
        Assumptions.assumeTrue(Files.isDirectory(FOLDER), "no measured spectra beside the project");
    }

    /** Source: blocks.csv beside the files, what a correct reader finds. */
    @Test
    void inspectAgreesWithTheListedBlocks() throws IOException {
        Map<String, JsonNode> inspected = new HashMap<>();
        int rows = 0;
        for (Map<String, String> row : TruthCheck.rows(FOLDER.resolve("blocks.csv"))) {
            JsonNode file = inspected.computeIfAbsent(row.get("file"), RealSpectraTest::inspect);
            JsonNode block = file.path("blocks").path(Integer.parseInt(row.get("block")) - 1);
            JsonNode ordinate = block.path("ordinates").path(Integer.parseInt(row.get("variable")) - 1);
            assertThat(block.path("axis").path("channels").asInt())
                    .as(row.toString())
                    .isEqualTo(Integer.parseInt(row.get("points")));
            assertThat(block.path("axis").path("first").asDouble())
                    .isCloseTo(Double.parseDouble(row.get("start")), within(1e-6));
            assertThat(block.path("technique").asText()).isEqualTo(row.get("technique"));
            assertThat(ordinate.path("label").asText()).isEqualTo(row.get("var_label"));
            double sum = Double.parseDouble(row.get("sum"));
            assertThat(ordinate.path("sum").asDouble()).isCloseTo(sum, within(1e-9 * Math.abs(sum)));
            assertThat(ordinate.path("first").asDouble()).isCloseTo(Double.parseDouble(row.get("first")), within(1e-6));
            assertThat(ordinate.path("last").asDouble()).isCloseTo(Double.parseDouble(row.get("last")), within(1e-6));
            rows++;
        }
        assertThat(rows).isEqualTo(43);
    }

    private static JsonNode inspect(String name) {
        CommandRun run = CommandRun.of("inspect", "--json", FOLDER.resolve(name));
        try {
            return new ObjectMapper().readTree(run.out()).path(0);
        } catch (IOException e) {
            throw new IllegalStateException(run.err(), e);
        }
    }

    @Test
    void aHolderRunOverFoilsGivesTablesAnAnalystWouldBelieve() throws IOException {
        String files = FOLDER.toString().replace("\\", "\\\\");
        Path holder = Files.writeString(folder.resolve("foils.json"), """
                {"format": "spotline-holder-run/1", "title": "measured foils", "holder": {"template": "flat-bar"},
                 "instrument": {"excitation": {"source": "Al Ka", "monochromated": true}},
                 "spots": [
                  {"id": "1", "xMm": 20, "yMm": 8,
                   "sample": {"name": "aluminium foil, grounded", "conductivity": "conductor"},
                   "mount": {"method": "metal-clip", "electricalState": "grounded"},
                   "spectra": [{"file": "DIR/foil-grounded-survey.vms"}]},
                  {"id": "2", "xMm": 50, "yMm": 8,
                   "sample": {"name": "aluminium foil, insulated", "carbon": "adventitious"},
                   "mount": {"method": "adhesive-tape", "electricalState": "isolated"},
                   "spectra": [{"file": "DIR/foil-insulated-angles.vms", "blocks": [1, 2, 3]}]},
                  {"id": "3", "xMm": 80, "yMm": 8,
                   "sample": {"name": "tantalum", "conductivity": "conductor", "expectedElements": ["Ta", "O"]},
                   "mount": {"method": "metal-clip", "electricalState": "grounded"},
                   "spectra": [{"file": "DIR/tantalum-survey-and-narrow.vms"}]}]}
                """.replace("DIR", files));
        CommandRun run = CommandRun.of("run", holder, "--out", folder.resolve("out"));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        Map<String, Map<String, Double>> table = new HashMap<>();
        for (Map<String, String> row : TruthCheck.rows(folder.resolve("out/composition.csv"))) {
            table.computeIfAbsent(row.get("spot"), k -> new HashMap<>())
                    .put(row.get("element"), Double.parseDouble(row.get("atomic_percent")));
        }
        // Air-formed oxide on foil: about 2 O to 1 Al with a carbon layer; common practice, no source.
        assertThat(table.get("1")).containsOnlyKeys("C", "O", "Al");
        assertThat(table.get("1").get("O")).isBetween(45.0, 60.0);
        assertThat(table.get("1").get("Al")).isBetween(25.0, 38.0);
        assertThat(table.get("2")).containsOnlyKeys("C", "O", "Al");
        assertThat(table.get("2").get("Al")).isBetween(25.0, 40.0);
        assertThat(table.get("3")).containsOnlyKeys("O", "Ta");
        assertThat(table.get("3").get("Ta")).isBetween(28.0, 45.0);
        List<Map<String, String>> charge = TruthCheck.rows(folder.resolve("out/charge.csv"));
        assertThat(charge.get(0).get("shift_ev")).isEqualTo("0");
        // The insulated foil is over-flooded: its lines lie about 4 eV too low, O 1s of the oxide comes to 531 to 532
        // eV.
        double shift = Double.parseDouble(charge.get(1).get("shift_ev"));
        assertThat(shift).isBetween(3.7, 4.3);
        assertThat(charge.get(2).get("shift_ev")).isEqualTo("0");
    }
}
