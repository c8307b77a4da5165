package spotline.viewer.model;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BooleanSupplier;

/** A workbench whose screen thread is the test's own. */
public final class Bench implements AutoCloseable {
    public static final Path DEMO = Path.of("..", "..", "demo-spectra", "footbridge-bearing.json");
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-01T10:00:00Z"), ZoneOffset.UTC);

    public static final Words WORDS = new Words(java.util.Locale.ROOT);

    private final Queue<Runnable> screen = new ConcurrentLinkedQueue<>();
    private final ExecutorService background = Executors.newSingleThreadExecutor();
    public final Workbench workbench = new Workbench(screen::add, background, WORDS, CLOCK, "test", 2);

    /** Does what the screen thread would do, until a condition holds; a minute at most. */
    public void until(BooleanSupplier condition) {
        long end = System.nanoTime() + 60_000_000_000L;
        while (!condition.getAsBoolean()) {
            Runnable next = screen.poll();
            if (next != null) next.run();
            else if (System.nanoTime() > end) throw new AssertionError("it did not happen within a minute");
            else Thread.onSpinWait();
        }
    }

    public Bench demo() {
        workbench.open(DEMO);
        settled();
        return this;
    }

    /** Until results of the newest document are there. */
    public void settled() {
        until(() -> workbench.result().get().isPresent() && !workbench.busy().get());
    }

    @Override
    public void close() {
        workbench.close();
        background.shutdownNow();
    }
}
