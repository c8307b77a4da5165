package spotline.run.document;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.run.BoundedMemo;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.InputFiles;
import spotline.run.Memo;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.RunSource;
import spotline.run.SpectrumStore;
import spotline.run.findings.RuleBook;

/**
 * A document with its results: edits change the document at once, results follow. The newest document wins: what was being
 * computed for an older one is given up.
 *
 * <p>May be used from any thread. Spectrum files are read once and kept. Listeners are called through the executor that came
 * with them, one after the other in the order of what happened.
 */
public final class LivingRun implements AutoCloseable {
    /** A result with the document it is of. */
    public record Settled(RunDocument document, RunResult result) {}

    /** Is told what happens; each part may be left out. */
    public interface Listener {
        /** The document changed, or its history did. */
        default void edited(History history) {}

        /** @param done share of the settling done, 0 to 1 */
        default void progress(double done, String what) {}

        /** Results of the newest document are there. */
        default void settled(Settled settled) {}

        /** Settling was stopped by {@link #stop}: the newest result, if there is one, is of an older document. */
        default void stopped() {}

        /** The newest document could not be settled: a file that it names is missing or wrong. */
        default void failed(Exception fault) {}
    }

    private record Listening(Executor executor, Listener listener) {}

    /** What settling is given up for: a newer document. */
    private static final class Superseded extends CancellationException {
        private static final long serialVersionUID = 1;
    }

    /** Step results remembered: enough for a few states of every spot. */
    private static final int KEPT = 2000;

    private static final int KEPT_PER_SPOT = 100;

    private final InputFiles inputs;
    private final HandEdits policy;
    private final Keeper keeper;
    private final int threads;
    private final ReferenceData reference = ReferenceData.shipped();
    private final SpectrumStore store = new SpectrumStore();
    private final HolderRunLoader loader;
    private final RunPipeline pipeline;
    private final List<Listening> listeners = new CopyOnWriteArrayList<>();
    private final Object settling = new Object();
    private volatile History history;
    private volatile @Nullable Settled latest;
    private volatile @Nullable RunDocument unwanted;
    private @Nullable ExecutorService background;

    /**
     * @param inputs where the files are that the document names
     * @param policy what an edit by hand must say of itself
     * @param keeper is given each operation before it counts as done
     * @param threads that spots are treated in
     */
    public LivingRun(
            History history, InputFiles inputs, HandEdits policy, Keeper keeper, String programVersion, int threads) {
        this.history = history;
        this.inputs = inputs;
        this.policy = policy;
        this.keeper = keeper;
        this.threads = threads;
        Memo memo = new BoundedMemo(
                KEPT + KEPT_PER_SPOT * history.document().treatments().size());
        this.loader = new HolderRunLoader(reference, store, memo);
        this.pipeline = new RunPipeline(reference, programVersion, RuleBook.standard(), memo);
    }

    public History history() {
        return history;
    }

    public RunDocument document() {
        return history.document();
    }

    /** The newest result there is, which may be of an older document than {@link #document()}. */
    public Optional<Settled> latest() {
        return Optional.ofNullable(latest);
    }

    /** Whether {@link #latest()} is of the document as it is now. */
    public boolean isSettled() {
        Settled settled = latest;
        return settled != null && settled.document() == history.document();
    }

    /** @param executor runs the listener: a screen gives its own event thread */
    public void listen(Executor executor, Listener listener) {
        listeners.add(new Listening(executor, listener));
    }

    public void forget(Listener listener) {
        listeners.removeIf(l -> l.listener() == listener);
    }

