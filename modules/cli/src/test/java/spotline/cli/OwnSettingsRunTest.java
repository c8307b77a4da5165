package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A spot that is treated unlike its sample's other one, in every table that shows its numbers; what a rerun leaves. */
class OwnSettingsRunTest {
    private static final String TOLD = "Spot 6 has settings of its own: Ti 2p background kind linear";

    @TempDir
    Path folder;

    private Path holder;
    private ObjectNode tree;

    @BeforeEach
    void copyTheDemonstration() throws IOException {
        Path copy = Files.createDirectories(folder.resolve("copy"));
        try (Stream<Path> files = Files.list(CommandRun.DEMO)) {
            for (Path file : files.toList()) {
                if (Files.isRegularFile(file)) Files.copy(file, copy.resolve(file.getFileName()));
            }
        }
        holder = copy.resolve(CommandRun.HOLDER.getFileName());
        tree = (ObjectNode) new ObjectMapper().readTree(holder.toFile());
    }

    private Path run(String out) throws IOException {
        Files.writeString(holder, tree.toString());
        Path to = folder.resolve(out);
        CommandRun run = CommandRun.of("run", holder, "--out", to);
        assertThat(run.err()).isEmpty();
        Files.writeString(to.resolve("console.txt"), run.out());
        return to;
    }

    private void giveSpotSixItsOwn() {
        ((ObjectNode) tree.path("spots").get(5))
                .putObject("treatment")
                .putObject("lines")
                .putObject("Ti 2p")
                .putObject("background")
                .put("kind", "linear");
    }

    @Test
    void everyTableMarksTheSpotAndSaysWhy() throws IOException {
        giveSpotSixItsOwn();
        Path out = run("own");
        assertThat(Files.readAllLines(out.resolve("exceptions.csv")))
                .containsExactly(
                        "sample,spot,setting,own,elsewhere",
                        "titanium dioxide pigment,6,Ti 2p,background kind linear,");
        assertThat(Files.readString(out.resolve("console.txt"))).contains("5 6*", "* " + TOLD);
        assertThat(Files.readString(out.resolve("composition.md"))).contains("| 5, 6\\* |", "\\* Spot 6 has");
        assertThat(Files.readString(out.resolve("composition.tex"))).contains("5{,} 6{*} &", "{*} Spot 6 has");
        String report = Files.readString(out.resolve("report.html"));
        assertThat(report).contains("<td>5, 6*</td>");
        assertThat(report.split(TOLD, -1)).as("at a glance and at the spot").hasSize(3);
        assertThat(Files.readString(out.resolve("samples/05-titanium-dioxide-pigment.html")))
                .contains("Place 6 was evaluated with settings of its own");
        assertThat(Files.readString(out.resolve("samples/04-contact-strip.html")))
                .doesNotContain("settings of its own");
        try (ZipFile workbook = new ZipFile(out.resolve("composition.xlsx").toFile())) {
            assertThat(new String(
                            workbook.getInputStream(workbook.getEntry("xl/workbook.xml"))
                                    .readAllBytes(),
                            java.nio.charset.StandardCharsets.UTF_8))
                    .contains("name=\"exceptions\"");
        }
    }

    @Test
    void nothingIsMarkedWhereAllSpotsAreTreatedAlike() throws IOException {
        Path out = run("alike");
        assertThat(Files.readAllLines(out.resolve("exceptions.csv"))).hasSize(1);
        assertThat(Files.readString(out.resolve("report.html"))).doesNotContain("settings of its own");
        assertThat(Files.readString(out.resolve("composition.md"))).doesNotContain("\\*");
    }

    @Test
    void resultsOfAnotherRecordDifferByIt() throws IOException {
        Path before = run("before");
        ((ObjectNode) tree.path("instrument")).putObject("transmission").put("power", -0.4);
        ((ObjectNode) tree.path("specimens").get(0).path("sample")).put("conductivity", "conductor");
        Path after = run("after");
        CommandRun diff = CommandRun.of("diff", before, after);
        assertThat(diff.out()).contains("at.%", "/holderRun/instrument/transmission", "{\"power\":-0.4}");
        assertThat(diff.out()).contains("/spot 1/declared/conductivity");
    }

    @Test
    void aRerunTakesAwayThePagesOfSamplesThatAreGoneAndNothingElse() throws IOException {
        Path out = run("again");
        Path kept = Files.writeString(out.resolve("samples/01-my-own.csv"), "mine");
        assertThat(out.resolve("samples/01-liner-chip.html")).exists();
        ((ObjectNode) tree.path("specimens").get(0).path("sample")).put("name", "other chip");
        run("again");
        assertThat(out.resolve("samples/01-liner-chip.html")).doesNotExist();
        assertThat(out.resolve("samples/01-liner-chip.pdf")).doesNotExist();
        assertThat(out.resolve("samples/01-other-chip.html")).exists();
        assertThat(kept).hasContent("mine");
    }

    @Test
    void whereNoRunCouldBeTreatedNothingIsWritten() {
        Path out = folder.resolve("none");
        CommandRun run = CommandRun.of("run", folder.resolve("a.json"), folder.resolve("b.json"), "--out", out);
        assertThat(run.status()).isEqualTo(2);
        assertThat(out).doesNotExist();
    }

    @Test
    void aSilenceOfNothingIsTold() throws IOException {
        tree.putArray("silence")
                .addObject()
                .put("rule", "replicates-apart")
                .put("spot", "1")
                .put("reason", "known");
        Path out = run("silence");
        assertThat(Files.readString(out.resolve("findings.csv")))
                .contains("note,silence,")
                .contains(
                        "/silence/0 of the holder run silences replicates-apart at spot 1, and there is no such finding");
    }

    @Test
    void aPlanIsHeldToTheSettingsToo() throws IOException {
        ((ObjectNode) tree.path("spots").get(5)).putObject("treatment").put("colour", "red");
        Files.writeString(holder, tree.toString());
        CommandRun plan = CommandRun.of("plan", "check", holder);
        assertThat(plan.status()).isEqualTo(2);
        assertThat(plan.err()).contains("/spots/5/treatment/colour", "unknown field \"colour\"");
    }

    @Test
    void aProjectIsNoPlan() throws IOException {
        Path project = folder.resolve("bearing.spotline");
        CommandRun.of("run", holder, "--out", folder.resolve("out"), "--project", project);
        for (CommandRun plan : List.of(
                CommandRun.of("plan", "check", project),
                CommandRun.of("plan", "sheet", project, "--out", folder.resolve("s.pdf")))) {
            assertThat(plan.status()).isEqualTo(2);
            assertThat(plan.err()).contains("a project, expected the holder run that it was made from");
        }
    }

    @Test
    void threadsAreOneOrMore() {
        for (String threads : List.of("0", "-1", "many")) {
            CommandRun run =
                    CommandRun.of("run", CommandRun.HOLDER, "--threads", threads, "--out", folder.resolve("x"));
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err()).contains("'" + threads + "' is no number of threads");
        }
    }
}
