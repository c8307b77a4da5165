package spotline.run;

import java.lang.management.ManagementFactory;

/** Holds one input to a bounded time of the processor, so that the machine's other work does not count. */
final class CpuLimit {
    private static final long NANOS = 2_000_000_000L;

    private final long start = now();

    /** Errors: {@link AssertionError} when more than two seconds went by since this was made. */
    void check() {
        long taken = now() - start;
        if (taken > NANOS) throw new AssertionError("one input took " + taken / 1_000_000 + " ms of the processor");
    }

    private static long now() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }
}
