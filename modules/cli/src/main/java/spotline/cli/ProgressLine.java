package spotline.cli;

import java.io.PrintWriter;
import java.util.concurrent.CancellationException;
import spotline.core.Work;

/** Progress on one line of standard error, shown only on a terminal and only after a second. */
final class ProgressLine implements Work, AutoCloseable {
    private static final long PATIENCE_NANOS = 1_000_000_000L;

    private final CommandEnvironment environment;
    private final long started = System.nanoTime();
    private boolean shown;

    ProgressLine(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public void check() {
        if (Thread.currentThread().isInterrupted()) throw new CancellationException("interrupted");
    }

    @Override
    public synchronized void progress(double done, String what) {
        if (!environment.terminal() || System.nanoTime() - started < PATIENCE_NANOS) return;
        PrintWriter err = environment.err();
        err.printf("\r%3.0f %%  %-60s", 100 * done, what);
        err.flush();
        shown = true;
    }

    @Override
    public synchronized void close() {
        if (!shown) return;
        environment.err().print("\r" + " ".repeat(68) + "\r");
        environment.err().flush();
    }
}
