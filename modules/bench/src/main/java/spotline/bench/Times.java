package spotline.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * Processor time of this thread that each peer took, summed over an iteration. Peers take turns within milliseconds, so that
 * whatever else the machine does falls on all of them alike.
 */
@State(Scope.Thread)
@AuxCounters(AuxCounters.Type.EVENTS)
public class Times {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    public long spotlineNanos;
    public long spotlineFits;
    public long commonsAnalyticNanos;
    public long commonsAnalyticFits;
    public long commonsDifferencesNanos;
    public long commonsDifferencesFits;
    public long hipparchusAnalyticNanos;
    public long hipparchusAnalyticFits;

    static long now() {
        return THREADS.getCurrentThreadCpuTime();
    }

    void spotline(long since, int fits) {
        spotlineNanos += now() - since;
        spotlineFits += fits;
    }

    void commonsAnalytic(long since, int fits) {
        commonsAnalyticNanos += now() - since;
        commonsAnalyticFits += fits;
    }

    void commonsDifferences(long since, int fits) {
        commonsDifferencesNanos += now() - since;
        commonsDifferencesFits += fits;
    }

    void hipparchusAnalytic(long since, int fits) {
        hipparchusAnalyticNanos += now() - since;
        hipparchusAnalyticFits += fits;
    }
}
