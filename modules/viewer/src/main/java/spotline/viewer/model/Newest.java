package spotline.viewer.model;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import spotline.core.Work;

/** Numbers of previews, of which the newest alone is wanted. Used from any thread. */
final class Newest {
    private final AtomicLong last = new AtomicLong();

    /** The number of a new preview: every earlier one is unwanted from now on. */
    long next() {
        return last.incrementAndGet();
    }

    long get() {
        return last.get();
    }

    /** Stops what is done for a preview as soon as there is a newer one. */
    Work work(long mine) {
        return new Work() {
            @Override
            public void check() {
                if (mine != last.get()) throw new CancellationException("a newer preview is wanted");
            }

            @Override
            public void progress(double done, String what) {
                // Previews take a blink: nobody is told.
            }
        };
    }
}
