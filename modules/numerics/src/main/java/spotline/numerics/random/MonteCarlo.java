package spotline.numerics.random;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import spotline.core.Work;

/**
 * Propagation of distributions by repeated evaluation of a pure function (JCGM 101:2008, GUM supplement 1).
 *
 * <p>Trial i draws from a stream of its own, made of the seed, the key and i: the result does not depend on the executor, on
 * the number of threads or on their order.
 */
public final class MonteCarlo {
    private static final int MOST_HELPERS = 64;

    private MonteCarlo() {}

    /** One trial: draws what it needs, returns its results, NaN where it has none. Must be pure but for the generator. */
    @FunctionalInterface
    public interface Trial {
        double[] run(RandomGenerator random);
    }

    /**
     * Runs all trials. The calling thread takes part, so that an executor that is busy, or runs tasks in the calling thread,
     * does as well.
     *
     * <p>Errors: what a trial throws; {@link java.util.concurrent.CancellationException} when the work is cancelled.
     */
    public static MonteCarloResult run(
            int trials, long seed, List<String> key, Trial trial, Executor executor, Work work) {
        if (trials < 1) throw new IllegalArgumentException("trials must be 1 or more, was " + trials);
        Run run = new Run(trials, seed, List.copyOf(key), trial, work);
        for (int i = 0; i < Math.min(trials - 1, MOST_HELPERS); i++) executor.execute(run);
        run.run();
        return run.result();
    }

    private static final class Run implements Runnable {
        private final double[][] results;
        private final long seed;
        private final String[] key;
        private final Trial trial;
        private final Work work;
        private final AtomicInteger next = new AtomicInteger();
        private final CountDownLatch open;
        private final AtomicReference<@Nullable Throwable> failure = new AtomicReference<>();

        Run(int trials, long seed, List<String> key, Trial trial, Work work) {
            results = new double[trials][];
            this.seed = seed;
            this.key = key.toArray(new String[key.size() + 1]);
            this.trial = trial;
            this.work = work;
            open = new CountDownLatch(trials);
        }

        @Override
        public void run() {
            for (int i = next.getAndIncrement(); i < results.length; i = next.getAndIncrement()) {
                try {
                    if (failure.get() == null) one(i);
                } catch (RuntimeException | Error e) {
                    failure.compareAndSet(null, e);
                } finally {
                    open.countDown();
                }
            }
        }

        private void one(int i) {
            work.check();
            String[] own = key.clone();
            own[own.length - 1] = Integer.toString(i);
            results[i] = trial.run(RandomStreams.stream(seed, own));
            work.progress((double) (results.length - open.getCount()) / results.length, "trials");
        }

        MonteCarloResult result() {
            try {
                open.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                failure.compareAndSet(null, new java.util.concurrent.CancellationException("interrupted"));
            }
            Throwable thrown = failure.get();
            if (thrown instanceof Error error) throw error;
            if (thrown instanceof RuntimeException exception) throw exception;
            return MonteCarloResult.of(results);
        }
    }
}
