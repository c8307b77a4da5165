package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;

class DemoFolderTest {
    private static final Path COMMITTED = Path.of("../../demo-spectra");

    private static Map<String, byte[]> bytes(Path folder) throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (Stream<Path> listing = Files.list(folder)) {
            for (Path file : listing.sorted().toList()) files.put(file.getFileName().toString(), Files.readAllBytes(file));
        }
        return files;
    }

    @Test
    void theCommittedFolderIsWhatTheMakerMakes(@TempDir Path folder) throws IOException {
        MakeDemo.main(new String[] {folder.toString()});
        Map<String, byte[]> made = bytes(folder);
        Map<String, byte[]> committed = bytes(COMMITTED);
        assertThat(made.keySet()).containsExactlyElementsOf(committed.keySet());
        made.forEach((name, content) ->
                assertThat(content).as(name).isEqualTo(committed.get(name)));
    }

    @Test
    void theFolderStaysSmall() throws IOException {
        long size = bytes(COMMITTED).values().stream().mapToLong(b -> b.length).sum();
        assertThat(size).isLessThan(3_000_000);
    }

    @Test
    void theHolderRunReadsWithoutFault() throws ReadException {
        HolderRunFile run = HolderRunReader.read(COMMITTED.resolve("footbridge-bearing.json"));
        assertThat(run.spots()).hasSize(6);
        run.spots().forEach(spot -> spot.spectra()
                .forEach(entry -> assertThat(COMMITTED.resolve(entry.file())).exists()));
    }

    @Test
    void theTruthSumsToAHundredAtEverySpot() throws IOException {
        JsonNode truth = new ObjectMapper().readTree(COMMITTED.resolve("truth.json").toFile());
        assertThat(truth.get("spots")).hasSize(6);
        for (JsonNode spot : truth.get("spots")) {
            double sum = 0;
            for (JsonNode percent : spot.get("atomic_percent")) sum += percent.doubleValue();
            assertThat(sum).isBetween(99.9995, 100.0005);
            Map<String, Double> fractions = new LinkedHashMap<>();
            for (JsonNode state : spot.get("states")) {
                fractions.merge(
                        state.get("element").textValue(),
                        state.get("fraction_of_element").doubleValue(),
                        Double::sum);
            }
            assertThat(fractions.values()).allMatch(value -> Math.abs(value - 1) < 1e-4);
            assertThat(fractions).hasSameSizeAs(spot.get("atomic_percent"));
        }
    }
}
