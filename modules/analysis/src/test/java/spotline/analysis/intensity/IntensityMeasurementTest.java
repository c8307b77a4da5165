package spotline.analysis.intensity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.spectra.BindingScan;

class IntensityMeasurementTest {
    private static final LineTarget C1S = MadeScan.target("C 1s", 282, 293, 285, 0);

    private static Outcome<Intensity> outcome(BindingScan scan, LineTarget target) {
        return new IntensityMeasurement(MadeScan.settings()).measure(scan, target, "key", Work.UNWATCHED);
    }

    private static Intensity measure(BindingScan scan, LineTarget target) {
        return outcome(scan, target).result().orElseThrow();
    }

    private static List<String> rules(BindingScan scan, LineTarget target) {
        return outcome(scan, target).allFindings().stream().map(Finding::rule).toList();
    }

    @Test
    void takesTheAreaOfOneLineOnAFlatBackground() {
        Intensity c =
                measure(MadeScan.flat(276, 298, 400).with(285.3, 1.2, 20000, 0).exact(), C1S);
        assertThat(c.peakEv()).isCloseTo(285.3, within(0.03));
        assertThat(c.fwhmEv()).isCloseTo(1.2, within(0.1));
        // counts x step, derived
        assertThat(c.area().value()).isCloseTo(2000, within(5.0));
        // 100 channels, five at each end averaged: sqrt(20000 + 100 x 400 + 50^2 x 2 x 80) x 0.1 for a straight line;
        // derived
        assertThat(c.area().standardUncertainty().orElseThrow()).isCloseTo(67.8, within(2.0));
        assertThat(c.area().sources()).containsExactly("counting/key", "endpoints/key");
        assertThat(c.detected()).isTrue();
        // 3 eV below and above, and room for states 4 eV above the top
        assertThat(c.window().lowEv()).isCloseTo(282.3, within(0.15));
        assertThat(c.window().highEv()).isCloseTo(292.3, within(0.15));
        assertThat(c.background()).contains("Shirley");
    }

    @Test
    void theWindowReachesBeyondTheHighestState() {
        MadeScan two =
                MadeScan.flat(276, 306, 400).with(284.8, 1.2, 20000, 0.02).with(291.9, 1.3, 40000, 0.02);
        Intensity c = measure(two.exact(), MadeScan.target("C 1s", 282, 294, 285, 0));
        assertThat(c.window().lowEv()).isCloseTo(281.8, within(0.2));
        assertThat(c.window().highEv()).isGreaterThan(294.8);
        assertThat(c.area().value()).isCloseTo(6000, within(120.0));
    }

    @Test
    void aWholeDoubletIsTakenWithItsPartner() {
        MadeScan cl = MadeScan.flat(190, 212, 300).with(198.5, 1.1, 10000, 0).with(200.1, 1.1, 5000, 0);
        Intensity i = measure(cl.exact(), MadeScan.target("Cl 2p", 196, 202, 198.9, 1.6));
        assertThat(i.peakEv()).isCloseTo(198.5, within(0.1));
        assertThat(i.area().value()).isCloseTo(1500, within(15.0));
    }

    @Test
    void aForeignPeakBoundsTheWindow() {
        MadeScan scan = MadeScan.flat(276, 300, 400).with(284.8, 1.2, 20000, 0).with(293.0, 1.4, 20000, 0);
        LineTarget target = new LineTarget(Line.parse("C 1s"), 282, 295, 285, 0, List.of(292.8, 295.5));
        Intensity c = measure(scan.exact(), target);
        assertThat(c.peakEv()).isCloseTo(284.8, within(0.05));
        assertThat(c.window().highEv()).isLessThan(289.2);
        assertThat(c.area().value()).isCloseTo(2000, within(20.0));
    }

    @Test
    void fallsBackWhereTheDefaultBackgroundDoesNotExist() {
        BindingScan falling = MadeScan.flat(276, 298, 2000)
                .sloping(-40)
                .with(285, 1.2, 20000, 0)
                .exact();
        assertThat(measure(falling, C1S).background()).contains("linear");
        assertThat(rules(falling, C1S)).containsExactly("background-fallback");
    }

    /** On one slope a weak line's area hangs on the background and a strong line's does not. */
    @Test
    void aSlopeAsksForAnotherBackgroundOnlyWhereItMatters() {
        MadeScan slope = MadeScan.flat(270, 300, 1000).sloping(20);
        assertThat(measure(slope.with(285, 1.2, 20000, 0).exact(), C1S).background())
                .contains("linear");
        assertThat(measure(slope.with(285, 1.2, 1e6, 0).exact(), C1S).background())
                .contains("Shirley");
        assertThat(rules(slope.with(285, 1.2, 1e6, 0).exact(), C1S)).isEmpty();
    }

