package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineTest {
    // ISO 18115-1 notation and the X-ray notation of levels
    @ParameterizedTest
    @CsvSource({
        "1s, K",
        "2s, L1",
        "2p1/2, L2",
        "2p3/2, L3",
        "2p, L23",
        "3s, M1",
        "3p1/2, M2",
        "3p3/2, M3",
        "3d3/2, M4",
        "3d5/2, M5",
        "3d, M45",
        "4f5/2, N6",
        "4f7/2, N7",
        "4f, N67",
        "5p3/2, O3"
    })
    void orbitalsReadAndPrint(String text, String shell) {
        Orbital orbital = Orbital.parse(text);
        assertThat(orbital).hasToString(text);
        assertThat(orbital.shell()).isEqualTo(shell);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "p", "1p", "2d", "2p5/2", "2p 3/2", "3d1/2", "8s", "0s", "2P", "2p3", "1s3/2", "2p3/2x"})
    void orbitalsThatDoNotExistAreRefused(String text) {
        assertThatIllegalArgumentException().isThrownBy(() -> Orbital.parse(text));
    }

    @Test
    void anSOrbitalIsItsOwnWhole() {
        assertThat(Orbital.parse("1s1/2")).isEqualTo(Orbital.parse("1s"));
        assertThat(Orbital.parse("1s").isWhole()).isTrue();
        assertThat(Orbital.parse("1s").members()).containsExactly(Orbital.parse("1s"));
        assertThat(Orbital.parse("3d").members()).containsExactly(Orbital.parse("3d5/2"), Orbital.parse("3d3/2"));
    }

    @ParameterizedTest
    @CsvSource({
        "Ti 2p3/2, Ti 2p3/2",
        "Ti2p, Ti 2p",
        "'  Ti   2p  3/2 ', Ti 2p3/2",
        "C1s, C 1s",
        "U 4f7/2, U 4f7/2",
        "In 3d, In 3d"
    })
    void linesReadLeniently(String text, String printed) {
        assertThat(Line.parse(text)).hasToString(printed);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "ti 2p", "TI 2p", "Xx 1s", "2p", "Ti", "C 1s 2p", "C 2d", "Cu LMM", "Ag M4NN"})
    void whatIsNoLineIsRefused(String text) {
        assertThatIllegalArgumentException().isThrownBy(() -> Line.parse(text));
        assertThat(Line.find(text)).isEmpty();
    }

    @Test
    void linesSortByAtomicNumberThenOrbital() {
        List<Line> sorted = List.of("Cu 2p", "C 1s", "Cu 2p1/2", "Al 2p", "Al 2s").stream()
                .map(Line::parse)
                .sorted()
                .toList();
        assertThat(sorted).map(Line::toString).containsExactly("C 1s", "Al 2s", "Al 2p", "Cu 2p", "Cu 2p1/2");
    }

    @Property(seed = "20260101", tries = 300)
    void everyLineReadsBackWhatItPrints(@ForAll("lines") Line line) {
        assertThat(Line.parse(line.toString())).isEqualTo(line);
        assertThat(line.members()).allMatch(member -> member.whole().equals(line.whole()));
    }

    @Provide
    static Arbitrary<Line> lines() {
        Arbitrary<Orbital> orbitals = Combinators.combine(
                        Arbitraries.integers().between(1, 7),
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.integers().between(-1, 1))
                .as((n, l, j) -> {
                    int inside = Math.min(l, n - 1);
                    int twoJ = j == 0 || inside == 0 ? 0 : 2 * inside + j;
                    return new Orbital(n, inside, twoJ);
                });
        return Combinators.combine(Arbitraries.of(Elements.all()), orbitals)
                .as((element, orbital) -> new Line(element.symbol(), orbital));
    }
}
