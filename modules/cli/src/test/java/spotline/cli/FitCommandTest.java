package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FitCommandTest {
    private static final Path PIGMENT = CommandRun.DEMO.resolve("05-pigment-a.txt");

    private static final String TITANIUM = """
            { "format": "spotline-fit-model/1",
              "window": { "lowEv": 454, "highEv": 474 },
              "background": { "kind": "tougaard-two", "endpointChannels": 5, "fitted": true },
              "components": [
                { "name": "oxide", "shape": "voigt",
                  "position": { "start": 462.5, "min": 461, "max": 464 },
                  "gaussianFwhm": { "start": 1.0, "min": 0.3, "max": 2.5 },
                  "lorentzianFwhm": { "fixed": 0.25 },
                  "doublet": { "line": "Ti 2p", "lorentzianFwhm": { "start": 0.5, "min": 0.2, "max": 3 } } } ] }
            """;

    @TempDir
    private Path folder;

    private Path model = Path.of("");

    @BeforeEach
    void writeTheModel() throws IOException {
        model = Files.writeString(folder.resolve("model.json"), TITANIUM);
    }

    /** The demonstration's truth: 458.70 eV with a shift of -3.90 eV, so 462.60 eV as measured. */
    @Test
    void jsonTellsWhereTheLineIs() throws IOException {
        CommandRun run = CommandRun.of("fit", PIGMENT, "--block", 3, "--model", model, "--json");
        assertThat(run.status()).as(run.err()).isZero();
        JsonNode json = new ObjectMapper().readTree(run.out());
        JsonNode oxide = json.at("/components/0");
        assertThat(oxide.path("positionEv").asDouble()).isBetween(462.58, 462.64);
        assertThat(oxide.path("positionU").asDouble()).isBetween(0.0003, 0.005);
        assertThat(json.at("/components/1/name").asText()).isEqualTo("oxide 2p1/2");
        assertThat(json.at("/statistics/reducedChiSquare").asDouble()).isBetween(0.7, 1.4);
        assertThat(json.path("block").asInt()).isEqualTo(3);
        assertThat(json.path("sha256").asText()).hasSize(64);
    }

    @Test
    void textAndFigureCome() throws IOException {
        Path figure = folder.resolve("fit.svg");
        CommandRun run = CommandRun.of("fit", PIGMENT, "--block", 3, "--model", model, "--figure", figure);
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("Ti 2p", "oxide 2p1/2", "reduced chi-square", " \u00b1 ");
        assertThat(Files.readString(figure)).startsWith("<?xml").contains("<svg ", "oxide");
    }

    /** Two components free to stand where one is. */
    @Test
    void ofTwoThatAreNotToldApartOnlyTheSumIsTold() throws IOException {
        int from = TITANIUM.indexOf("{ \"name\"");
        int to = TITANIUM.indexOf("\"doublet\"");
        String one = TITANIUM.substring(from, to).strip().replaceAll(",$", "") + "}";
        String both = TITANIUM.substring(0, from) + one + ",\n" + one.replace("\"oxide\"", "\"other\"") + " ] }";
        Path file = Files.writeString(
                folder.resolve("both.json"),
                both.replace("\"lowEv\": 454, \"highEv\": 474", "\"lowEv\": 458, \"highEv\": 466"));
        CommandRun text = CommandRun.of("fit", PIGMENT, "--block", 3, "--model", file);
        assertThat(text.status()).as(text.err()).isZero();
        assertThat(text.out()).contains("caution: The areas of oxide and other").contains("only their sum is measured");
        JsonNode json = new ObjectMapper()
                .readTree(CommandRun.of("fit", PIGMENT, "--block", 3, "--model", file, "--json")
                        .out());
        JsonNode sum = json.at("/onlySumMeasured/0");
        assertThat(sum.path("components")).hasSize(2);
        assertThat(sum.path("area").asDouble() / sum.path("areaU").asDouble()).isGreaterThan(100);
        assertThat(json.path("findings").findValuesAsText("rule")).contains("fit-only-sum");
    }

    /** What a run fitted a scan with by default is in its record, and gives the same peaks by itself. */
    @Test
    void aModelFromTheRecordOfARunGivesThatRunsPeaks() throws IOException {
        CommandRun.of("run", CommandRun.HOLDER, "--out", folder.resolve("out"));
        ObjectMapper mapper = new ObjectMapper();
        JsonNode spots =
                mapper.readTree(folder.resolve("out/result.json").toFile()).path("spots");
        JsonNode models = spots.path(4).at("/treatment/peakFit/models");
        assertThat(models.size()).isEqualTo(2);
        Path file = Files.writeString(
                folder.resolve("c1s.json"), models.path("C 1s").toString());
        JsonNode fit = mapper.readTree(CommandRun.of("fit", PIGMENT, "--block", 2, "--model", file, "--json")
                .out());
        List<Map<String, String>> peaks = TruthCheck.rows(folder.resolve("out/peaks.csv")).stream()
                .filter(row -> row.get("spot").equals("5") && row.get("line").equals("C 1s"))
                .toList();
        assertThat(peaks).hasSameSizeAs(fit.path("components")).hasSizeGreaterThan(2);
        for (int i = 0; i < peaks.size(); i++) {
            JsonNode component = fit.path("components").path(i);
            Map<String, String> peak = peaks.get(i);
            assertThat(component.path("name").asText()).isEqualTo(peak.get("peak"));
            assertThat(component.path("area").asDouble())
                    .isCloseTo(Double.parseDouble(peak.get("area")), Percentage.withPercentage(0.01));
            assertThat(component.path("positionEv").asDouble())
                    .isCloseTo(Double.parseDouble(peak.get("measured_position_ev")), Offset.offset(1e-4));
        }
    }

    @Test
    void monteCarloDoesNotDependOnThreads() {
        Object[] words = {"fit", PIGMENT, "--block", 3, "--model", model, "--json", "--monte-carlo", 6};
        CommandRun one = CommandRun.of(with(words, "--threads", 1));
        CommandRun three = CommandRun.of(with(words, "--threads", 3));
        assertThat(one.status()).isZero();
        assertThat(one.out()).contains("\"draws\" : 6").isEqualTo(three.out());
        assertThat(CommandRun.of(with(words, "--seed", 2)).out()).isNotEqualTo(one.out());
    }

    private static Object[] with(Object[] words, Object... more) {
        Object[] all = java.util.Arrays.copyOf(words, words.length + more.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        return all;
    }

    @Test
    void everyFaultOfTheModelIsALine() throws IOException {
        Path bad = Files.writeString(
                folder.resolve("bad.json"),
                TITANIUM.replace("\"start\": 462.5", "\"start\": 100").replace("Ti 2p", "Ti 1s"));
        CommandRun run = CommandRun.of("fit", PIGMENT, "--block", 3, "--model", bad);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines())
                .hasSize(2)
                .allSatisfy(l -> assertThat(l).startsWith("spotline: " + bad + ":/components/0/"));
    }

    @Test
    void aBlockThatIsNotThereAndAFileThatIsNoneAreToldInOneLine() {
        assertThat(CommandRun.of("fit", PIGMENT, "--block", 9, "--model", model))
                .satisfies(run -> assertThat(run.status()).isEqualTo(2))
                .satisfies(run ->
                        assertThat(run.err().lines()).singleElement().asString().contains("no block 9"));
        assertThat(CommandRun.of("fit", folder.resolve("none.txt"), "--block", 1, "--model", model)
                        .status())
                .isEqualTo(2);
        assertThat(CommandRun.of("fit", PIGMENT, "--block", 3, "--model", folder.resolve("none.json"))
                        .err())
                .contains("no such file");
    }

    /** On a flat stretch a Shirley background taken first does not exist. */
    @Test
    void whatCannotBeTreatedSaysWhyAndEndsInOne() throws IOException {
        String flat = TITANIUM.replace("\"lowEv\": 454, \"highEv\": 474", "\"lowEv\": 451, \"highEv\": 455")
                .replace("\"tougaard-two\"", "\"shirley\"")
                .replace("\"fitted\": true", "\"fitted\": false")
                .replace("\"start\": 462.5, \"min\": 461, \"max\": 464", "\"start\": 453");
        Path file = Files.writeString(folder.resolve("flat.json"), flat);
        CommandRun run = CommandRun.of("fit", PIGMENT, "--block", 3, "--model", file);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).startsWith("spotline: ").contains("Shirley background");
        assertThat(run.out()).isEmpty();
    }
}
