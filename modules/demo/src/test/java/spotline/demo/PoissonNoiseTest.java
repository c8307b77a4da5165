package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PoissonNoiseTest {
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 4, 9.99, 10, 37.5, 1200, 90_000})
    void meanVarianceAndThirdMomentArePoisson(double expectation) { // Poisson distribution, closed form
        int n = 100_000;
        PoissonNoise noise = PoissonNoise.stream(7, "moments " + expectation);
        double sum = 0;
        double square = 0;
        double cube = 0;
        for (int i = 0; i < n; i++) {
            double d = noise.draw(expectation) - expectation;
            sum += d;
            square += d * d;
            cube += d * d * d;
        }
        double sd = Math.sqrt(expectation);
        assertThat(sum / n).isCloseTo(0, within(4.5 * sd / Math.sqrt(n)));
        double varianceOfSquare = expectation + 2 * expectation * expectation;
        assertThat(square / n).isCloseTo(expectation, within(4.5 * Math.sqrt(varianceOfSquare / n)));
        double varianceOfCube = 15 * Math.pow(expectation, 3) + 24 * expectation * expectation + expectation;
        assertThat(cube / n).isCloseTo(expectation, within(4.5 * Math.sqrt(varianceOfCube / n)));
    }

    /** Chi-square over single counts: a wrong constant of the rejection would show here first. */
    @Test
    void singleCountsHaveTheirProbabilities() {
        double expectation = 14;
        int n = 400_000;
        PoissonNoise noise = PoissonNoise.stream(11, "cells");
        long[] seen = new long[60];
        for (int i = 0; i < n; i++) seen[(int) Math.min(59, noise.draw(expectation))]++;
        double chiSquare = 0;
        double probability = Math.exp(-expectation);
        int cells = 0;
        for (int k = 0; k < 40; k++) {
            double expected = n * probability;
            if (expected > 20) {
                chiSquare += (seen[k] - expected) * (seen[k] - expected) / expected;
                cells++;
            }
            probability *= expectation / (k + 1);
        }
        assertThat(chiSquare).isBetween(cells - 4 * Math.sqrt(2.0 * cells), cells + 4 * Math.sqrt(2.0 * cells));
    }

    @Test
    void aBlockDrawsTheSameCountsAgainAndAnotherOneOthers() {
        assertThat(PoissonNoise.stream(1, "a").draw(5000))
                .isEqualTo(PoissonNoise.stream(1, "a").draw(5000));
        assertThat(PoissonNoise.stream(1, "a").draw(5e9))
                .isNotEqualTo(PoissonNoise.stream(1, "b").draw(5e9));
        assertThat(PoissonNoise.stream(1, "a").draw(5e9))
                .isNotEqualTo(PoissonNoise.stream(2, "a").draw(5e9));
    }

    @Test
    void aNegativeExpectationIsRefused() {
        assertThatThrownBy(() -> PoissonNoise.stream(1, "a").draw(-0.1)).isInstanceOf(IllegalArgumentException.class);
    }
}
