package spotline.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.report.Examples;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;

class PrintFigureTest {
    private static final PrintStyle STYLE = new PrintStyle(85, 60, 8, 300);

    @Test
    void everyKindOfFileHasTheSizeOfTheColumn() throws IOException {
        PrintFigure figure = survey();
        String svg = new String(figure.bytes(PrintFigure.Kind.SVG, Optional.empty()), StandardCharsets.UTF_8);
        assertThat(svg).contains("width='85.00mm' height='60.00mm'", "F 1s", "Binding energy (eV)");
        BufferedImage png =
                ImageIO.read(new ByteArrayInputStream(figure.bytes(PrintFigure.Kind.PNG, Optional.empty())));
        // 85 mm at 300 dots per inch. Derived: 85 / 25.4 * 300.
        assertThat(png.getWidth()).isEqualTo(1004);
        assertThat(dotsPerMetre(figure.bytes(PrintFigure.Kind.PNG, Optional.empty())))
                .isEqualTo(11811);
        try (PDDocument pdf = Loader.loadPDF(figure.bytes(PrintFigure.Kind.PDF, Optional.empty()))) {
            assertThat((double) pdf.getPage(0).getMediaBox().getWidth()).isCloseTo(85 * 72 / 25.4, within(0.01));
            assertThat(pdf.getPage(0).getResources().getXObjectNames()).isEmpty();
            assertThat(new PDFTextStripper().getText(pdf)).contains("Binding energy (eV)");
        }
    }

    /** Of the chunk pHYs: 300 dots per inch are 300 / 0.0254 a metre. PNG, ISO/IEC 15948. */
    private static int dotsPerMetre(byte[] png) {
        String text = new String(png, StandardCharsets.ISO_8859_1);
        int at = text.indexOf("pHYs");
        assertThat(at).isPositive();
        assertThat(png[at + 12]).as("unit: the metre").isEqualTo((byte) 1);
        return ByteBuffer.wrap(png, at + 4, 4).getInt();
    }

    @Test
    void theSameFigureGivesTheSameBytes() {
        for (PrintFigure.Kind kind : PrintFigure.Kind.values()) {
            assertThat(survey().bytes(kind, Optional.empty())).isEqualTo(survey().bytes(kind, Optional.empty()));
        }
    }

    @Test
    void aScanLessItselfIsNothingAndNormalisingKeepsToItsWord() {
        PrintScan scan = scan();
        assertThat(scan.minus(scan).values()).containsOnly(0);
        double[] byHeight = scan.normalised(PrintScan.Normalise.HEIGHT).values();
        assertThat(java.util.Arrays.stream(byHeight).max()).hasValue(1);
        assertThat(java.util.Arrays.stream(byHeight).min()).hasValue(0);
        PrintScan byArea = scan.normalised(PrintScan.Normalise.AREA);
        double area = 0;
        for (int i = 1; i < byArea.values().length; i++) {
            area += 0.5
                    * (byArea.values()[i] + byArea.values()[i - 1])
                    * (byArea.energies()[i] - byArea.energies()[i - 1]);
        }
        assertThat(area).isCloseTo(1, within(1e-9));
    }

    @Test
    void barsStacksAndChartsAreDrawn() {
        RunResult run = Examples.plain();
        for (PrintFigure figure : List.of(
                PrintComposition.bars(run, STYLE),
                PrintComposition.charge(run, STYLE),
                PrintSpectra.stack(List.of(scan(), scan()), PrintScan.Normalise.HEIGHT, 0.5, STYLE),
                PrintSpectra.difference(scan(), scan(), PrintScan.Normalise.NONE, STYLE))) {
            String svg = new String(figure.bytes(PrintFigure.Kind.SVG, Optional.empty()), StandardCharsets.UTF_8);
            assertThat(svg).contains("DejaVu Sans, sans-serif").contains("<path");
        }
    }

    /** Nearest pair by CIE 1976 Lab under three kinds of colour vision; 20 is far above a just noticeable difference of 2.3. */
    @Test
    void coloursStayApartForAllKindsOfColourVision() {
        // F. Vienot, H. Brettel, J. D. Mollon, Color Res. Appl. 24 (1999) 243, matrices on linear sRGB, from memory.
        double[][][] visions = {
            {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
            {{0.11238, 0.88762, 0}, {0.11238, 0.88762, 0}, {0.00401, -0.00401, 1}},
            {{0.29275, 0.70725, 0}, {0.29275, 0.70725, 0}, {-0.02234, 0.02234, 1}}
        };
        for (double[][] vision : visions) {
            for (int i = 0; i < PrintPalette.COLOURS.size(); i++) {
                for (int j = 0; j < i; j++) {
                    double[] a = lab(PrintPalette.COLOURS.get(i), vision);
                    double[] b = lab(PrintPalette.COLOURS.get(j), vision);
                    assertThat(Math.hypot(Math.hypot(a[0] - b[0], a[1] - b[1]), a[2] - b[2]))
                            .isGreaterThan(40);
                }
            }
        }
    }

    private static double[] lab(Color colour, double[][] vision) {
        double[] linear = new double[3];
        int[] parts = {colour.getRed(), colour.getGreen(), colour.getBlue()};
        for (int i = 0; i < 3; i++) {
            double c = parts[i] / 255.0;
            linear[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
        double[] seen = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) seen[i] += vision[i][k] * linear[k];
            seen[i] = Math.max(0, Math.min(1, seen[i]));
        }
        double x = root((0.4124 * seen[0] + 0.3576 * seen[1] + 0.1805 * seen[2]) / 0.9505);
        double y = root(0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]);
        double z = root((0.0193 * seen[0] + 0.1192 * seen[1] + 0.9505 * seen[2]) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double root(double t) {
        return t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16.0 / 116;
    }

    @Test
    void depthTablesAreReadAndFaultsNamed(@TempDir Path folder) throws IOException, ReadException {
        Path file = folder.resolve("d.csv");
        Files.writeString(file, "etch_time_s,O_at_percent,O_u\n0,60,1\n30,,\n60,40.5,2\n");
        DepthTable table = DepthTable.read(file);
        assertThat(table.axis()).isEqualTo("Etch time (s)");
        assertThat(table.profiles().get(0).atomicPercent()).containsExactly(60.0, Double.NaN, 40.5);
        Files.writeString(file, "depth_nm,O_at_percent\n0,x\n");
        assertThatThrownBy(() -> DepthTable.read(file))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("\"x\"");
    }

    private static PrintFigure survey() {
        SpotResult spot = Examples.plain().spots().get(0);
        LinkedSpectrum survey = spot.spectra().get(0);
        return PrintSpectra.survey(
                PrintScan.of("liner", survey, OptionalDouble.of(-2.55)),
                spot.identification().orElseThrow(),
                -2.55,
                STYLE);
    }

    private static PrintScan scan() {
        SpotResult spot = Examples.plain().spots().get(0);
        return PrintScan.of("C 1s", spot.spectra().get(1), OptionalDouble.empty());
    }
}
