package spotline.analysis.intensity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import spotline.spectra.BindingScan;

class WindowEndsTest {
    private static final MadeScan PEAK = MadeScan.flat(276, 305, 1000).with(285, 1.2, 50000, 0);

    @Test
    void flatBehindTheLineTheEndStays() {
        assertThat(new WindowEnds(PEAK.exact()).high(288, 293)).isEqualTo(293);
    }

    @Test
    void aLossStructureBehindTheLineIsLeftOut() {
        BindingScan scan = PEAK.with(300, 12, 80000, 0).exact();
        double end = new WindowEnds(scan).high(287.5, 294);
        assertThat(end).isBetween(287.5, 290.0);
    }

    @Test
    void aWeakStateBehindTheLineStaysInside() {
        BindingScan scan =
                PEAK.with(289.5, 1.3, 4000, 0.2).with(304, 12, 80000, 0).exact();
        assertThat(new WindowEnds(scan).high(287.5, 294)).isGreaterThan(290.9);
    }

    @Test
    void anEndOnTheLinesFootMovesOut() {
        WindowEnds ends = new WindowEnds(PEAK.exact());
        assertThat(ends.low(284.2, 279)).isLessThan(283.3);
        assertThat(ends.low(282, 279)).isEqualTo(282);
    }

    @Test
    void aSlopeIsNoFoot() {
        BindingScan scan = PEAK.sloping(60).exact();
        assertThat(new WindowEnds(scan).low(282, 278)).isEqualTo(282);
    }

    @Test
    void withoutRoomTheEndStays() {
        assertThat(new WindowEnds(PEAK.exact()).high(293, 293)).isEqualTo(293);
        assertThat(new WindowEnds(PEAK.exact()).low(276, 276)).isCloseTo(276, within(0.5));
    }
}
