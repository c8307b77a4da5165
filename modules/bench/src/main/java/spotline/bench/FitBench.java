package spotline.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitWorker;

/** One fit by all peers in turn, and by the product alone for what it allocates. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(2)
public abstract class FitBench {
    private static final int TURNS = 8;

    private final FitCase fit;
    private final FitWorker worker = new FitWorker();

    FitBench(FitCase fit) {
        this.fit = fit;
    }

    @Setup
    public void chiSquares() {
        System.out.println(Peers.chiSquares(fit));
    }

    @Benchmark
    public void sideBySide(Times times, Blackhole hole) {
        long since = Times.now();
        for (int i = 0; i < TURNS; i++) hole.consume(Peers.spotline(worker, fit.problem()));
        times.spotline(since, TURNS);
        since = Times.now();
        hole.consume(Peers.commons(fit.peer(), true));
        times.commonsAnalytic(since, 1);
        since = Times.now();
        hole.consume(Peers.hipparchus(fit.peer()));
        times.hipparchusAnalytic(since, 1);
        since = Times.now();
        hole.consume(Peers.commons(fit.peer(), false));
        times.commonsDifferences(since, 1);
    }

    @Benchmark
    public FitResult spotlineAlone() {
        return Peers.spotline(worker, fit.problem());
    }
}
