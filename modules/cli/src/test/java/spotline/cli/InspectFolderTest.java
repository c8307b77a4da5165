package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InspectFolderTest {
    private static final Path LINER = CommandRun.DEMO.resolve("01-liner-chip.txt");

    @TempDir
    private Path folder;

    @Test
    void aFolderIsARowAFileSortedAndLookedThrough() throws IOException {
        Path below = Files.createDirectories(folder.resolve("b").resolve("deep"));
        Files.copy(LINER, below.resolve("liner.txt"));
        Files.writeString(folder.resolve("a.csv"), "280.0,100\n280.1,120\n280.2,90\n");
        Files.writeString(folder.resolve("c.md"), "# Notes\n");
        CommandRun run = CommandRun.of("inspect", folder);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        List<String> lines = run.out().lines().toList();
        assertThat(lines).hasSize(4);
        assertThat(lines.get(1)).startsWith(folder.resolve("a.csv").toString()).contains("2 columns, 3 rows");
        assertThat(lines.get(2)).contains("liner.txt", "iso14976", "1486.69", "C 1s", "  5  ");
        assertThat(lines.get(3)).contains("c.md", "no spectra");
    }

    @Test
    void theSameDataUnderAnotherNameIsTold() throws IOException {
        Path first = Files.copy(LINER, folder.resolve("a.txt"));
        String renamed = Files.readString(LINER, StandardCharsets.UTF_8).replace("\r", "");
        String sample = new ObjectMapper()
                .readTree(CommandRun.of("inspect", "--json", LINER).out())
                .at("/0/blocks/0/sample")
                .asText();
        Path second =
                Files.writeString(folder.resolve("b.txt"), renamed.replace("\n" + sample + "\n", "\nanother sample\n"));
        Path columns = Files.writeString(folder.resolve("c.txt"), "# one\n1 2\n2 3\n");
        Path same = Files.writeString(folder.resolve("d.txt"), "# other\n1;2.0\n2;3.0\n");
        CommandRun run = CommandRun.of("inspect", folder);
        assertThat(run.out().lines().filter(line -> line.startsWith("note: ")))
                .contains(
                        "note: " + second + ", block 1 holds the same data as " + first + ", block 1",
                        "note: " + same + " holds the same data as " + columns)
                .hasSize(6);
        JsonNode json = new ObjectMapper()
                .readTree(CommandRun.of("inspect", "--json", first, second).out());
        assertThat(json.path(0).path("sameData")).isEmpty();
        assertThat(json.path(1).path("sameData")).hasSize(5);
        assertThat(json.path(1).at("/sameData/4/earlier").asText()).isEqualTo(first + ", block 5");
    }

    @Test
    void aDamagedFileInAFolderIsToldAndTheOthersGoOn() throws IOException {
        String text = Files.readString(LINER, StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("bad.txt"), text.substring(0, 300));
        Files.copy(LINER, folder.resolve("good.txt"));
        CommandRun run = CommandRun.of("inspect", folder);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.out()).contains("not read").contains("good.txt");
    }

    @Test
    void undeclaredColumnsAreDescribedAndSuggested() throws IOException {
        Path text = Files.writeString(
                folder.resolve("scan.txt"),
                "Binding energy; counts per second; transmission\nphoton energy 1486,6 eV, pass energy 20 eV\n"
                        + "dwell 0,1 s, 4 scans: 4\n290,0;12,5;0,9\n289,9;15,25;0,9\n289,8;17,5;0,9\n");
        CommandRun run = CommandRun.of("inspect", text);
        assertThat(run.status()).isZero();
        assertThat(run.out())
                .contains(
                        "3 columns, 3 rows from line 4, parted by semicolons, decimal comma",
                        "suggested, to be checked: energy 1, because it runs one way in equal steps, from 290 to 289.8",
                        "suggested, to be checked: scale \"binding\"",
                        "\"columns\": { \"energy\": 1, \"ordinate\": 2, \"scale\": \"binding\", \"photonEnergyEv\": 1486.6,"
                                + " \"ordinateKind\": \"counts-per-second\", \"dwellSeconds\": 0.1, \"scans\": 4,"
                                + " \"passEnergyEv\": 20 }");
        JsonNode json = new ObjectMapper()
                .readTree(CommandRun.of("inspect", "--json", text).out())
                .path(0);
        assertThat(json.path("separator").asText()).isEqualTo("semicolons");
        assertThat(json.path("decimalSign").asText()).isEqualTo(",");
        assertThat(json.path("suggestions")).hasSize(8);
    }

    @Test
    void whatTheNumbersDoNotSayStaysAQuestion() throws IOException {
        Path text = Files.writeString(folder.resolve("scan.txt"), "1\t5\n2\t9\n3\t7\n");
        assertThat(CommandRun.of("inspect", text).out())
                .contains("parted by tabs, decimal point")
                .contains("\"columns\": { \"energy\": 1, \"ordinate\": 2, \"scale\": ?, \"photonEnergyEv\": ?,"
                        + " \"ordinateKind\": \"counts\" }");
    }

    @Test
    void aRunGuessesNothing() throws IOException {
        Files.writeString(folder.resolve("scan.txt"), "Binding energy; counts\n290;12\n289;15\n288;17\n");
        Path run = Files.writeString(folder.resolve("run.json"), """
                {"format": "spotline-holder-run/1", "holder": {"template": "flat-bar"},
                 "instrument": {"excitation": {"source": "Al Ka"}},
                 "spots": [{"id": "1", "xMm": 20, "yMm": 10, "sample": {"name": "a", "conductivity": "conductor"},
                   "mount": {"method": "metal-clip", "electricalState": "grounded",
                             "outlineMm": {"width": 5, "height": 5}},
                   "spectra": [{"file": "scan.txt"}]}]}
                """);
        Path out = folder.resolve("out");
        CommandRun result = CommandRun.of("run", run, "--out", out);
        assertThat(result.status()).isEqualTo(1);
        assertThat(Files.readString(out.resolve("findings.csv"))).contains("columns of numbers that nobody declared");
        assertThat(Files.readAllLines(out.resolve("composition.csv"))).hasSize(1);
    }
}
