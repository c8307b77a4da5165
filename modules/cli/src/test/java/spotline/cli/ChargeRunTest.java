package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Energy references of whole runs: what fails withholds referenced energies, and never a composition. */
class ChargeRunTest {
    @TempDir
    private Path folder;

    private final ObjectMapper mapper = new ObjectMapper();

    @BeforeEach
    void copyTheDemonstration() throws IOException {
        try (Stream<Path> files = Files.list(CommandRun.DEMO)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".txt")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
    }

    private Path run(String name, Consumer<ObjectNode> change) throws IOException {
        ObjectNode holder = (ObjectNode) mapper.readTree(CommandRun.HOLDER.toFile());
        change.accept(holder);
        Path plan = Files.writeString(folder.resolve(name + ".json"), holder.toString());
        Path out = folder.resolve(name);
        CommandRun run = CommandRun.of("run", plan, "--out", out, "--threads", "2");
        assertThat(run.status()).as(run.err()).isZero();
        return out;
    }

    private static ObjectNode charge(ObjectNode holder, int spot) {
        return ((ObjectNode) holder.path("spots").path(spot))
                .putObject("treatment")
                .putObject("charge");
    }

    private static List<Map<String, String>> rows(Path out, String file, String spot) throws IOException {
        return TruthCheck.rows(out.resolve(file)).stream()
                .filter(r -> spot.equals(r.get("spot")))
                .toList();
    }

    @Test
    void aFailedReferenceWithholdsReferencedEnergiesAndNoComposition() throws IOException {
        Path usual = run("usual", holder -> {});
        Path failed = run(
                "failed",
                holder -> charge(holder, 1)
                        .put("method", "internal-line")
                        .put("referenceLine", "Mg 1s")
                        .put("referenceEv", 1303.0)
                        .put("reason", "a line that was not measured"));
        Map<String, String> charge = rows(failed, "charge.csv", "2").get(0);
        assertThat(charge).containsEntry("verdict", "failed").containsEntry("shift_ev", "");
        assertThat(charge.get("statement")).contains("Mg 1s", "Next best: Zn 2p3/2", "would give a shift of -1.");
        assertThat(charge.get("other_reference")).startsWith("Zn 2p3/2");
        assertThat(rows(failed, "energies.csv", "2")).hasSize(5).allSatisfy(row -> {
            assertThat(row.get("measured_energy_ev")).isNotEmpty();
            assertThat(row).containsEntry("referenced_energy_ev", "").containsEntry("from_reference_line_ev", "");
            assertThat(row).containsEntry("energy_scale", "measured, not referenced");
        });
        List<Map<String, String>> before = rows(usual, "composition.csv", "2");
        List<Map<String, String>> after = rows(failed, "composition.csv", "2");
        assertThat(after).hasSameSizeAs(before);
        for (int i = 0; i < after.size(); i++) {
            assertThat(after.get(i)).containsEntry("element", before.get(i).get("element"));
            assertThat(Double.parseDouble(after.get(i).get("atomic_percent")))
                    .isCloseTo(Double.parseDouble(before.get(i).get("atomic_percent")), within(0.3));
        }
        assertThat(Files.readString(failed.resolve("findings.csv")))
                .contains("charge-reference-failed")
                .doesNotContain("stop,");
    }

    @Test
    void anotherReferenceMovesEnergiesAndNoPercent() throws IOException {
        Path usual = run("usual", holder -> {});
        Path nominal = run(
                "nominal",
                holder -> charge(holder, 2)
                        .put("method", "adventitious-carbon")
                        .put("referenceEv", 285.0)
                        .put("referenceUncertaintyEv", 0.2)
                        .put("reason", "nominal value"));
        List<Map<String, String>> before = rows(usual, "energies.csv", "3");
        List<Map<String, String>> after = rows(nominal, "energies.csv", "3");
        for (int i = 0; i < before.size(); i++) {
            // Derived: 285.0 - 284.8 = 0.2 eV for every line, none for a difference of two.
            assertThat(number(after, i, "referenced_energy_ev") - number(before, i, "referenced_energy_ev"))
                    .isCloseTo(0.2, within(1e-6));
            assertThat(after.get(i))
                    .containsEntry("from_reference_line_ev", before.get(i).get("from_reference_line_ev"))
                    .containsEntry("energy_scale", "C 1s set to 285.00 eV");
        }
        List<Map<String, String>> percent = rows(usual, "composition.csv", "3");
        List<Map<String, String>> same = rows(nominal, "composition.csv", "3");
        for (int i = 0; i < percent.size(); i++) {
            assertThat(number(same, i, "atomic_percent")).isCloseTo(number(percent, i, "atomic_percent"), within(0.3));
        }
    }

    @Test
    void carbonOfTheSampleIsRefusedWithWhatCouldBeStated() throws IOException {
        Path out = run("own", holder -> {
            for (JsonNode specimen : holder.path("specimens")) {
                if (specimen.path("id").asText().equals("C")) {
                    ((ObjectNode) specimen.path("sample")).put("carbon", "own");
                }
            }
        });
        Map<String, String> charge = rows(out, "charge.csv", "3").get(0);
        assertThat(charge).containsEntry("verdict", "failed");
        assertThat(charge.get("statement"))
                .contains("The carbon is the sample's own")
                .contains("Next best: ");
        assertThat(charge.get("declared")).contains("carbon declared the sample's own");
        assertThat(Files.readString(out.resolve("report.html")))
                .contains("Next best: ", "Other references this spot could have", "no energy reference for this spot");
    }

    @Test
    void theEvidenceOfTheDemonstrationIsWrittenForEverySpot() throws IOException {
        Path out = run("usual", holder -> {});
        List<Map<String, String>> rows = TruthCheck.rows(out.resolve("charge.csv"));
        assertThat(rows).hasSize(6).allSatisfy(row -> {
            assertThat(row.get("statement")).isNotEmpty();
            assertThat(row.get("declared")).contains("declared");
            assertThat(row.get("fwhm_ev")).isNotEmpty();
            assertThat(row.get("drift_ev_per_hour")).isNotEmpty();
        });
        // Auger parameters: Zn of ZnO near 2010, Ag of the metal near 726 eV; from memory.
        assertThat(rows.get(1).get("auger_parameters")).startsWith("Zn 2p3/2 + Zn L3M45M45 2009.9");
        assertThat(rows.get(3).get("auger_parameters")).startsWith("Ag 3d5/2 + Ag M4N45N45 726.0");
        assertThat(rows.get(4)).containsEntry("sibling_spot", "6");
        assertThat(Math.abs(Double.parseDouble(rows.get(4).get("sibling_difference_ev"))))
                .as("the pigment's spots agree once referenced")
                .isLessThan(0.02);
        JsonNode spot = mapper.readTree(out.resolve("result.json").toFile()).at("/spots/4/charge/evidence");
        assertThat(spot.path("positions")).hasSize(3);
        assertThat(spot.path("siblingSpots")).isNotEmpty();
        assertThat(Files.readString(out.resolve("report.html")))
                .contains("Chemical-state plot of Zn 2p3/2", "Chemical-state plot of Ag 3d5/2");
    }

    private static double number(List<Map<String, String>> rows, int row, String column) {
        return Double.parseDouble(rows.get(row).get(column));
    }
}
