package spotline.analysis.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class PeakTopTest {
    private static PeakTop top(BindingScan scan, double lowEv, double highEv) {
        return PeakTop.find(scan, new Window(lowEv, highEv), Work.UNWATCHED).orElseThrow();
    }

    @Test
    void theMaximumIsFoundAndItsUncertaintyHolds() {
        int inside = 0;
        double squares = 0;
        double stated = 0;
        int trials = 200;
        for (int k = 0; k < trials; k++) {
            BindingScan scan = MadeMetal.scan("silver", 368.243, 6, 0.67, 0.75, 360, 380, 100 + k);
            PeakTop top = top(scan, 366, 370);
            double u = top.positionEv().standardUncertainty().orElseThrow();
            double off = top.positionEv().value() - 368.243;
            squares += off * off;
            stated += u * u;
            if (Math.abs(off) < 1.96 * u) inside++;
        }
        // 95 % of 200 with a standard deviation of 1.5 %: three of them to either side.
        assertThat(inside / (double) trials).isBetween(0.90, 0.995);
        assertThat(Math.sqrt(squares / stated)).isCloseTo(1, within(0.2));
        assertThat(Math.sqrt(squares / trials)).isLessThan(0.006);
    }

    @Test
    void widthIsTheFullWidthAtHalfMaximum() {
        // Voigt of 0.75 and 0.25 eV: 0.5346 L + sqrt(0.2166 L^2 + G^2), Olivero and Longbothum 1977, from memory:
        // 0.892.
        BindingScan scan = MadeMetal.scan("silver", 368.2, 6, 0.67, 0.75, 360, 380, 3);
        assertThat(top(scan, 366, 370).fwhmEv().orElseThrow()).isCloseTo(0.892, within(0.05));
    }

    @Test
    void anAsymmetricLineIsPlacedByItsMaximum() {
        BindingScan fine = MadeMetal.asymmetric(0.001);
        double[] counts = fine.counts();
        double highest = Arrays.stream(counts).max().orElseThrow();
        double first = 0;
        double last = 0;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] != highest) continue;
            if (first == 0) first = fine.energy(i);
            last = fine.energy(i);
        }
        BindingScan usual = MadeMetal.asymmetric(0.05);
        assertThat(top(usual, 98, 102).positionEv().value()).isCloseTo(0.5 * (first + last), within(0.01));
    }

    @Test
    void noPeakIsNoPeak() {
        BindingScan silver = MadeMetal.scan("silver", 368.2, 6, 0.67, 0.75, 360, 380, 4);
        assertThat(PeakTop.find(silver, new Window(362, 365), Work.UNWATCHED)).isEmpty();
        assertThat(PeakTop.find(silver, new Window(500, 510), Work.UNWATCHED)).isEmpty();
    }
}
