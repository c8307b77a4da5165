package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MainLineTest {
    private final ReferenceData data = ReferenceData.shipped();

    // common practice, no source
    @ParameterizedTest
    @ValueSource(
            strings = {
                "C 1s", "O 1s", "N 1s", "F 1s", "Na 1s", "Mg 1s", "Al 2p", "Si 2p", "P 2p", "S 2p", "Cl 2p", "K 2p",
                "Ca 2p", "Ti 2p", "Cr 2p", "Fe 2p", "Ni 2p", "Cu 2p", "Zn 2p", "Ge 3d", "As 3d", "Se 3d", "Br 3d",
                "Sr 3d", "Y 3d", "Zr 3d", "Mo 3d", "Ag 3d", "In 3d", "Sn 3d", "I 3d", "Ba 3d", "Ce 3d", "Gd 4d",
                "Hf 4f", "Ta 4f", "W 4f", "Pt 4f", "Au 4f", "Hg 4f", "Pb 4f", "Bi 4f", "U 4f", "Li 1s", "B 1s"
            })
    void theLineTheTradeQuantifiesAtAlKa(String line) {
        Line expected = Line.parse(line);
        assertThat(data.mainLine(expected.atom(), 1486.69)).contains(expected);
        assertThat(data.mainLine(expected.atom(), 1486.6)).contains(expected);
    }

    @Test
    void magnesiumAtMgKaIsQuantifiedFrom2p() {
        Element magnesium = Elements.bySymbol("Mg").orElseThrow();
        assertThat(data.mainLine(magnesium, 1253.6)).contains(Line.parse("Mg 2p"));
        assertThat(data.mainLineReason(magnesium, 1253.6)).isPresent();
        assertThat(data.mainLineReason(magnesium, 1486.6)).isEmpty();
    }

    @Test
    void everyElementFromLithiumOnHasOneThatCanBeQuantified() {
        for (double photonEv : List.of(1253.6, 1486.69, 2984.3, 5414.7, 9251.7)) {
            for (Element element : Elements.all()) {
                if (element.z() < 3) {
                    assertThat(data.mainLine(element, photonEv)).isEmpty();
                    continue;
                }
                Line line = data.mainLine(element, photonEv).orElseThrow();
                assertThat(line.orbital().isWhole()).isTrue();
                assertThat(data.crossSection(line, photonEv))
                        .as(line + " at " + photonEv)
                        .isPresent();
                assertThat(data.bindingEnergy(line).orElseThrow().valueEv()).isBetween(10.0, photonEv - 100);
                assertThat(data.nearThreshold(line, photonEv))
                        .as(line + " at " + photonEv)
                        .isFalse();
            }
        }
    }

    @Test
    void linesComeStrongestFirstAndOnlyThoseInReach() {
        List<LineData> lines = data.lines(Elements.bySymbol("Cu").orElseThrow(), 1486.6);
        assertThat(lines.get(0).line()).isEqualTo(Line.parse("Cu 2p"));
        assertThat(lines.get(0).members()).containsExactly(Line.parse("Cu 2p3/2"), Line.parse("Cu 2p1/2"));
        assertThat(lines.get(0).kineticEv()).isBetween(553.0, 555.0);
        assertThat(lines)
                .extracting(LineData::relativeCrossSection)
                .isSortedAccordingTo((a, b) -> Double.compare(b, a));
        assertThat(lines)
                .allMatch(line -> line.kineticEv() > 0 && line.line().orbital().isWhole());
        assertThat(data.lines(Elements.bySymbol("Al").orElseThrow(), 1486.6))
                .noneMatch(line -> line.line().toString().equals("Al 1s"));
    }
}
