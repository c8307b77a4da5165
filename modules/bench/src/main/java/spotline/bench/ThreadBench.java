package spotline.bench;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import spotline.numerics.fit.FitWorker;

/**
 * (d) with one and with two threads, spectra striped, workers of their own; in turn with a kernel of nothing but arithmetic,
 * which shows what a second thread can bring on the machine. Wall time: worth reading on a quiet machine only.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 12, time = 1)
@Fork(2)
public class ThreadBench {
    private static final int COUNT = 1024;
    private static final int ARITHMETIC = 20_000;

    private final List<FitCase> cases = FitCase.batch(COUNT);
    private final ExecutorService pool = Executors.newFixedThreadPool(2);
    private final FitWorker[][] workers = {{new FitWorker(), new FitWorker()}, {new FitWorker(), new FitWorker()}};

    /** Wall time of the four ways. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Walls {
        public long fitsOneThread;
        public long fitsTwoThreads;
        public long arithmeticOneThread;
        public long arithmeticTwoThreads;
    }

    @TearDown
    public void close() {
        pool.shutdown();
    }

    /** Pairs, so that each thread sees both kinds of model. */
    private double fits(int thread, int threads) {
        double sum = 0;
        for (int i = 2 * thread; i < COUNT; i += 2 * threads) {
            sum += Peers.spotline(workers[thread][0], cases.get(i).problem()).chiSquare();
            sum += Peers.spotline(workers[thread][1], cases.get(i + 1).problem())
                    .chiSquare();
        }
        return sum;
    }

    private static double arithmetic(int thread, int threads) {
        double sum = 0;
        for (int i = thread; i < COUNT; i += threads) {
            double a = i;
            double b = i + 0.5;
            double c = i + 0.25;
            double d = i + 0.75;
            for (int k = 0; k < ARITHMETIC; k++) {
                a = Math.fma(a, 0.999, 0.1);
                b = Math.fma(b, 0.998, 0.1);
                c = Math.fma(c, 0.997, 0.1);
                d = Math.fma(d, 0.996, 0.1);
            }
            sum += a + b + c + d;
        }
        return sum;
    }

    @Benchmark
    public void sideBySide(Walls walls, Blackhole hole) throws InterruptedException, ExecutionException {
        long since = System.nanoTime();
        hole.consume(fits(0, 1));
        walls.fitsOneThread += System.nanoTime() - since;
        since = System.nanoTime();
        Future<Double> other = pool.submit(() -> fits(1, 2));
        hole.consume(fits(0, 2));
        hole.consume(other.get());
        walls.fitsTwoThreads += System.nanoTime() - since;
        since = System.nanoTime();
        hole.consume(arithmetic(0, 1));
        walls.arithmeticOneThread += System.nanoTime() - since;
        since = System.nanoTime();
        other = pool.submit(() -> arithmetic(1, 2));
        hole.consume(arithmetic(0, 2));
        hole.consume(other.get());
        walls.arithmeticTwoThreads += System.nanoTime() - since;
    }
}
