package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FigureCommandTest {
    private static final String HOLDER = "../../demo-spectra/footbridge-bearing.json";

    @TempDir
    Path folder;

    @Test
    void drawsAFitOfTheDemonstration() throws IOException {
        Path out = folder.resolve("fit.svg");
        CommandRun run =
                CommandRun.of("figure", "fit", HOLDER, "--spot", "2", "--line", "C 1s", "--out", out.toString());
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Files.readString(out)).contains("Binding energy (eV)", "fitted sum", "R / \u03c3");
    }

    @Test
    void drawsADepthProfileFromATable() throws IOException {
        Path table = folder.resolve("d.csv");
        Files.writeString(table, "depth_nm,O_at_percent,O_u\n0,60,1\n5,20,1\n");
        Path out = folder.resolve("d.png");
        CommandRun run = CommandRun.of("figure", "depth", table.toString(), "--out", out.toString());
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Files.size(out)).isGreaterThan(1000);
    }

    @Test
    void saysWhatIsWrong() {
        CommandRun ending = CommandRun.of("figure", "charge", HOLDER, "--out", "x.bmp");
        assertThat(ending.status()).isEqualTo(2);
        assertThat(ending.err()).contains(".svg, .pdf or .png");
        CommandRun width = CommandRun.of("figure", "depth", "d.csv", "--out", "x.svg", "--width", "5");
        assertThat(width.status()).isEqualTo(2);
    }
}