    /** From now on every change is settled in a thread of the run's own, until it is closed. */
    public synchronized void follow() {
        if (background != null) return;
        background = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "spotline-settle");
            thread.setDaemon(true);
            return thread;
        });
        settleSoon();
    }

    /**
     * Errors: {@link ReadException} when the edit by hand does not say what is asked for, the result would not be a valid
     * document, or the keeper cannot keep the edit; nothing is changed then.
     */
    public History apply(Edit edit) throws ReadException {
        policy.check(edit);
        return done(new Operation.Apply(edit));
    }

    /** Takes the last edit back; does nothing where there is none. */
    public History undo() throws ReadException {
        return done(new Operation.Undo());
    }

    /** Does again what was undone last; does nothing where nothing was. */
    public History redo() throws ReadException {
        return done(new Operation.Redo());
    }

    public History checkpoint(String name, Optional<OffsetDateTime> when) throws ReadException {
        return done(new Operation.Mark(name, when));
    }

    /** Errors: {@link ReadException} for a name that no checkpoint has. */
    public History back(String checkpoint) throws ReadException {
        return done(new Operation.Back(checkpoint));
    }

    /** A report was made of the document as it is. */
    public History reported(Optional<OffsetDateTime> when) throws ReadException {
        return done(new Operation.Reported(when));
    }

    /**
     * Results of the newest document: computed here, in the caller's thread, unless they are there already. A change that
     * comes meanwhile makes it start over.
     *
     * <p>Errors: {@link ReadException} when a file that the document names, other than a spectrum, is missing or wrong;
     * {@link CancellationException} when the caller's work is cancelled or the run was told to {@link #stop}.
     */
    public RunResult settle(Work work) throws ReadException {
        while (true) {
            synchronized (settling) {
                RunDocument document = history.document();
                Settled known = latest;
                if (known != null && known.document() == document) return known.result();
                try {
                    Settled settled = new Settled(document, computed(document, new Newest(document, work)));
                    latest = settled;
                    tell(l -> l.settled(settled));
                } catch (Superseded e) {
                    work.check();
                }
            }
        }
    }

    /** Results of the document as it is are not wanted for now: what is being computed is given up. */
    public void stop() {
        unwanted = history.document();
    }

    /** After a {@link #stop}: results are wanted again. */
    public synchronized void goOn() {
        unwanted = null;
        settleSoon();
    }

    /** Files changed outside the program: all are read anew, and results follow. */
    public synchronized void reread() {
        store.forget();
        latest = null;
        settleSoon();
    }

    @Override
    public synchronized void close() {
        if (background != null) background.shutdownNow();
        background = null;
    }

    private RunResult computed(RunDocument document, Work work) throws ReadException {
        RunSource source = new RunSource(document.name(), document.file(), Optional.empty(), inputs, document.seed());
        HolderRun run = loader.load(source, work);
        return pipeline.treat(run, threads, work);
    }

    private synchronized History done(Operation operation) throws ReadException {
        History before = history;
        History next = operation.on(before);
        if (next == before) return next;
        keeper.keep(operation, next);
        history = next;
        tell(l -> l.edited(next));
        if (next.document() != before.document()) settleSoon();
        return next;
    }

    private void settleSoon() {
        if (background == null) return;
        background.execute(() -> {
            try {
                settle(Work.UNWATCHED);
            } catch (CancellationException e) {
                // Stopped, or closed: then nobody waits for the result any more.
                if (unwanted == history.document()) tell(Listener::stopped);
            } catch (ReadException | RuntimeException e) {
                tell(l -> l.failed(e));
            }
        });
    }

    private void tell(Consumer<Listener> what) {
        for (Listening l : listeners) l.executor().execute(() -> what.accept(l.listener()));
    }

    /** Gives up as soon as the document is no longer the newest. */
    private final class Newest implements Work {
        private final RunDocument document;
        private final Work given;

        Newest(RunDocument document, Work given) {
            this.document = document;
            this.given = given;
        }

        @Override
        public void check() {
            given.check();
            if (Thread.currentThread().isInterrupted()) throw new CancellationException("interrupted");
            if (history.document() != document) throw new Superseded();
            if (unwanted == document) throw new CancellationException("stopped");
        }

        @Override
        public void progress(double done, String what) {
            given.progress(done, what);
            tell(l -> l.progress(done, what));
        }
    }
}
