package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Factors of a reference material: made on one holder, kept as a file, used on another. */
class FactorsCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    @BeforeEach
    void copyOfTheDemonstration() throws IOException {
        try (Stream<Path> files = Files.list(CommandRun.DEMO)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".txt")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }

    /** The demonstration with its two pigment spots alone, the second under a treatment. */
    private Path holder(String name, String factors) throws IOException {
        ObjectNode tree = (ObjectNode) JSON.readTree(CommandRun.HOLDER.toFile());
        for (int k = 0; k < 4; k++) {
            tree.withArray("spots").remove(0);
            tree.withArray("specimens").remove(0);
        }
        ObjectNode second = (ObjectNode) tree.withArray("spots").get(1);
        second.set("treatment", JSON.readTree("{\"quantify\": {\"factors\": " + factors + "}}"));
        return Files.writeString(folder.resolve(name), tree.toString());
    }

    private static String reference(String percent) {
        return "{\"kind\": \"reference-spots\", \"spots\": [\"5\"], \"atomicPercent\": " + percent
                + ", \"relativeU\": 0.02, \"relativeTo\": \"O 1s\"}";
    }

    @Test
    void factorsOfAReferenceMaterialServeAsAFile() throws IOException {
        // Spots 5 and 6 show one material: by its own factors each reads as what was stated, within 1.5 at.% of
        // scatter.
        Path made = holder("made.json", reference("{\"Ti\": 30, \"O\": 55, \"C\": 15}"));
        Path table = folder.resolve("pigment.csv");
        CommandRun run = CommandRun.of("factors", made, "--out", table);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(Files.readAllLines(table))
                .contains(
                        "# kind: reference-material",
                        "# source_analyser_angle_deg: 54.7",
                        "# backgrounds: shirley",
                        "O 1s,1,0")
                .anyMatch(line -> line.startsWith("Ti 2p,"));
        Path used = holder("used.json", "{\"kind\": \"file\", \"file\": \"pigment.csv\"}");
        assertThat(CommandRun.of("run", used, "--out", folder.resolve("out")).status())
                .isZero();
        List<java.util.Map<String, String>> rows = TruthCheck.rows(folder.resolve("out/composition.csv"));
        assertThat(rows)
                .filteredOn(r -> "6".equals(r.get("spot")) && "Ti".equals(r.get("element")))
                .singleElement()
                .satisfies(r ->
                        assertThat(Double.parseDouble(r.get("atomic_percent"))).isBetween(28.5, 31.5));
    }

    @Test
    void whatIsNoMaterialIsRefusedWithItsPlace() throws IOException {
        for (String percent : List.of("{\"Xx\": 100}", "{\"Ti\": 60, \"O\": 54}")) {
            CommandRun run = CommandRun.of(
                    "factors", holder("bad.json", reference(percent)), "--out", folder.resolve("none.csv"));
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err())
                    .contains("bad.json:/spots/1", "atomicPercent of the reference")
                    .hasLineCount(1);
        }
        CommandRun none = CommandRun.of("factors", CommandRun.HOLDER, "--out", folder.resolve("none.csv"));
        assertThat(none.status()).isEqualTo(2);
        assertThat(none.err()).contains("no treatment with factors of reference spots");
        assertThat(folder.resolve("none.csv")).doesNotExist();
    }
}
