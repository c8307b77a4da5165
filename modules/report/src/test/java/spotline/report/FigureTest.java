package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import spotline.analysis.identify.Identification;
import spotline.report.ExampleSpectra.Peak;
import spotline.report.figure.Figure;
import spotline.report.figure.NarrowScanFigure;
import spotline.report.figure.SurveyFigure;
import spotline.run.LinkedSpectrum;
import spotline.spectra.BindingScan;

class FigureTest {
    private static final BindingScan SCAN =
            ExampleSpectra.scan("s#1", 280, 300, 0.1, 600, true, List.of(new Peak(284.8, 5000, 1.3)));
    private static final LinkedSpectrum SPECTRUM = ExampleSpectra.linked(SCAN, "s", 1, "C 1s", false);

    @Test
    void bindingEnergyRunsFromHighToLow() {
        String svg = NarrowScanFigure.of(SPECTRUM, List.of(), "n").svg();
        assertThat(tickX(svg, "294")).isLessThan(tickX(svg, "286"));
        assertThat(svg).contains("Binding energy (eV), as measured");
    }

    private static double tickX(String svg, String label) {
        Matcher matcher =
                Pattern.compile("<text x='([0-9.]+)'[^>]*>" + label + "</text>").matcher(svg);
        assertThat(matcher.find()).as("tick %s", label).isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    @Test
    void theSameSpectrumGivesTheSameDrawingAndItsNameBeginsEveryIdentifier() {
        Figure figure = NarrowScanFigure.of(SPECTRUM, List.of(), "n7-");
        assertThat(NarrowScanFigure.of(SPECTRUM, List.of(), "n7-").svg()).isEqualTo(figure.svg());
        Matcher ids = Pattern.compile(" id='([^']+)'").matcher(figure.svg());
        int found = 0;
        while (ids.find()) {
            assertThat(ids.group(1)).startsWith("n7-");
            found++;
        }
        assertThat(found).isPositive();
    }

    @Test
    void coordinatesHaveTwoDecimalsAtMost() {
        String svg = NarrowScanFigure.of(SPECTRUM, List.of(), "n").svg();
        Matcher path = Pattern.compile(" d='([^']+)'").matcher(svg);
        assertThat(path.find()).isTrue();
        do {
            assertThat(path.group(1)).doesNotContainPattern("\\.\\d{3}");
        } while (path.find());
    }

    @Test
    void aFlatOrEmptySpectrumIsDrawnToo() {
        double[] energy = {1, 2, 3};
        for (double level : new double[] {0, 5}) {
            BindingScan flat = new BindingScan(
                    "flat",
                    1486.6,
                    energy,
                    new double[] {level, level, level},
                    false,
                    java.util.OptionalDouble.empty(),
                    java.util.OptionalDouble.empty());
            String svg = NarrowScanFigure.of(ExampleSpectra.linked(flat, "f", 1, "x", false), List.of(), "n")
                    .svg();
            assertThat(svg).contains("<path").doesNotContain("NaN").doesNotContain("xmlns:");
            Identification nothing = new Identification(List.of(), 0, List.of());
            String survey = SurveyFigure.of(ExampleSpectra.linked(flat, "f", 1, "x", true), nothing, "s")
                    .svg();
            assertThat(survey).contains("<path").doesNotContain("NaN");
        }
    }
}
