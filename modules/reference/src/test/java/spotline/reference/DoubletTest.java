package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DoubletTest {
    private final ReferenceData data = ReferenceData.shipped();

    private Doublet doublet(String line, double photonEv) {
        return data.doublet(Line.parse(line), photonEv).orElseThrow();
    }

    // Measured splittings of solids, from memory
    @ParameterizedTest
    @CsvSource({
        "Si 2p, 0.60, 0.01", "P 2p, 0.85, 0.02", "S 2p, 1.18, 0.03", "Cl 2p, 1.60, 0.01", "Zn 2p, 23.1, 0.2",
        "Cu 2p, 19.8, 0.06", "Ag 3d, 6.00, 0.01", "Sn 3d, 8.41, 0.01", "In 3d, 7.54, 0.01", "Au 4f, 3.67, 0.01",
        "As 3d, 0.69, 0.01"
    })
    void splittings(String line, double splittingEv, double tolerance) {
        assertThat(doublet(line, 1486.6).splittingEv()).isEqualTo(splittingEv, within(tolerance));
        assertThat(doublet(line, 1486.6).source()).contains("measured");
    }

    @Test
    void anyComponentNamesItsDoublet() {
        assertThat(doublet("Ti 2p1/2", 1486.6)).isEqualTo(doublet("Ti 2p", 1486.6));
        assertThat(doublet("Ti 2p3/2", 1486.6)).isEqualTo(doublet("Ti 2p", 1486.6));
    }

    // Scofield 1976, from memory: Ag 7.38/10.66, Cu 8.66/16.73, Au 7.54/9.58
    @ParameterizedTest
    @CsvSource({"Ag 3d, 0.6923", "Cu 2p, 0.5176", "Au 4f, 0.7871"})
    void areaRatiosComeFromTheCrossSections(String line, double ratio) {
        assertThat(doublet(line, 1486.69).areaRatioLowToHigh()).isEqualTo(ratio, within(0.002));
    }

    @Test
    void withoutCrossSectionsTheRatioIsStatistical() {
        assertThat(doublet("Ti 2p", 900).areaRatioLowToHigh()).isEqualTo(0.5);
        assertThat(doublet("Ag 3d", 900).areaRatioLowToHigh()).isEqualTo(2.0 / 3, within(1e-12));
        assertThat(doublet("Au 4f", 900).areaRatioLowToHigh()).isEqualTo(0.75);
        assertThat(doublet("Au 4f", 900).source()).contains("statistical");
    }

    @Test
    void whatIsNotSplitOrNotResolvedIsEmpty() {
        assertThat(data.doublet(Line.parse("C 1s"), 1486.6)).isEmpty();
        assertThat(data.doublet(Line.parse("C 2p"), 1486.6)).isEmpty();
        assertThat(data.doublet(Line.parse("Mg 3p"), 1486.6)).isEmpty();
    }

    @Test
    void splittingsArePositiveAndRatiosNearStatistics() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 1486.6)) {
                data.doublet(line.line(), 1486.6)
                        .ifPresent(doublet -> assertThat(doublet.splittingEv())
                                .as(line.line().toString())
                                .isPositive());
            }
            // Relativistic cross sections leave statistics by a few per cent in the lines one quantifies
            data.mainLine(element, 1486.6)
                    .ifPresent(main -> data.doublet(main, 1486.6).ifPresent(doublet -> {
                        double l = main.orbital().l();
                        assertThat(doublet.areaRatioLowToHigh() * (l + 1) / l)
                                .as(main.toString())
                                .isBetween(0.95, 1.1);
                    }));
        }
    }

    // Campbell, Papp 2001; Krause, Oliver 1979; Keski-Rahkonen, Krause 1974
    @ParameterizedTest
    @CsvSource({"Ti 2p3/2, 0.25, Campbell", "Au 4f7/2, 0.33, Campbell", "C 1s, 0.087, Keski", "Na 1s, 0.28, Campbell"})
    void widths(String line, double fwhmEv, String source) {
        NaturalWidth width = data.naturalWidth(Line.parse(line)).orElseThrow();
        assertThat(width.fwhmEv()).isEqualTo(fwhmEv, within(0.015));
        assertThat(width.source()).contains(source);
    }
}
