package spotline.numerics.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import spotline.core.Work;

class MonteCarloTest {
    private static final MonteCarlo.Trial TRIAL = random -> {
        double a = random.nextGaussian();
        return new double[] {a, random.nextDouble() < 0.25 ? Double.NaN : a * a};
    };

    @Test
    void theResultDoesNotDependOnTheThreads() {
        MonteCarloResult alone = MonteCarlo.run(500, 11, List.of("spot 1"), TRIAL, Runnable::run, Work.UNWATCHED);
        ExecutorService pool = Executors.newFixedThreadPool(3);
        try {
            MonteCarloResult together = MonteCarlo.run(500, 11, List.of("spot 1"), TRIAL, pool, Work.UNWATCHED);
            for (int k = 0; k < 2; k++) {
                assertThat(together.sortedValues(k)).containsExactly(alone.sortedValues(k));
            }
        } finally {
            pool.shutdownNow();
        }
        MonteCarloResult other = MonteCarlo.run(500, 11, List.of("spot 2"), TRIAL, Runnable::run, Work.UNWATCHED);
        assertThat(other.sortedValues(0)).isNotEqualTo(alone.sortedValues(0));
    }

    @Test
    void anExecutorThatNeverRunsAnythingDoesToo() {
        MonteCarloResult result = MonteCarlo.run(50, 1, List.of(), TRIAL, task -> {}, Work.UNWATCHED);
        assertThat(result.count(0)).isEqualTo(50);
    }

    @Test
    void momentsAndQuantilesOfANormalDistribution() {
        MonteCarloResult result = MonteCarlo.run(20_000, 2, List.of("moments"), TRIAL, Runnable::run, Work.UNWATCHED);
        assertThat(result.trials()).isEqualTo(20_000);
        assertThat(result.mean(0).orElseThrow()).isCloseTo(0, within(0.03));
        assertThat(result.standardDeviation(0).orElseThrow()).isCloseTo(1, within(0.025));
        assertThat(result.median(0).orElseThrow()).isCloseTo(0, within(0.04));
        assertThat(result.quantile(0, 0.975).orElseThrow()).isCloseTo(1.96, within(0.08));
        assertThat(result.count(1)).isBetween(14_500, 15_500);
    }

    @Test
    void quantilesAreInterpolatedBetweenRanks() {
        AtomicInteger next = new AtomicInteger();
        MonteCarloResult result = MonteCarlo.run(
                5, 1, List.of(), random -> new double[] {next.getAndIncrement() * 10}, task -> {}, Work.UNWATCHED);
        // derived: ranks 0 to 4
        assertThat(result.quantile(0, 0.5)).hasValue(20);
        assertThat(result.quantile(0, 0.1).orElseThrow()).isCloseTo(4, within(1e-12));
        assertThat(result.quantile(0, 1)).hasValue(40);
    }

    @Test
    void nothingKnownStaysUnknown() {
        MonteCarloResult result =
                MonteCarlo.run(3, 1, List.of(), random -> new double[] {Double.NaN}, Runnable::run, Work.UNWATCHED);
        assertThat(result.mean(0)).isEmpty();
        assertThat(result.standardDeviation(0)).isEmpty();
        assertThat(result.median(0)).isEmpty();
    }

    @Test
    void whatATrialThrowsComesOut() {
        assertThatThrownBy(() -> MonteCarlo.run(
                        20,
                        1,
                        List.of(),
                        random -> {
                            throw new IllegalStateException("broken");
                        },
                        Runnable::run,
                        Work.UNWATCHED))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("broken");
    }

    @Test
    void cancellingStopsIt() {
        AtomicInteger checks = new AtomicInteger();
        Work work = new Work() {
            @Override
            public void check() {
                if (checks.incrementAndGet() > 10) throw new CancellationException();
            }

            @Override
            public void progress(double done, String what) {}
        };
        AtomicInteger runs = new AtomicInteger();
        assertThatThrownBy(() -> MonteCarlo.run(
                        1000, 1, List.of(), random -> new double[] {runs.incrementAndGet()}, Runnable::run, work))
                .isInstanceOf(CancellationException.class);
        assertThat(runs.get()).isEqualTo(10);
    }
}
