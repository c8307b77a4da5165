package spotline.bench.identify;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
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
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.identify.SurveyIdentification;
import spotline.core.Work;
import spotline.demo.corpus.SurveyCase;
import spotline.demo.corpus.SurveyCorpus;
import spotline.reference.ReferenceData;

/**
 * One survey of 1,361 channels, every element from lithium to uranium a candidate: simulated surveys in turn, the shift
 * unknown. An operation is one survey; beside its time the processor time of the thread is counted, which other load on
 * the machine does not touch.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 5, time = 10)
@Fork(1)
public class IdentifyBench {
    private static final int CHANNELS = 1361;
    private static final int CASES = 40;
    private static final long SEED = 20260101;

    private final SurveyIdentification identification =
            new SurveyIdentification(ReferenceData.shipped(), new IdentifySettings(2.4, 5, -12, 10, 1));
    private final List<SurveyCase> cases = new ArrayList<>();
    private int next;

    /** Processor time and surveys of an iteration: their quotient is milliseconds a survey. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Processor {
        private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

        public double processorMilliseconds;
        public long surveys;

        void count(long since) {
            processorMilliseconds += (THREADS.getCurrentThreadCpuTime() - since) / 1e6;
            surveys++;
        }
    }

    @Setup
    public void surveys() {
        SurveyCorpus corpus = new SurveyCorpus(SEED);
        for (int n = 0; cases.size() < CASES; n++) {
            SurveyCase survey = corpus.make(n);
            if (survey.scan().channels() == CHANNELS) cases.add(survey);
        }
    }

    @Benchmark
    public Identification identify(Processor processor) {
        SurveyCase survey = cases.get(next++ % CASES);
        long since = Processor.THREADS.getCurrentThreadCpuTime();
        Identification found = identification.identify(
                survey.scan(),
                survey.transmission(),
                Set.of(),
                OptionalDouble.empty(),
                survey.monochromated(),
                Work.UNWATCHED);
        processor.count(since);
        return found;
    }
}
