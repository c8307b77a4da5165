package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.run.RunResult;

class ResultFilesTest {
    @TempDir
    Path folder;

    private static String text(RunResult result, String file) {
        byte[] bytes = ResultFiles.contents(result).get(file);
        return new String(java.util.Objects.requireNonNull(bytes), StandardCharsets.UTF_8);
    }

    /** The tables are a promise to scripts: any change of a byte is a decision. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "composition.csv",
                "composition-variants.csv",
                "composition-table.csv",
                "exceptions.csv",
                "states.csv",
                "charge.csv",
                "energies.csv",
                "elements.csv",
                "intensities.csv",
                "peaks.csv",
                "findings.csv",
                "result.json"
            })
    void filesAreAsFrozen(String file) throws IOException {
        String actual = text(ExampleRun.plain(), file);
        try (var in = getClass().getResourceAsStream("/spotline/report/golden/" + file)) {
            assertThat(in).as("frozen %s", file).isNotNull();
            assertThat(actual).isEqualTo(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void theSameResultGivesTheSameBytes() {
        Map<String, byte[]> first = ResultFiles.contents(ExampleRun.plain());
        Map<String, byte[]> second = ResultFiles.contents(ExampleRun.plain());
        assertThat(second.keySet()).containsExactlyElementsOf(first.keySet());
        first.forEach((name, bytes) -> assertThat(second.get(name)).as(name).isEqualTo(bytes));
    }

    @Test
    void writesItsFilesAndLeavesOthersAlone() throws IOException {
        Path target = folder.resolve("deep/er");
        Files.createDirectories(target);
        Files.writeString(target.resolve("notes.txt"), "mine");
        Files.writeString(target.resolve("composition.csv"), "of an earlier run");
        ResultFiles.write(ExampleRun.plain(), target);
        assertThat(target.resolve("notes.txt")).hasContent("mine");
        assertThat(Files.readString(target.resolve("composition.csv"))).startsWith("sample,spot,element,");
        try (Stream<Path> files = Files.list(target)) {
            assertThat(files.map(f -> f.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "notes.txt",
                            "composition.csv",
                            "composition-variants.csv",
                            "composition-table.csv",
                            "exceptions.csv",
                            "states.csv",
                            "charge.csv",
                            "energies.csv",
                            "elements.csv",
                            "intensities.csv",
                            "peaks.csv",
                            "findings.csv",
                            "checks.csv",
                            "result.json",
                            "report.html",
                            "composition.md",
                            "composition.tex",
                            "composition.xlsx",
                            "report.pdf",
                            "samples");
        }
    }

    @Test
    void namesFromTheInputNeverBecomePaths() throws IOException {
        Path target = folder.resolve("out");
        ResultFiles.write(ExampleRun.named("../../title", "../../../up/sample", "../up.txt"), target);
        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(files.filter(Files::isRegularFile))
                    .allMatch(f -> f.getParent().equals(target) || f.getParent().equals(target.resolve("samples")));
        }
        try (Stream<Path> files = Files.list(target.resolve("samples"))) {
            assertThat(files.map(f -> f.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "01-up-sample.csv",
                            "01-up-sample.html",
                            "01-up-sample.pdf",
                            "02-contact-strip.csv",
                            "02-contact-strip.html",
                            "02-contact-strip.pdf");
        }
    }
}
