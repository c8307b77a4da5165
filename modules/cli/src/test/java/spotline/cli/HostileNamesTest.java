package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.formats.FileNames;

/** Files whose names are options, formulas, markup or letters that the locale lacks. */
class HostileNamesTest {
    private static final Path LINER = CommandRun.DEMO.resolve("01-liner-chip.txt");

    private static final List<String> NAMES = List.of(
            "-out.txt",
            "--json",
            "=cmd|'1'!A1.txt",
            "a = b.txt",
            " two  spaces .txt",
            "@here.txt",
            "\u05e9\u05dc\u05d5\u05dd.txt",
            "\u202egnp.txt",
            "\ud83e\uddea\ud83d\udcc8.txt",
            "<script>alert(1)&amp;.txt",
            "${user.home}%s.txt",
            "tab\tand\nline.txt");

    @TempDir
    private Path folder;

    private Path put(String name) throws IOException {
        return Files.copy(LINER, FileNames.resolve(folder, name));
    }

    @Test
    void areReadAndWritten() throws IOException {
        for (String name : NAMES) {
            Path in = put(name);
            CommandRun seen = CommandRun.of("inspect", in);
            assertThat(seen.err()).isEmpty();
            assertThat(seen.out()).contains("5 blocks").doesNotContain("\u202e");
            Path out = FileNames.resolve(folder, name + ".csv");
            CommandRun converted = CommandRun.of("convert", in, "--out", out, "--to", "csv");
            assertThat(converted.status()).as(name).isZero();
            assertThat(converted.out().lines()).hasSize(1);
            assertThat(out).isNotEmptyFile();
            JsonNode json = new ObjectMapper()
                    .readTree(CommandRun.of("inspect", "--json", in).out());
            assertThat(json.at("/0/file").asText()).isEqualTo(in.toString());
        }
        CommandRun all = CommandRun.of("inspect", folder);
        assertThat(all.status()).isZero();
        assertThat(all.out().lines().filter(line -> line.contains("iso14976"))).hasSize(NAMES.size());
    }

    @Test
    void aMissingOneIsOneLine() {
        for (String name : NAMES) {
            CommandRun run = CommandRun.of("inspect", folder.resolve(name));
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err().lines()).as(name).hasSize(1);
            assertThat(run.err()).contains("no such file").doesNotContain("\u202e");
        }
    }

    @Test
    void aLeadingDashNeedsTheTwoDashesAndNothingElse() throws Exception {
        put("-out.txt");
        put("--json");
        Finished read = spotline(Map.of(), "inspect", "--", "-out.txt", "--json");
        assertThat(read.status).isZero();
        assertThat(read.out).contains("-out.txt: iso14976, 5 blocks", "--json: iso14976, 5 blocks");
        Finished option = spotline(Map.of(), "inspect", "-out.txt");
        assertThat(option.status).isEqualTo(2);
        assertThat(option.err.lines()).hasSize(1);
    }

    /** A POSIX locale has ASCII alone; the run time of Java 17 then loses all other letters of the command line. */
    @Test
    void underAPosixLocaleTheyAreReadAndWrittenAllTheSame() throws Exception {
        Map<String, String> posix = Map.of("LC_ALL", "C", "LANG", "C");
        List<String> words = new ArrayList<>(List.of("inspect", "--"));
        for (String name : NAMES) {
            put(name);
            words.add(name);
        }
        Finished seen = spotline(posix, words.toArray(String[]::new));
        assertThat(seen.err).isEmpty();
        assertThat(seen.status).isZero();
        assertThat(seen.out.lines().filter(line -> line.endsWith(": iso14976, 5 blocks")))
                .hasSize(NAMES.size())
                .contains("\ud83e\uddea\ud83d\udcc8.txt: iso14976, 5 blocks");
        Finished written = spotline(
                posix, "convert", "\u05e9\u05dc\u05d5\u05dd.txt", "--out", "\ud83d\udcc8 \u00e4.csv", "--to", "csv");
        assertThat(written.err).isEmpty();
        assertThat(written.out).isEqualTo("\ud83d\udcc8 \u00e4.csv: 5 blocks\n");
        assertThat(FileNames.resolve(folder, "\ud83d\udcc8 \u00e4.csv")).isNotEmptyFile();
        Finished all = spotline(posix, "inspect", ".");
        assertThat(all.err).isEmpty();
        assertThat(all.out).contains("\u05e9\u05dc\u05d5\u05dd.txt");
        Finished missing = spotline(posix, "inspect", "\u00e4.txt");
        assertThat(missing.err).isEqualTo("spotline: \u00e4.txt: no such file, expected a readable spectrum file\n");
        assertThat(missing.status).isEqualTo(2);
    }

    @Test
    void aHolderRunNamesThemUnderAPosixLocale() throws Exception {
        put("\ud83e\uddea = <b>\u00e4.txt");
        Files.writeString(FileNames.resolve(folder, "\u05e8\u05d9\u05e6\u05d4.json"), """
                {"format": "spotline-holder-run/1", "holder": {"template": "flat-bar"},
                 "instrument": {"excitation": {"source": "Al Ka", "photonEnergyEv": 1486.69}},
                 "spots": [{"id": "1", "xMm": 20, "yMm": 10, "sample": {"name": "a", "conductivity": "conductor"},
                   "mount": {"method": "metal-clip", "electricalState": "grounded",
                             "outlineMm": {"width": 5, "height": 5}},
                   "spectra": [{"file": "\ud83e\uddea = <b>\u00e4.txt"}]}]}
                """);
        Finished run = spotline(
                Map.of("LC_ALL", "C", "LANG", "C"), "run", "\u05e8\u05d9\u05e6\u05d4.json", "--out", "\u00fcber <i>");
        assertThat(run.err).isEmpty();
        assertThat(run.status).isLessThanOrEqualTo(1);
        Path out = FileNames.resolve(folder, "\u00fcber <i>");
        assertThat(Files.readString(out.resolve("findings.csv"))).doesNotContain("no such file", "not a file name");
        assertThat(Files.readAllLines(out.resolve("composition.csv"))).hasSizeGreaterThan(1);
        assertThat(Files.readString(out.resolve("report.html"))).doesNotContain("= <b>");
    }

    private record Finished(int status, String out, String err) {}

    /** The command in a process of its own, in the folder. */
    private Finished spotline(Map<String, String> environment, String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "spotline.cli.Main"));
        command.addAll(List.of(words));
        Path out = Files.createTempFile("spotline-test", ".out");
        Path err = Files.createTempFile("spotline-test", ".err");
        try {
            ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
            builder.environment().putAll(environment);
            Process process = builder.redirectOutput(out.toFile())
                    .redirectError(err.toFile())
                    .start();
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
            return new Finished(
                    process.exitValue(),
                    Files.readString(out, StandardCharsets.UTF_8),
                    Files.readString(err, StandardCharsets.UTF_8));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }
}
