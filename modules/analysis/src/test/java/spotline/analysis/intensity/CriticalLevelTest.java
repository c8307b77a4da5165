package spotline.analysis.intensity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CriticalLevelTest {
    /** 81 channels, straight background of 1000 to 1200 counts from 10 channels at each end. */
    private static final double BACKGROUND = 81 * 1100;

    private static final double OF_THE_ENDS = 40.5 * 40.5 * (1000 / 10.0 + 1200 / 10.0);

    @Test
    void countsTheBackgroundAndItsEstimate() {
        assertThat(OF_THE_ENDS).isCloseTo(360855, within(0.5));
        CriticalLevel level = CriticalLevel.of(BACKGROUND, OF_THE_ENDS);
        // Currie (1968), equations for paired observations; numbers derived, closed form
        assertThat(level.critical()).isCloseTo(1103, within(1.0));
        assertThat(level.detection()).isCloseTo(2210, within(1.0));
        assertThat(level.deviation()).isCloseTo(670.8, within(0.05));
        assertThat(CriticalLevel.of(BACKGROUND, OF_THE_ENDS).atLeast(3).critical())
                .isCloseTo(2012, within(0.5));
    }

    @Test
    void anExactlyKnownBackgroundHalvesTheLimit() {
        // derived, closed form
        assertThat(CriticalLevel.of(BACKGROUND, 0).detection()).isCloseTo(985, within(1.0));
    }

    @Test
    void withoutABackgroundTheLimitIsThatOfCountingAlone() {
        // Currie (1968): 2.71 counts
        assertThat(CriticalLevel.of(0, 0)).isEqualTo(new CriticalLevel(0, 2.71, 0));
    }

    @Test
    void theBestOfSeveralPlacesAsksForMore() {
        // one-sided normal quantile of 0.95^(1/5); computed with scipy 1.x
        assertThat(CriticalLevel.ofBest(10000, 0, 5).critical()).isCloseTo(231.9, within(0.1));
        assertThat(CriticalLevel.ofBest(10000, 0, 1)).isEqualTo(CriticalLevel.of(10000, 0));
    }

    @Test
    void aStricterRuleRaisesBothLevels() {
        CriticalLevel level = CriticalLevel.of(10000, 0).atLeast(5);
        assertThat(level.critical()).isEqualTo(500);
        assertThat(level.detection()).isCloseTo(667.21, within(1e-9));
        assertThat(CriticalLevel.of(10000, 0).atLeast(1)).isEqualTo(CriticalLevel.of(10000, 0));
    }
}
