package spotline.numerics.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RandomStreamsTest {
    // frozen output: a change of the streams changes every seeded result
    @Test
    void theStreamsAreWhatTheyWere() {
        RandomGenerator random = RandomStreams.stream(42, "spot 1", "block 3", "bootstrap");
        assertThat(new long[] {random.nextLong(), random.nextLong(), random.nextLong()})
                .containsExactly(-3285102651912635885L, 8084724878808967635L, -4442948136671251499L);
    }

    @Test
    void keysAreNotRunTogether() {
        Set<Long> first = new HashSet<>();
        String[][] keys = {{}, {""}, {"", ""}, {"ab", "c"}, {"a", "bc"}, {"abc"}, {"c", "ab"}, {"abc", ""}, {"", "abc"}
        };
        for (String[] key : keys) first.add(RandomStreams.stream(1, key).nextLong());
        for (long seed = 2; seed < 50; seed++)
            first.add(RandomStreams.stream(seed, "abc").nextLong());
        assertThat(first).hasSize(keys.length + 48);
    }

    @Test
    void aStreamStartsAnewForTheSameKey() {
        RandomGenerator one = RandomStreams.stream(5, "a");
        RandomGenerator two = RandomStreams.stream(5, "a");
        for (int i = 0; i < 1000; i++) assertThat(one.nextLong()).isEqualTo(two.nextLong());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.7, 3, 12, 29.9, 30.1, 47, 400, 1e4, 3e6})
    void countsHaveTheDistributionOfPoisson(double mean) {
        RandomGenerator random = RandomStreams.stream(3, "poisson", Double.toString(mean));
        int n = 40_000;
        double sum = 0;
        double squares = 0;
        double cubes = 0;
        for (int i = 0; i < n; i++) {
            double gap = PoissonSampler.sample(random, mean) - mean;
            sum += gap;
            squares += gap * gap;
            cubes += gap * gap * gap;
        }
        // derived: central moments mu, mu and mu of orders 2, 3; five standard deviations of their estimates
        assertThat(sum / n).isCloseTo(0, within(5 * Math.sqrt(mean / n)));
        assertThat(squares / n).isCloseTo(mean, within(5 * Math.sqrt((mean + 2 * mean * mean) / n)));
        double sixth = mean + 25 * mean * mean + 15 * mean * mean * mean;
        assertThat(cubes / n).isCloseTo(mean, within(5 * Math.sqrt(sixth / n)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 35})
    void everyCountComesAsOftenAsItShould(double mean) {
        RandomGenerator random = RandomStreams.stream(4, "frequencies", Double.toString(mean));
        int n = 200_000;
        int[] seen = new int[200];
        for (int i = 0; i < n; i++) seen[(int) PoissonSampler.sample(random, mean)]++;
        double probability = Math.exp(-mean);
        double chiSquare = 0;
        int classes = 0;
        for (int k = 0; k < seen.length; k++) {
            if (k > 0) probability *= mean / k;
            double expected = n * probability;
            if (expected < 20) continue;
            chiSquare += (seen[k] - expected) * (seen[k] - expected) / expected;
            classes++;
        }
        assertThat(chiSquare).isBetween(classes - 5 * Math.sqrt(2.0 * classes), classes + 5 * Math.sqrt(2.0 * classes));
    }

    @Test
    void refusesMeansThatAreNone() {
        RandomGenerator random = RandomStreams.stream(1);
        assertThat(PoissonSampler.sample(random, 0)).isZero();
        for (double mean : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> PoissonSampler.sample(random, mean)).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
