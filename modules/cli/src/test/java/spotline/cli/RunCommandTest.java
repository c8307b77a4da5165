package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The main job from a holder-run file to its result files, as a user runs it. */
class RunCommandTest {
    @TempDir
    private Path folder;

    /** A copy of the demonstration that a test may spoil. */
    private Path demoCopy() throws IOException {
        Path copy = Files.createDirectories(folder.resolve("demo"));
        try (Stream<Path> files = Files.list(CommandRun.DEMO)) {
            for (Path file : files.toList()) {
                if (Files.isRegularFile(file)) Files.copy(file, copy.resolve(file.getFileName()));
            }
        }
        return copy.resolve(CommandRun.HOLDER.getFileName());
    }

    @Test
    void theDemonstrationAgreesWithItsTruth() throws IOException {
        CommandRun run = CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("out"));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        List<String> faults = new ArrayList<>();
        // Truth: the demonstration's own forward model, noiseless zero-loss areas.
        List<String> passed = TruthCheck.check(CommandRun.DEMO.resolve("truth.json"), folder.resolve("out"), faults);
        assertThat(faults).isEmpty();
        assertThat(passed).hasSizeGreaterThan(25);
        assertThat(run.out()).contains("titanium dioxide pigment", "5 6", "report.html");
    }

    @Test
    void atomicPercentSumsToAHundredAtEverySpot() throws IOException {
        CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("out"));
        Map<String, Double> sums = new java.util.TreeMap<>();
        for (Map<String, String> row : TruthCheck.rows(folder.resolve("out/composition.csv"))) {
            if (!row.get("atomic_percent").isEmpty()) {
                sums.merge(row.get("spot"), Double.parseDouble(row.get("atomic_percent")), Double::sum);
            }
        }
        assertThat(sums).hasSize(6);
        assertThat(sums.values())
                .allSatisfy(sum -> assertThat(sum).isCloseTo(100, org.assertj.core.data.Offset.offset(1e-6)));
    }

    @Test
    void anyNumberOfThreadsWritesTheSameBytes() throws IOException {
        CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("one"), "--threads", 1);
        CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("two"), "--threads", 2);
        Path one = folder.resolve("one");
        try (Stream<Path> files = Files.walk(one)) {
            List<Path> written = files.filter(Files::isRegularFile).toList();
            assertThat(written).hasSizeGreaterThanOrEqualTo(25);
            for (Path file : written) {
                assertThat(folder.resolve("two").resolve(one.relativize(file))).hasSameBinaryContentAs(file);
            }
        }
    }

    @Test
    void aMissingFileIsAFindingAndTheOtherSpotsAreTreated() throws IOException {
        Path holder = demoCopy();
        Files.delete(holder.resolveSibling("02-primer-flake.txt"));
        CommandRun run = CommandRun.of("run", holder, "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("stop: spot 2:", "02-primer-flake.txt", "no such file");
        assertThat(treatedSpots()).containsExactly("1", "3", "4", "5", "6");
    }

    @Test
    void aBrokenSpectrumIsAFindingAndTheOtherSpotsAreTreated() throws IOException {
        Path holder = demoCopy();
        Path file = holder.resolveSibling("03-anodised-coupon.txt");
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        lines.set(40, "not a number");
        Files.write(file, lines);
        CommandRun run = CommandRun.of("run", holder, "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).contains("stop: spot 3: 03-anodised-coupon.txt:41: ");
        assertThat(treatedSpots()).containsExactly("1", "2", "4", "5", "6");
    }

    @Test
    void aWrongFieldIsOneLineAndWritesNothing() throws IOException {
        Path holder = demoCopy();
        Files.writeString(holder, Files.readString(holder).replace("\"operator\"", "\"operater\""));
        CommandRun run = CommandRun.of("run", holder, "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).startsWith("spotline: " + holder + ":/operater: ").contains("expected", "operator");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void aWrongTreatmentIsOneLineWithItsPointer() throws IOException {
        Path holder = demoCopy();
        String text = Files.readString(holder);
        int end = text.lastIndexOf('}');
        Files.writeString(holder, text.substring(0, end) + ", \"treatment\": {\"narrow\": {\"searchFwhm\": 1}}}");
        CommandRun run = CommandRun.of("run", holder, "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).startsWith("spotline: " + holder + ":/treatment/narrow/searchFwhm: unknown field");
    }

    @Test
    void aMissingHolderRunIsOneLine() {
        CommandRun run = CommandRun.of("run", folder.resolve("nothing.json"), "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("nothing.json: no such file");
    }

    @Test
    void anOutputThatIsAFileIsOneLine() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "x");
        CommandRun run = CommandRun.of("run", CommandRun.HOLDER, "--out", file);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).startsWith("spotline: ").contains("taken");
        assertThat(file).hasContent("x");
    }

    private List<String> treatedSpots() throws IOException {
        return TruthCheck.rows(folder.resolve("out/composition.csv")).stream()
                .filter(row -> !row.get("atomic_percent").isEmpty())
                .map(row -> row.get("spot"))
                .distinct()
                .toList();
    }
}
