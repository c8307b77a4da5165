package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
        assertThat(Files.readString(out)).contains("Binding energy (eV)", "fitted sum", "Residual / \u03c3");
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

    /** Axis labels have the type size that was asked for, everything else a point less. */
    @Test
    void everyFigureHasTheSameTypeSizesAndEnergiesFallToTheRight() throws IOException {
        List<List<String>> figures = List.of(
                List.of("survey", "--spot", "4"),
                List.of("stack", "--line", "C 1s", "--normalise", "height"),
                List.of("difference", "--line", "C 1s", "--spot", "5", "--spot", "6"),
                List.of("fit", "--spot", "2", "--line", "C 1s"),
                List.of("composition"),
                List.of("charge"),
                List.of("states", "--spot", "4"));
        for (List<String> figure : figures) {
            Path out = folder.resolve(figure.get(0) + ".svg");
            List<String> words = new ArrayList<>(List.of("figure", figure.get(0), HOLDER, "--out", out.toString()));
            words.addAll(figure.subList(1, figure.size()));
            CommandRun run = CommandRun.of(words.toArray());
            assertThat(run.status()).as(run.err()).isZero();
            String svg = Files.readString(out);
            assertThat(found(svg, "font-size: ([0-9.]+)px")).as(figure.get(0)).containsOnly("7", "8");
            if (!svg.contains("Binding energy (eV)")) continue;
            Matcher low = Pattern.compile("<text x='([0-9.]+)'[^>]*>280<|<text x='([0-9.]+)'[^>]*>200<")
                    .matcher(svg);
            Matcher high = Pattern.compile("<text x='([0-9.]+)'[^>]*>290<|<text x='([0-9.]+)'[^>]*>800<")
                    .matcher(svg);
            if (low.find() && high.find()) assertThat(x(high)).isLessThan(x(low));
        }
    }

    private static double x(Matcher matcher) {
        return Double.parseDouble(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }

    private static Set<String> found(String text, String pattern) {
        Set<String> all = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) all.add(matcher.group(1));
        return all;
    }

    @Test
    void drawsADepthProfileOfARunWithASpotALevel() throws IOException {
        List<String> lines = Files.readAllLines(CommandRun.DEMO.resolve("05-pigment-a.txt"));
        int mode = lines.indexOf("NORM");
        for (int level = 0; level < 3; level++) {
            List<String> out = new ArrayList<>();
            for (int i = 0; i < lines.size(); i++) {
                // One experimental variable, and its value in each block. ISO 14976.
                if (i == mode + 3) out.addAll(List.of("1", "etch time", "s"));
                else out.add(lines.get(i));
                if (lines.get(i).equals("XPS")) out.add(Integer.toString(30 * level));
            }
            Files.write(folder.resolve("level" + level + ".txt"), out);
        }
        Path holder = folder.resolve("holder.json");
        String spot = "{\"id\": \"%d\", \"specimen\": \"A\", \"xMm\": 20, \"yMm\": 9,"
                + " \"spectra\": [{\"file\": \"level%d.txt\", \"blocks\": [1, 2, 3, 4]}]}";
        Files.writeString(
                holder,
                "{\"format\": \"spotline-holder-run/1\", \"specimens\": [{\"id\": \"A\", \"sample\": {\"name\": \"film\","
                        + " \"conductivity\": \"insulator\", \"carbon\": \"adventitious\"}, \"mount\": {\"method\":"
                        + " \"cover-slip\", \"electricalState\": \"isolated\"}}], \"spots\": ["
                        + String.format(Locale.ROOT, spot, 1, 2) + ", " + String.format(Locale.ROOT, spot, 2, 0) + ", "
                        + String.format(Locale.ROOT, spot, 3, 1) + "]}");
        Path out = folder.resolve("profile.svg");
        CommandRun run = CommandRun.of("figure", "depth", holder.toString(), "--out", out.toString());
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Files.readString(out)).contains("Etch time (s)", ">60<", ">Ti<", ">O<", ">C<");
        CommandRun none = CommandRun.of("figure", "depth", HOLDER, "--out", out.toString());
        assertThat(none.status()).isEqualTo(2);
        assertThat(none.err()).contains("0 spots whose spectra carry a depth or an etch time");
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
