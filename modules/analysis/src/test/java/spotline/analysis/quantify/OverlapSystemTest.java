package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import spotline.core.Estimate;

class OverlapSystemTest {
    private static final Estimate NONE = Estimate.exact(0);

    @Test
    void oneLineUnderAnother() {
        // r = (100 + 0.25 x 200, 200): the first gives back 100; derived
        Estimate share = Estimate.of(0.25, "overlap/a by b", 0.025);
        List<Estimate> q = OverlapSystem.solve(
                List.of(Estimate.of(150, "counting/a", 3), Estimate.of(200, "counting/b", 4)),
                List.of(List.of(NONE, share), List.of(NONE, NONE)));
        assertThat(q.get(0).value()).isCloseTo(100, within(1e-9));
        assertThat(q.get(0).contribution("overlap/a by b")).isCloseTo(-5, within(1e-9));
        assertThat(q.get(0).contribution("counting/b")).isCloseTo(-1, within(1e-9));
        assertThat(q.get(0).standardUncertainty().orElseThrow()).isCloseTo(Math.sqrt(9 + 1 + 25), within(1e-9));
        assertThat(q.get(1).value()).isCloseTo(200, within(1e-9));
    }

    @Test
    void twoLinesUnderEachOther() {
        // 10 + 0.5 x 4 = 12 and 4 + 0.2 x 10 = 6; derived
        List<Estimate> q = OverlapSystem.solve(
                List.of(Estimate.exact(12), Estimate.exact(6)),
                List.of(List.of(NONE, Estimate.exact(0.5)), List.of(Estimate.exact(0.2), NONE)));
        assertThat(q.get(0).value()).isCloseTo(10, within(1e-9));
        assertThat(q.get(1).value()).isCloseTo(4, within(1e-9));
    }

    @Test
    void whatCannotBeToldApartIsRefused() {
        assertThatThrownBy(() -> OverlapSystem.solve(
                        List.of(Estimate.exact(1), Estimate.exact(1)),
                        List.of(List.of(NONE, Estimate.exact(1)), List.of(Estimate.exact(1), NONE))))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
