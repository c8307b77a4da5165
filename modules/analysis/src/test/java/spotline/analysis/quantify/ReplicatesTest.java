package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import spotline.core.Estimate;
import spotline.numerics.random.RandomStreams;

class ReplicatesTest {
    private static Estimate counted(double value, int spot, double u) {
        return Estimate.of(value, "counting/" + spot, u);
    }

    /** Three places: t95/sqrt(3) = 2.48. Source: Student's t, 4.303 at two degrees of freedom. */
    @Test
    void threePlaces() {
        Replicates r = Replicates.of(List.of(counted(28.1, 1, 0.1), counted(28.9, 2, 0.1), counted(27.6, 3, 0.1)));
        assertThat(r.n()).isEqualTo(3);
        assertThat(r.mean()).isCloseTo(28.2, within(1e-9));
        assertThat(r.standardDeviation().orElseThrow()).isCloseTo(0.6557, within(5e-5));
        assertThat(r.confidence95().orElseThrow()).isCloseTo(1.6, within(0.05));
        assertThat(r.confidence95().orElseThrow() / r.standardDeviation().orElseThrow())
                .isCloseTo(2.484, within(5e-4));
        // s = 6.6 u: chi-square 86 at two degrees of freedom; derived
        assertThat(r.homogeneityProbability().orElseThrow()).isLessThan(1e-15);
    }

    @Test
    void onePlaceSaysNothingOfScatter() {
        Replicates r = Replicates.of(List.of(counted(28.1, 1, 0.1).with("factor/x", 1)));
        assertThat(r.standardDeviation()).isEmpty();
        assertThat(r.confidence95()).isEmpty();
        assertThat(r.homogeneityProbability()).isEmpty();
        assertThat(r.standardUncertainty().orElseThrow()).isCloseTo(Math.hypot(0.1, 1), within(1e-12));
        assertThatThrownBy(() -> Replicates.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatIsSharedDoesNotAverageDown() {
        List<Estimate> four = new ArrayList<>();
        for (int i = 0; i < 4; i++)
            four.add(counted(10, i, 0.2).with("factor/x", 0.5).with("background/choice", 0.1));
        double u = Replicates.of(four).standardUncertainty().orElseThrow();
        assertThat(u).isCloseTo(Math.sqrt(0.01 + 0.25 + 0.01), within(1e-12));
    }

    @Test
    void placesThatScatterAsCountingDoesAreAlike() {
        RandomGenerator random = RandomStreams.stream(20260519, "replicates");
        int alarms = 0;
        for (int trial = 0; trial < 1000; trial++) {
            List<Estimate> places = new ArrayList<>();
            for (int i = 0; i < 5; i++) places.add(counted(20 + 0.3 * random.nextGaussian(), i, 0.3));
            if (Replicates.of(places).homogeneityProbability().orElseThrow() < 0.05) alarms++;
        }
        // 5 % of 1000 with a binomial deviation of 6.9
        assertThat(alarms).isBetween(29, 71);
    }

    @Test
    void theIntervalCoversTheMean() {
        RandomGenerator random = RandomStreams.stream(20260520, "interval");
        int covered = 0;
        for (int trial = 0; trial < 2000; trial++) {
            List<Estimate> places = new ArrayList<>();
            for (int i = 0; i < 3; i++) places.add(counted(20 + random.nextGaussian(), i, 0.1));
            Replicates r = Replicates.of(places);
            if (Math.abs(r.mean() - 20) < r.confidence95().orElseThrow()) covered++;
        }
        // 95 % with a binomial deviation of 0.5 %
        assertThat(covered / 2000.0).isCloseTo(0.95, within(0.015));
    }

    @Test
    void unknownStatisticsStayUnknown() {
        Replicates r = Replicates.of(List.of(Estimate.unknown(1), Estimate.unknown(2)));
        assertThat(r.standardUncertainty()).isEmpty();
        assertThat(r.homogeneityProbability()).isEmpty();
        assertThat(r.standardDeviation().orElseThrow()).isCloseTo(Math.sqrt(0.5), within(1e-12));
    }
}
