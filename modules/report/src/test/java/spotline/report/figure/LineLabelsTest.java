package spotline.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.Verdict;

class LineLabelsTest {
    private static final double EV_PER_PIXEL = 1.3;

    private static Identification of(LineSeen... lines) {
        return new Identification(List.of(new ElementSeen("Ti", Verdict.PRESENT, List.of(lines), 10)), 0, List.of());
    }

    @Test
    void namesNeverStandOnEachOther() {
        SplittableRandom random = new SplittableRandom(20260512);
        for (int round = 0; round < 50; round++) {
            List<LineSeen> lines = new ArrayList<>();
            for (int i = 0; i < 60; i++) {
                lines.add(new LineSeen("L" + i, random.nextDouble() * 1200, random.nextDouble() * 300, 1));
            }
            List<LineLabels.Label> labels = LineLabels.of(of(lines.toArray(LineSeen[]::new)), 0, 1200, EV_PER_PIXEL);
            assertThat(labels).hasSize(60);
            List<LineLabels.Label> named =
                    labels.stream().filter(l -> !l.text().isEmpty()).toList();
            assertThat(named).hasSizeGreaterThan(20);
            for (LineLabels.Label a : named) {
                for (LineLabels.Label b : named) {
                    if (a == b) continue;
                    assertThat(Math.abs(a.placedEv() - b.placedEv()) / EV_PER_PIXEL)
                            .isGreaterThan(12.99);
                }
            }
        }
    }

    @Test
    void theStrongerKeepsItsPlaceAndTheWeakerMovesOrKeepsOnlyItsMark() {
        List<LineLabels.Label> labels = LineLabels.of(
                of(new LineSeen("Ti 3s", 500, 5, 1), new LineSeen("Ti 2s", 501, 50, 1)), 0, 1200, EV_PER_PIXEL);
        assertThat(labels.get(0)).isEqualTo(new LineLabels.Label("Ti 2s", 501, 501));
        assertThat(labels.get(1).text()).isEqualTo("Ti 3s");
        assertThat(Math.abs(labels.get(1).placedEv() - 501)).isGreaterThan(12.99 * EV_PER_PIXEL);
    }

    @Test
    void aDoubletIsNamedOnceAtItsStrongerLine() {
        List<LineLabels.Label> labels = LineLabels.of(
                of(new LineSeen("Ti 2p1/2", 464.7, 20, 1), new LineSeen("Ti 2p3/2", 459, 40, 1)),
                0,
                1200,
                EV_PER_PIXEL);
        assertThat(labels).containsExactly(new LineLabels.Label("Ti 2p", 459, 459));
    }

    @Test
    void aPossibleElementIsMarkedAsSuch() {
        Identification possible = new Identification(
                List.of(new ElementSeen("Cl", Verdict.POSSIBLE, List.of(new LineSeen("Cl 2p3/2", 200, 9, 1)), 9)),
                0,
                List.of());
        assertThat(LineLabels.of(possible, 0, 1200, EV_PER_PIXEL).get(0).text()).isEqualTo("Cl 2p?");
    }
}
