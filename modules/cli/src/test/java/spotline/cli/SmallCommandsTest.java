package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallCommandsTest {
    private static final Path LINER = CommandRun.DEMO.resolve("01-liner-chip.txt");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"run", "inspect", "lookup", "plan", "fit", "calibrate", "convert"})
    void everyCommandHelpsWithAnExample(String command) {
        CommandRun run = CommandRun.of(command, "--help");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("Usage: spotline " + command, "Example: spotline " + command);
    }

    @Test
    void wrongWordsAreOneLine() {
        for (String[] words : new String[][] {{}, {"treat"}, {"run"}, {"run", "a.json"}, {"run", "--oops"}}) {
            CommandRun run = CommandRun.of((Object[]) words);
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err().lines()).hasSize(1);
            assertThat(run.err()).startsWith("spotline: ");
        }
    }

    @Test
    void inspectShowsARowABlock() {
        CommandRun run = CommandRun.of("inspect", LINER);
        assertThat(run.status()).isZero();
        assertThat(run.out().lines().filter(line -> line.contains("C 1s"))).hasSize(2);
        assertThat(run.out()).contains("1486.69", "kinetic", "5 blocks");
    }

    @Test
    void inspectAsJsonHoldsEveryField() throws IOException {
        CommandRun run = CommandRun.of("inspect", "--json", LINER);
        JsonNode file = new ObjectMapper().readTree(run.out()).path(0);
        assertThat(file.path("blocks")).hasSize(5);
        JsonNode survey = file.path("blocks").path(0);
        assertThat(survey.path("photonEnergyEv").asDouble()).isEqualTo(1486.69);
        assertThat(survey.path("ordinates").path(0).path("kind").asText()).isEqualTo("intensity");
        assertThat(survey.path("ordinates").path(1).path("kind").asText()).isEqualTo("transmission");
        assertThat(survey.path("header").size()).isGreaterThan(10);
        assertThat(file.path("sha256").asText()).hasSize(64);
    }

    @Test
    void inspectGoesOnAfterAFileItCannotRead() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.txt"), "\u0000\u0001");
        CommandRun both = CommandRun.of("inspect", bad, LINER);
        assertThat(both.status()).isEqualTo(1);
        assertThat(both.err().lines()).hasSize(1);
        assertThat(both.out()).contains("5 blocks");
        assertThat(CommandRun.of("inspect", bad).status()).isEqualTo(2);
    }

    @Test
    void inspectSaysWhatATextFileLeavesUndeclared() throws IOException {
        Path text = Files.writeString(folder.resolve("columns.csv"), "280.0,100\n280.1,120\n280.2,90\n");
        CommandRun run = CommandRun.of("inspect", text);
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("2 columns, 3 rows", "280.2", "scale (binding or kinetic)", "photon energy");
        JsonNode json = new ObjectMapper()
                .readTree(CommandRun.of("inspect", "--json", text).out())
                .path(0);
        assertThat(json.path("ranges").path(1).path("greatest").asDouble()).isEqualTo(120);
        assertThat(json.path("undeclared")).isNotEmpty();
    }

    @Test
    void lookupPrintsALineAndItsSources() {
        CommandRun run = CommandRun.of("lookup", "F 1s", "--photon-energy", "Al Ka");
        assertThat(run.status()).isZero();
        // Scofield 1976: F 1s 4.43 relative to C 1s at Al K-alpha, from memory.
        assertThat(run.out()).containsPattern("cross section +4\\.4[23]").contains("EPDL2017");
    }

    @Test
    void lookupPrintsAnElement() {
        CommandRun run = CommandRun.of("lookup", "Ag");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("silver", "Ag 3d", "main line", "M4N45N45");
    }

    @Test
    void lookupRefusesWhatIsNoElementAndNoLine() {
        CommandRun run = CommandRun.of("lookup", "Xx 9z");
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("\"Xx 9z\" is neither an element nor a line");
        assertThat(CommandRun.of("lookup", "C", "--photon-energy", "bright").status())
                .isEqualTo(2);
    }

    @Test
    void aCleanPlanHasNoFindingsAndAnOverhangStops() throws IOException {
        CommandRun clean = CommandRun.of("plan", "check", CommandRun.HOLDER);
        assertThat(clean.status()).isZero();
        assertThat(clean.out()).isEqualTo("severity,rule,spot,sample,spectrum,message\n");
        // 12 x 8 mm centred 5 mm from the edge, long side outwards: 1.0 mm over; closed form.
        Path plan = Files.writeString(folder.resolve("plan.json"), """
                {"format": "spotline-holder-run/1", "holder": {"template": "flat-bar"},
                 "spots": [{"id": "1", "xMm": 5, "yMm": 9,
                   "sample": {"name": "plate", "conductivity": "conductor"},
                   "mount": {"method": "metal-clip", "electricalState": "grounded",
                             "outlineMm": {"width": 12, "height": 8}}}]}
                """);
        CommandRun over = CommandRun.of("plan", "check", plan);
        assertThat(over.status()).isEqualTo(1);
        assertThat(over.out()).contains("stop,", "overhangs the holder by 1.0 mm", "caution,local-risk-review");
        CommandRun json = CommandRun.of("plan", "check", "--json", plan);
        assertThat(json.status()).isEqualTo(1);
        assertThat(json.out()).contains("spotline-plan-check/1", "\"state\" : \"passed\"", "\"state\" : \"fired\"");
        CommandRun absent = CommandRun.of("plan", "check", folder.resolve("absent.json"));
        assertThat(absent.status()).isEqualTo(2);
        assertThat(absent.err())
                .startsWith("spotline: ")
                .contains("no such file")
                .hasLineCount(1);
    }

    @Test
    void theLoadingSheetIsAPdf() throws IOException {
        Path sheet = folder.resolve("sheet.pdf");
        CommandRun run = CommandRun.of("plan", "sheet", CommandRun.HOLDER, "--out", sheet, "--paper", "letter");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(Files.readAllBytes(sheet)).startsWith("%PDF-".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        assertThat(CommandRun.of("plan", "sheet", CommandRun.HOLDER, "--out", folder.resolve("no/such.pdf"))
                        .status())
                .isEqualTo(2);
    }

    @Test
    void theLoadingSheetIsDrawnAsSvgAPageAFileAndInNoOtherKind() throws IOException {
        CommandRun run = CommandRun.of("plan", "sheet", CommandRun.HOLDER, "--out", folder.resolve("sheet.svg"));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        try (java.util.stream.Stream<Path> files = Files.list(folder)) {
            List<Path> pages = files.toList();
            assertThat(pages).isNotEmpty();
            for (Path page : pages) {
                assertThat(page.getFileName().toString()).matches("sheet(-[0-9]+)?\\.svg");
                assertThat(Files.readString(page)).contains("<svg");
            }
        }
        CommandRun other = CommandRun.of("plan", "sheet", CommandRun.HOLDER, "--out", folder.resolve("sheet.txt"));
        assertThat(other.status()).isEqualTo(2);
        assertThat(other.err()).contains("sheet.txt").contains(".pdf or .svg");
        assertThat(folder.resolve("sheet.txt")).doesNotExist();
    }
}
