package spotline.core;

import java.util.concurrent.CancellationException;

/** The last argument of anything that takes over 50 ms: a way to be stopped and to say how far it is. */
public interface Work {
    /** Errors: {@link CancellationException} when the work is no longer wanted. */
    void check();

    /**
     * @param done share of the work done, 0 to 1
     * @param what the thing being worked on, for a person
     */
    void progress(double done, String what);

    /** Never cancelled, tells nobody. */
    Work UNWATCHED = new Work() {
        @Override
        public void check() {}

        @Override
        public void progress(double done, String what) {}
    };
}
