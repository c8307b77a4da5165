package spotline.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrateCommandTest {
    private static final Path STRIP = CommandRun.DEMO.resolve("04-contact-strip.txt");
    /** Kinetic energy at which the demonstration's Ag 3d scan starts: photon energy less 388 eV. */
    private static final String START = "1098.69";

    @TempDir
    private Path folder;

    /** The demonstration's silver scan moved so that its first line (368.21 eV) stands elsewhere: invented metal. */
    private Path metal(String name, double atEv) throws IOException {
        String text = Files.readString(STRIP, UTF_8);
        assertThat(text).contains("\n" + START + "\n");
        String start = String.format(Locale.ROOT, "%.3f", Double.parseDouble(START) + 368.21 - atEv);
        return Files.writeString(folder.resolve(name), text.replace("\n" + START + "\n", "\n" + start + "\n"), UTF_8);
    }

    private List<Path> metals(double gold, double silver, double copper) throws IOException {
        return List.of(metal("gold.txt", gold), metal("silver.txt", silver), metal("copper.txt", copper));
    }

    private static CommandRun calibrate(List<Path> files, Object... more) {
        Object[] words = new Object[1 + files.size() + more.length];
        words[0] = "calibrate";
        for (int i = 0; i < files.size(); i++) words[1 + i] = files.get(i);
        System.arraycopy(more, 0, words, 1 + files.size(), more.length);
        return CommandRun.of(words);
    }

    @Test
    void theScaleOfAWorkedExampleIsWithinTolerance() throws IOException {
        CommandRun run = calibrate(metals(84.01, 368.22, 932.55), "--json");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        JsonNode json = new ObjectMapper().readTree(run.out());
        // Derived, arithmetic in the layout of ISO 15472; the made scans place their lines to 0.005 eV.
        assertThat(json.path("a").asDouble()).isCloseTo(1.41e-4, within(0.1e-4));
        assertThat(json.path("bEv").asDouble()).isCloseTo(-0.062, within(0.008));
        assertThat(json.path("lines")).hasSize(3);
        assertThat(json.path("linearity").path(0).path("linear").asBoolean()).isTrue();
        assertThat(json.path("verdict").asText()).isIn("within", "nearly-used");
    }

    @Test
    void aScaleOutsideItsToleranceEndsWithOne() throws IOException {
        CommandRun run = calibrate(metals(84.01, 368.22, 932.20));
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).contains("outside tolerance", "Cu 2p3/2", "-0.4");
    }

    @Test
    void silverAloneSaysLittle() {
        CommandRun run = CommandRun.of("calibrate", STRIP);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).contains("Ag 3d5/2", "368.2", "undetermined").doesNotContain("Correction");
    }

    @Test
    void recordHistoryAndChartAreKeptAndAHolderRunUsesTheRecord() throws IOException {
        Path record = folder.resolve("calibration.json");
        Path history = folder.resolve("history.csv");
        Path chart = folder.resolve("chart.svg");
        List<Path> metals = metals(84.01, 368.22, 932.55);
        assertThat(calibrate(metals, "--date", "2026-03-01", "--history", history, "--instrument", "lab")
                        .status())
                .isZero();
        CommandRun run = calibrate(
                metals,
                "--record",
                record,
                "--history",
                history,
                "--chart",
                chart,
                "--instrument",
                "lab",
                "--date",
                "2026-03-10");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(Files.readAllLines(history)).hasSize(7);
        assertThat(Files.readString(chart)).startsWith("<svg").contains("2026-03-01", "2026-03-10");
        JsonNode made = new ObjectMapper().readTree(record.toFile());
        assertThat(made.path("nextDue").asText()).isEqualTo("2026-06-08");

        ObjectNode holder = (ObjectNode) new ObjectMapper().readTree(CommandRun.HOLDER.toFile());
        ((ObjectNode) holder.path("instrument")).put("energyCalibration", "calibration.json");
        holder.put("date", "2026-07-17");
        for (JsonNode spot : holder.path("spots")) {
            String file = spot.path("spectra").path(0).path("file").asText();
            Files.copy(CommandRun.DEMO.resolve(file), folder.resolve(file));
        }
        Path plan = folder.resolve("holder.json");
        Files.writeString(plan, holder.toString());
        Path out = folder.resolve("out");
        assertThat(CommandRun.of("run", plan, "--out", out, "--threads", "2").status())
                .isZero();
        assertThat(Files.readString(out.resolve("findings.csv")))
                .contains("energy-scale-corrected", "energy-calibration-overdue", "129 days");
        String silver = TruthCheck.rows(out.resolve("charge.csv")).get(3).get("measured_energy_ev");
        // 368.211 eV (1 + a) + b with the worked example's a and b: 368.201 eV.
        assertThat(Double.parseDouble(silver)).isCloseTo(368.201, within(0.006));
        assertThat(Files.readString(out.resolve("result.json"))).contains("calibration.json");
    }

    /** Silver at a step of 0.11 eV for 0.1 eV is a tenth wider; copper counted for longer gave less a second. */
    @Test
    void aWiderLineAndAChangedIntensityRatioAreSaid() throws IOException {
        Path history = folder.resolve("history.csv");
        List<Path> metals = metals(84.0, 368.2, 932.6);
        assertThat(calibrate(metals, "--date", "2026-03-01", "--history", history)
                        .out())
                .doesNotContain("caution");
        String silver = Files.readString(metals.get(1), UTF_8);
        double start = 1098.69 + 0.01;
        double channel = (1486.69 - 368.2 - start) / 0.1;
        String wider = String.format(Locale.ROOT, "\n%.3f\n0.11\n", 1486.69 - 368.2 - 0.11 * channel);
        Files.writeString(metals.get(1), silver.replaceFirst("\n1098\\.700\n0\\.1\n", wider), UTF_8);
        String copper = Files.readString(metals.get(2), UTF_8);
        String longer = copper.replaceAll("\npulse counting\n0\\.1\n2\n", "\npulse counting\n0.105\n2\n");
        assertThat(longer).isNotEqualTo(copper);
        Files.writeString(metals.get(2), longer, UTF_8);
        CommandRun run = calibrate(metals, "--date", "2026-03-08", "--history", history, "--json");
        JsonNode findings = new ObjectMapper().readTree(run.out()).path("findings");
        assertThat(findings.findValuesAsText("rule")).contains("resolution-changed", "intensity-ratio-changed");
        assertThat(findings.findValuesAsText("message").toString())
                .contains("Ag 3d5/2 is 1.0", "Au 4f7/2 / Cu 2p3/2 is");
    }

    @Test
    void whatIsWrongIsOneLine() throws IOException {
        List<Path> silver = List.of(STRIP);
        for (Object[] more : new Object[][] {
            {"--tolerance", "0.02"},
            {"--interval", "-1"},
            {"--date", "March"},
            {"--record", folder.resolve("no/r.json")}
        }) {
            CommandRun run = calibrate(silver, more);
            assertThat(run.status()).as(run.err()).isEqualTo(2);
            assertThat(run.err().lines()).hasSize(1);
            assertThat(run.err()).startsWith("spotline: ");
        }
        Path history = Files.writeString(folder.resolve("history.csv"), "day,line\n");
        CommandRun run = calibrate(silver, "--history", history);
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("history.csv:1");
        assertThat(Files.readString(history)).isEqualTo("day,line\n");
    }
}
