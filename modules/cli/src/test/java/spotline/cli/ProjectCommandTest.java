package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Projects, several runs and differences, as a user has them. */
class ProjectCommandTest {
    @TempDir
    private Path folder;

    private void sameFiles(Path one, Path other) throws IOException {
        try (Stream<Path> files = Files.list(one)) {
            List<Path> written = files.filter(Files::isRegularFile).toList();
            assertThat(written).hasSizeGreaterThanOrEqualTo(10);
            for (Path file : written) {
                assertThat(other.resolve(file.getFileName())).hasSameBinaryContentAs(file);
            }
        }
    }

    @Test
    void aProjectGivesTheSameNumbersAgain() throws IOException {
        Path project = folder.resolve("bearing.spotline");
        Path treatment = Files.writeString(
                folder.resolve("treatment.json"),
                "{\"format\": \"spotline-treatment/1\", \"narrow\": {\"smallestMarginEv\": 3.2}}");
        CommandRun saved = CommandRun.of(
                "run",
                CommandRun.HOLDER,
                "--out",
                folder.resolve("one"),
                "--project",
                project,
                "--treatment",
                treatment,
                "--seed",
                5);
        assertThat(saved.err()).isEmpty();
        assertThat(saved.out()).contains("Project: " + project);
        CommandRun again = CommandRun.of("run", project, "--out", folder.resolve("two"));
        assertThat(again.err()).isEmpty();
        sameFiles(folder.resolve("one"), folder.resolve("two"));
        Path more = Files.writeString(
                folder.resolve("more.json"),
                "{\"format\": \"spotline-treatment/1\", \"quantify\": {\"without\": [\"C\"]}}");
        Path next = folder.resolve("next.spotline");
        CommandRun.of("run", project, "--treatment", more, "--out", folder.resolve("four"), "--project", next);
        CommandRun.of("run", next, "--out", folder.resolve("five"));
        assertThat(folder.resolve("five/composition-variants.csv"))
                .content()
                .contains("without-C")
                .isEqualTo(Files.readString(folder.resolve("four/composition-variants.csv")));
        assertThat(CommandRun.of("run", project, "--seed", 6, "--out", folder.resolve("six"), "--project", next)
                        .err())
                .contains("seed 6")
                .hasLineCount(1);
        byte[] kept = Files.readAllBytes(next);
        CommandRun over = CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("three"), "--project", next);
        assertThat(over.status()).isEqualTo(2);
        assertThat(over.err())
                .contains("next.spotline")
                .contains("edits of its own")
                .hasLineCount(1);
        assertThat(folder.resolve("three")).doesNotExist();
        assertThat(Files.readAllBytes(next)).isEqualTo(kept);
    }

    @Test
    void oneBadRunDoesNotStopTheOthers() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.json"), "{\"format\": \"spotline-holder-run/1\"");
        CommandRun run = CommandRun.of(
                "run", CommandRun.HOLDER, bad, CommandRun.HOLDER, "--out", folder.resolve("out"), "--threads", 2);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("bad.json").hasLineCount(1);
        assertThat(run.out()).contains("not treated", "footbridge-bearing-2");
        CommandRun alone = CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("alone"));
        assertThat(alone.status()).isZero();
        sameFiles(folder.resolve("alone"), folder.resolve("out/footbridge-bearing"));
        sameFiles(folder.resolve("alone"), folder.resolve("out/footbridge-bearing-2"));
        List<Map<String, String>> rows = TruthCheck.rows(folder.resolve("out/summary.csv"));
        assertThat(rows).extracting(r -> r.get("run")).contains("footbridge-bearing", "footbridge-bearing-2");
        assertThat(folder.resolve("out/control.csv")).exists();
    }

    @Test
    void aDifferenceNamesTheSettingThatDidIt() throws IOException {
        Path copy = Files.createDirectories(folder.resolve("copy"));
        try (Stream<Path> files = Files.list(CommandRun.DEMO)) {
            for (Path file : files.toList()) {
                if (Files.isRegularFile(file)) Files.copy(file, copy.resolve(file.getFileName()));
            }
        }
        Path holder = copy.resolve(CommandRun.HOLDER.getFileName());
        String text = Files.readString(holder).replaceFirst("\"date\": \"2026-03-17\"", "\"date\": \"2026-03-18\"");
        Files.writeString(holder, text.replaceFirst("\"referenceEv\": 292.0", "\"referenceEv\": 292.3"));
        CommandRun diff = CommandRun.of("diff", CommandRun.HOLDER, holder);
        assertThat(diff.err()).isEmpty();
        assertThat(diff.status()).isZero();
        assertThat(diff.out()).contains("spot 1: shift, eV", "2 settings differ.");
        assertThat(diff.out().lines().filter(l -> l.startsWith("/families/fluoropolymer/charge/referenceEv")))
                .singleElement()
                .asString()
                .contains("spot 1: shift, eV");
        assertThat(diff.out().lines().filter(l -> l.startsWith("/date")))
                .singleElement()
                .asString()
                .contains("nothing");
        CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("a"));
        CommandRun.of("run", holder, "--out", folder.resolve("b"));
        CommandRun results = CommandRun.of("diff", folder.resolve("a"), folder.resolve("b"));
        assertThat(results.out()).contains("spot 1: shift, eV", "/spot 1/charge/referenceEv");
        CommandRun same = CommandRun.of("diff", folder.resolve("a"), folder.resolve("a"));
        assertThat(same.out()).contains("0 numbers moved.", "0 settings differ.");
    }
}
