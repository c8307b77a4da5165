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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConvertCommandTest {
    private static final Path LINER = CommandRun.DEMO.resolve("01-liner-chip.txt");

    @TempDir
    private Path folder;

    private static JsonNode inspect(Path file) throws IOException {
        CommandRun run = CommandRun.of("inspect", "--json", file);
        assertThat(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out()).path(0);
    }

    @Test
    void aFileOfTheStandardKeepsEveryField() throws IOException {
        Path out = folder.resolve("canonical.vms");
        CommandRun run = CommandRun.of("convert", LINER, "--out", out, "--to", "iso14976");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(run.out()).startsWith(out + ": 5 blocks\n");
        assertThat(inspect(out).path("blocks")).isEqualTo(inspect(LINER).path("blocks"));
        Path again = folder.resolve("again.vms");
        assertThat(CommandRun.of("convert", out, "--out", again, "--to", "ISO14976")
                        .status())
                .isZero();
        assertThat(again).hasSameBinaryContentAs(out);
        try (var left = Files.list(folder)) {
            assertThat(left).containsExactlyInAnyOrder(out, again);
        }
    }

    @Test
    void aTableHasARowAValue() throws IOException {
        Path out = folder.resolve("liner.csv");
        assertThat(CommandRun.of("convert", LINER, "--out", out, "--to", "csv").status())
                .isZero();
        List<String> lines = Files.readAllLines(out, StandardCharsets.UTF_8);
        assertThat(lines.get(0))
                .startsWith("block,name,sample,region,photon_energy_ev,spectrum,channel,axis,axis_unit,axis_value,"
                        + "ordinate,ordinate_unit,value");
        long values = 0;
        for (JsonNode block : inspect(LINER).path("blocks")) {
            values += block.path("axis").path("channels").asLong()
                    * block.path("ordinates").size();
        }
        assertThat(lines).hasSize((int) values + 1);
        // Counted from the end, for a quoted name may hold commas.
        int behind = lines.get(0).split(",").length - 10;
        double sum = lines.stream()
                .skip(1)
                .map(line -> line.split(",", -1))
                .filter(cells -> cells[0].equals("2") && cells[cells.length - behind].equals("intensity"))
                .mapToDouble(cells -> Double.parseDouble(cells[cells.length - behind + 2]))
                .sum();
        assertThat(sum).isEqualTo(inspect(LINER).at("/blocks/1/ordinates/0/sum").asDouble());
    }

    @Test
    void aTextFileIsConvertedByWhatIsDeclaredAndNothingElse() throws IOException {
        Path text = Files.writeString(folder.resolve("columns.txt"), "B.E.;n\n290,0;12\n289,9;15\n289,8;17\n");
        Path out = folder.resolve("columns.vms");
        CommandRun guess = CommandRun.of("convert", text, "--out", out, "--to", "iso14976");
        assertThat(guess.status()).isEqualTo(2);
        assertThat(guess.err()).contains("columns of numbers that nobody declared");
        CommandRun half = CommandRun.of("convert", text, "--out", out, "--to", "iso14976", "--energy-column", 1);
        assertThat(half.status()).isEqualTo(2);
        assertThat(half.err())
                .contains("columns declared without --ordinate-column, --scale, --photon-energy")
                .doesNotContain("\tat ");
        assertThat(out).doesNotExist();
        String declared = "--energy-column=1 --ordinate-column=2 --scale=binding --photon-energy=1486.6"
                + " --ordinate-kind=counts --dwell-seconds=0.1 --scans=4 --pass-energy=20";
        List<Object> words = new java.util.ArrayList<>(List.of("convert", text, "--out", out, "--to", "iso14976"));
        words.addAll(List.of(declared.split(" ")));
        CommandRun run = CommandRun.of(words.toArray());
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        JsonNode block = inspect(out).at("/blocks/0");
        assertThat(block.path("photonEnergyEv").asDouble()).isEqualTo(1486.6);
        assertThat(block.path("passEnergyEv").asDouble()).isEqualTo(20);
        assertThat(block.path("scans").asDouble()).isEqualTo(4);
        assertThat(block.at("/axis/scale").asText()).isEqualTo("binding");
        assertThat(block.at("/axis/first").asDouble()).isEqualTo(290);
        assertThat(block.at("/ordinates/0/countsPerUnit").asDouble()).isEqualTo(1);
        assertThat(block.at("/ordinates/0/sum").asDouble()).isEqualTo(44);
        assertThat(block.path("comments").toString()).contains("B.E.;n");
    }

    @Test
    void irregularEnergiesBecomeAnIrregularScan() throws IOException {
        Path text = Files.writeString(folder.resolve("columns.txt"), "1 5\n2 6\n4 7\n");
        Path out = folder.resolve("out.vms");
        CommandRun run = CommandRun.of(
                "convert",
                text,
                "--out",
                out,
                "--to",
                "iso14976",
                "--energy-column=1",
                "--ordinate-column=2",
                "--scale=kinetic",
                "--photon-energy=1486.6");
        assertThat(run.err()).isEmpty();
        JsonNode block = inspect(out).at("/blocks/0");
        assertThat(block.at("/axis/scale").asText()).isEqualTo("kinetic");
        assertThat(block.at("/axis/last").asDouble()).isEqualTo(4);
        assertThat(block.at("/ordinates/0/countsPerUnit").isNull()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"jcamp", "nexus"})
    void kindsThatAreNotWrittenYetAreSaidSo(String kind) {
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("convert", LINER, "--out", out, "--to", kind);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("the kind " + kind + ", which is not written yet, expected iso14976 or csv");
        assertThat(out).doesNotExist();
    }

    @Test
    void theFileReadIsNeverWritten() throws IOException {
        Path copy = Files.copy(LINER, folder.resolve("copy.txt"));
        byte[] before = Files.readAllBytes(copy);
        Path link = Files.createSymbolicLink(folder.resolve("link.txt"), copy);
        Path hard = Files.createLink(folder.resolve("hard.txt"), copy);
        for (Path out : List.of(copy, link, hard, folder.resolve(".").resolve("copy.txt"))) {
            CommandRun run = CommandRun.of("convert", copy, "--out", out, "--to", "csv");
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err()).contains("the file that is read, expected another file");
        }
        assertThat(copy).hasBinaryContent(before);
        assertThat(CommandRun.of("convert", copy, "--out", folder, "--to", "csv")
                        .status())
                .isEqualTo(2);
        assertThat(CommandRun.of("convert", copy, "--out", folder.resolve("no/x.csv"), "--to", "csv")
                        .status())
                .isEqualTo(2);
        assertThat(CommandRun.of("convert", copy, "--out", folder.resolve("x"), "--to", "pages")
                        .status())
                .isEqualTo(2);
    }

    @Test
    void whatIsLostIsToldAndTheRestIsWritten() throws IOException {
        byte[] whole = Files.readAllBytes(LINER);
        Path cut = Files.write(folder.resolve("cut.txt"), java.util.Arrays.copyOf(whole, whole.length - 2000));
        Path out = folder.resolve("cut.csv");
        CommandRun run = CommandRun.of("convert", cut, "--out", out, "--to", "csv");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).contains("4 blocks", "caution: ", "block 5 is lost");
        assertThat(out).isNotEmptyFile();
    }

    @Test
    void aTextOfAFileIsNoFormulaInATable() throws IOException {
        String text = Files.readString(LINER, StandardCharsets.UTF_8);
        String sample = inspect(LINER).at("/blocks/0/sample").asText();
        Path evil = Files.writeString(folder.resolve("evil.txt"), text.replace("\n" + sample + "\n", "\n=1+1,\"<b>\n"));
        Path out = folder.resolve("evil.csv");
        assertThat(CommandRun.of("convert", evil, "--out", out, "--to", "csv").status())
                .isZero();
        assertThat(Files.readAllLines(out, StandardCharsets.UTF_8).get(1)).contains(",\"'=1+1,\"\"<b>\",");
    }
}
