package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScansTest {
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 9, 12, 300, 20000})
    void drawsHaveThePoissonMeanAndVariance(double mean) {
        int n = 20_000;
        Random random = Scans.random(1);
        double[] counts = Scans.poisson(Scans.scan(Scans.grid(0, 1, n), e -> mean), random)
                .counts();
        double sum = 0;
        double squares = 0;
        for (double count : counts) {
            sum += count;
            squares += (count - mean) * (count - mean);
        }
        assertThat(sum / n).isCloseTo(mean, within(4 * Math.sqrt(mean / n)));
        assertThat(squares / n / mean).isCloseTo(1, within(4 * Math.sqrt((2 + 1 / mean) / n)));
    }
}
