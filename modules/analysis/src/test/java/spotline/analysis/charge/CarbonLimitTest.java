package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;

/** Positions of hydrocarbon on simulated spots against the truth, the Cramer-Rao limit and the stated uncertainty. */
class CarbonLimitTest {
    /** What many simulated spots came to. */
    private record Trials(int placed, double overLimit, double coverage) {}

    private static Trials trials(int count, double area, long seed) {
        RandomGenerator random = RandomStreams.stream(seed, "carbon limit", String.valueOf(area));
        double squares = 0;
        double limits = 0;
        int inside = 0;
        int placed = 0;
        for (int k = 0; k < count; k++) {
            CarbonTruth truth = CarbonTruth.drawn(random, area);
            double expected = truth.positionEv() + 2 * (random.nextDouble() - 0.5);
            var fit = HydrocarbonFit.place(truth.scan(random, "C 1s"), expected, Work.UNWATCHED);
            if (fit.isEmpty()) continue;
            placed++;
            var position = fit.get().fit().reference().position();
            double off = position.value() - truth.positionEv();
            squares += off * off;
            limits += truth.limitEv() * truth.limitEv();
            if (Math.abs(off) < 1.96 * position.standardUncertainty().orElseThrow()) inside++;
        }
        return new Trials(placed, Math.sqrt(squares / limits), (double) inside / placed);
    }

    @Test
    void aSampleKeepsTheLimitAndTheCoverage() {
        Trials trials = trials(80, 1000, 31);
        assertThat(trials.placed()).isEqualTo(80);
        assertThat(trials.overLimit()).isLessThan(1.2);
        // 95 % of 80 have a standard deviation of 2.4 %: three of them downwards.
        assertThat(trials.coverage()).isBetween(0.87, 1.0);
    }

    /** Areas in counts eV at steps of 0.1 eV: 3, 10, 80 and 300 kcounts under hydrocarbon. */
    @Tag("slow")
    @ParameterizedTest
    @ValueSource(doubles = {300, 1000, 8000, 30000})
    void twoThousandSpotsKeepTheLimitAndTheCoverage(double area) {
        Trials trials = trials(2000, area, 32);
        assertThat(trials.placed()).isGreaterThanOrEqualTo(1990);
        assertThat(trials.overLimit()).isLessThan(1.2);
        assertThat(trials.coverage()).isBetween(0.93, 0.97);
    }
}
