package spotline.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import spotline.numerics.fit.FitWorker;

/** (d) 4096 small fits of one or two Voigts on 241 channels: all peers in turn on stretches of the batch. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(2)
public class BatchBench {
    static final int COUNT = 4096;
    private static final int STRETCH = 64;

    private final List<FitCase> cases = FitCase.batch(COUNT);
    private final FitWorker[] workers = {new FitWorker(), new FitWorker()};
    private int at;

    @Setup
    public void chiSquares() {
        double worst = 0;
        for (FitCase fit : cases) {
            double ours = Peers.spotline(fit.problem()).chiSquare();
            double theirs = fit.peer().chiSquare(Peers.commons(fit.peer(), true));
            worst = Math.max(worst, Math.abs(ours / theirs - 1));
        }
        System.out.println("largest relative difference of chi-square to commons analytic: " + worst);
    }

    @Benchmark
    public void sideBySide(Times times, Blackhole hole) {
        at = (at + STRETCH) % COUNT;
        long since = Times.now();
        for (int i = at; i < at + STRETCH; i++) {
            hole.consume(Peers.spotline(workers[i % 2], cases.get(i).problem()));
        }
        times.spotline(since, STRETCH);
        since = Times.now();
        for (int i = at; i < at + 8; i++)
            hole.consume(Peers.commons(cases.get(i).peer(), true));
        times.commonsAnalytic(since, 8);
        since = Times.now();
        for (int i = at; i < at + 8; i++)
            hole.consume(Peers.hipparchus(cases.get(i).peer()));
        times.hipparchusAnalytic(since, 8);
        since = Times.now();
        for (int i = at; i < at + 2; i++)
            hole.consume(Peers.commons(cases.get(i).peer(), false));
        times.commonsDifferences(since, 2);
    }

    @Benchmark
    @OperationsPerInvocation(STRETCH)
    public void spotlineAlone(Blackhole hole) {
        at = (at + STRETCH) % COUNT;
        for (int i = at; i < at + STRETCH; i++) {
            hole.consume(Peers.spotline(workers[i % 2], cases.get(i).problem()));
        }
    }
}