    @Test
    void aScanThatEndsOnTheLineIsACaution() {
        BindingScan cut =
                MadeScan.flat(283.5, 298, 400).with(285, 1.4, 40000, 0.01).exact();
        assertThat(rules(cut, C1S)).contains("scan-too-narrow");
    }

    @Test
    void aLineOutsideTheScanIsUntreated() {
        BindingScan scan = MadeScan.flat(276, 298, 400).exact();
        Outcome<Intensity> outcome = outcome(scan, MadeScan.target("O 1s", 528, 536, 532, 0));
        assertThat(outcome.result()).isEmpty();
        assertThat(outcome.allFindings()).extracting(Finding::rule).containsExactly("line-outside-scan");
    }

    @Test
    void unknownStatisticsGiveNoUncertaintyAndNoLevel() {
        Intensity c =
                measure(MadeScan.flat(276, 298, 400).with(285, 1.2, 20000, 0).uncounted(), C1S);
        assertThat(c.area().standardUncertainty()).isEmpty();
        assertThat(c.criticalLevel()).isEmpty();
        assertThat(c.detectionLimit()).isEmpty();
        assertThat(c.detected()).isTrue();
    }

    /** At most 5 % of 400 empty scans may pass for a line (Currie 1968); three binomial deviations above that is 33. */
    @Test
    void fewEmptyScansPassForALine() {
        int passed = 0;
        for (int trial = 0; trial < 400; trial++) {
            if (measure(MadeScan.flat(392, 408, 800).noisy(trial), N1S).detected()) passed++;
        }
        assertThat(passed).isLessThanOrEqualTo(33);
    }

    /** A line of the area that the limit names is found in 95 % (Currie 1968); three binomial deviations of 400 below is 367. */
    @Test
    void aLineAtTheDetectionLimitIsFound() {
        MadeScan empty = MadeScan.flat(392, 408, 800);
        double limit = measure(empty.exact(), N1S).detectionLimit().orElseThrow();
        MadeScan faint = empty.with(400, 1.3, limit / 0.1, 0);
        int found = 0;
        for (int trial = 0; trial < 400; trial++) {
            if (measure(faint.noisy(trial), N1S).detected()) found++;
        }
        assertThat(found).isGreaterThanOrEqualTo(367);
    }

    /** The crest of a loss hump, 12 eV wide: a straight background leaves some 3000 counts of it, over twice the critical level. */
    @Test
    void theCrestOfAHumpIsNoLine() {
        MadeScan hump = MadeScan.flat(388, 412, 5000).with(400, 12, 120_000, 0);
        int passed = 0;
        for (int trial = 0; trial < 200; trial++) {
            if (measure(hump.noisy(trial), N1S).detected()) passed++;
        }
        // 5 % of 200 and three binomial deviations
        assertThat(passed).isLessThanOrEqualTo(19);
        // A line of 3 % of the hump stands on it all the same
        assertThat(measure(hump.with(400, 1.3, 8000, 0).exact(), N1S).detected())
                .isTrue();
    }

    /** Two states close together bend each other's flanks and are no hump. */
    @Test
    void twoStrongStatesAreNoHump() {
        MadeScan two = MadeScan.flat(388, 412, 300).with(399.2, 1.3, 40_000, 0).with(400.8, 1.3, 40_000, 0);
        Intensity n = measure(two.noisy(1), N1S);
        assertThat(n.area().value()).isCloseTo(8000, within(160.0));
        Intensity weak = measure(
                MadeScan.flat(388, 412, 1000)
                        .with(399.2, 1.3, 6000, 0)
                        .with(400.8, 1.3, 6000, 0)
                        .noisy(2),
                N1S);
        assertThat(weak.detected()).isTrue();
        assertThat(weak.area().value()).isCloseTo(1200, within(180.0));
    }

    private static final LineTarget N1S = MadeScan.target("N 1s", 397, 404, 400, 0);

    @Test
    void theAreasOfNoiseScatterAsStated() {
        double squares = 0;
        double u = 0;
        for (int trial = 0; trial < 400; trial++) {
            Intensity i = measure(MadeScan.flat(392, 408, 800).noisy(trial), N1S);
            if (i.detected()) continue;
            squares += i.area().value() * i.area().value();
            u += i.area().standardUncertainty().orElseThrow()
                    * i.area().standardUncertainty().orElseThrow();
        }
        // ratio of variances; its own deviation is sqrt(2/400) = 7 %
        assertThat(squares / u).isCloseTo(1, within(0.25));
    }
}
