package spotline.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class EstimateTest {
    private static double u(Estimate estimate) {
        return estimate.standardUncertainty().orElseThrow();
    }

    @Test
    void uncertaintyIsTheNormOfTheContributions() {
        Estimate e = Estimate.of(10, "counting", 3).with("factor", -4);
        assertThat(u(e)).isEqualTo(5);
        assertThat(e.uncertaintyFrom(s -> s.equals("counting")).orElseThrow()).isEqualTo(3);
    }

    @Test
    void contributionsOfOneSourceAddWithTheirSign() {
        Estimate e = Estimate.of(10, "a", 3).with("a", -1);
        assertThat(e.contribution("a")).isEqualTo(2);
        assertThat(e.sources()).containsExactly("a");
    }

    /** GUM 5.2.2: the reference value of two binding energies of one spectrum cancels in their difference. */
    @Test
    void sharedReferenceCancelsInADifference() {
        Estimate first = Estimate.of(284.8, "position 1", 0.05).with("reference", 0.25);
        Estimate second = Estimate.of(532.5, "position 2", 0.05).with("reference", 0.25);
        // u(E1 - E2) = sqrt(u1^2 + u2^2); closed form.
        assertThat(u(second.minus(first))).isCloseTo(Math.hypot(0.05, 0.05), within(1e-15));
        assertThat(u(first)).isCloseTo(Math.hypot(0.05, 0.25), within(1e-15));
        assertThat(first.covariance(second).orElseThrow()).isCloseTo(0.0625, within(1e-15));
    }

    @Test
    void aRatioOfSharedFactorsIsAsSureAsTheRest() {
        Estimate a = Estimate.of(100, "a", 1).with("factor", 5);
        Estimate b = Estimate.of(50, "b", 1).with("factor", 2.5);
        Estimate ratio = a.dividedBy(b);
        assertThat(ratio.value()).isEqualTo(2);
        // relative: sqrt(0.01^2 + 0.02^2); the factor's 5 % is gone; closed form.
        assertThat(u(ratio)).isCloseTo(2 * Math.hypot(0.01, 0.02), within(1e-12));
        assertThat(ratio.contribution("factor")).isCloseTo(0, within(1e-15));
    }

    @Test
    void unknownStaysUnknownAndIsNeverZero() {
        Estimate unknown = Estimate.unknown(5);
        assertThat(unknown.standardUncertainty()).isEmpty();
        assertThat(unknown.plus(Estimate.exact(1)).standardUncertainty()).isEmpty();
        assertThat(Estimate.exact(2).times(unknown).standardUncertainty()).isEmpty();
        assertThat(unknown.covariance(Estimate.exact(1))).isEmpty();
        assertThat(Estimate.of(1, "a", 1).with("b", Double.NaN).standardUncertainty())
                .isEmpty();
        assertThat(Estimate.exact(3).standardUncertainty()).hasValue(0);
    }

    @Test
    void divisionByNothingIsNotSure() {
        Estimate quotient = Estimate.of(1, "a", 0.1).dividedBy(Estimate.exact(0));
        assertThat(quotient.value()).isInfinite();
        assertThat(quotient.standardUncertainty()).isEmpty();
    }

    @Test
    void linearNeedsASlopeAnInput() {
        assertThatThrownBy(() -> Estimate.linear(0, List.of(Estimate.exact(1)), 1, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 for 1");
    }

    /** First-order results against draws: 20,000, so that the standard deviation is good to 0.5 %. */
    @Test
    void agreesWithDraws() {
        SplittableRandom seeds = new SplittableRandom(20260317);
        java.util.Random random = new java.util.Random(seeds.nextLong());
        Estimate a = Estimate.of(30, "shared", 0.3).with("a", 0.2);
        Estimate b = Estimate.of(20, "shared", -0.2).with("b", 0.1);
        Estimate result = a.times(b).plus(a).dividedBy(b.minus(Estimate.exact(3)));
        double sum = 0;
        double squares = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double shared = random.nextGaussian();
            double x = 30 + 0.3 * shared + 0.2 * random.nextGaussian();
            double y = 20 - 0.2 * shared + 0.1 * random.nextGaussian();
            double value = (x * y + x) / (y - 3);
            sum += value;
            squares += value * value;
        }
        double deviation = Math.sqrt(squares / n - (sum / n) * (sum / n));
        assertThat(u(result)).isCloseTo(deviation, within(0.03 * deviation));
    }
}
