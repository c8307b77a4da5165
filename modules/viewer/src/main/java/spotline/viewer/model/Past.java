package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import spotline.core.ReadException;
import spotline.run.document.Checkpoint;
import spotline.run.document.Edit;
import spotline.run.document.History;
import spotline.run.document.LivingRun;
import spotline.run.document.SpotException;

/** What was done to the run: undo and redo, named checkpoints, what changed since the last report. */
public final class Past {
    /** Where an edit stands. */
    public enum Standing {
        DONE,
        UNDONE
    }

    /**
     * An edit, or the state that was opened.
     *
     * @param number 0 for the state that was opened
     * @param sinceReport whether the last report does not know it yet
     * @param checkpoints names of this state
     */
    public record Entry(
            long number,
            Optional<Edit> edit,
            Standing standing,
            boolean now,
            boolean sinceReport,
            List<String> checkpoints) {
        public Entry {
            checkpoints = List.copyOf(checkpoints);
        }
    }

    /**
     * @param entries the state that was opened first, then edits in their order, those to redo last
     * @param elsewhere checkpoints on a branch that was left
     * @param takenBack titles of edits that the last report knew and that are not in force any more
     * @param reported whether a report was made at all
     */
    public record Shown(List<Entry> entries, List<String> elsewhere, List<String> takenBack, boolean reported) {
        static final Shown NOTHING = new Shown(List.of(), List.of(), List.of(), false);

        public Shown {
            entries = List.copyOf(entries);
            elsewhere = List.copyOf(elsewhere);
            takenBack = List.copyOf(takenBack);
        }

        static Shown of(History history) {
            List<History.Numbered> done = history.done();
            History.Since since = history.sinceReport();
            int known = history.lastReport().isEmpty()
                    ? done.size()
                    : done.size() - since.made().size();
            List<Entry> entries = new ArrayList<>();
            entries.add(new Entry(0, Optional.empty(), Standing.DONE, done.isEmpty(), false, named(history, 0)));
            for (int i = 0; i < done.size(); i++) {
                History.Numbered n = done.get(i);
                boolean last = i == done.size() - 1;
                entries.add(new Entry(
                        n.number(),
                        Optional.of(n.edit()),
                        Standing.DONE,
                        last,
                        i >= known,
                        named(history, n.number())));
            }
            for (History.Numbered n : history.undone()) {
                entries.add(new Entry(
                        n.number(), Optional.of(n.edit()), Standing.UNDONE, false, false, named(history, n.number())));
            }
            Set<Long> here = entries.stream().map(Entry::number).collect(Collectors.toSet());
            return new Shown(
                    entries,
                    history.checkpoints().stream()
                            .filter(c -> !here.contains(c.edit()))
                            .map(Checkpoint::name)
                            .toList(),
                    since.takenBack().stream().map(Edit::title).toList(),
                    history.lastReport().isPresent());
        }

        private static List<String> named(History history, long number) {
            return history.checkpoints().stream()
                    .filter(c -> c.edit() == number)
                    .map(Checkpoint::name)
                    .toList();
        }
    }

    /** Something done to a run that may be refused. */
    private interface Doing {
        History on(LivingRun run) throws ReadException;
    }

    private final Workbench bench;
    private final StringProperty undoable = new SimpleStringProperty("");
    private final StringProperty redoable = new SimpleStringProperty("");
    private final ObjectProperty<Shown> shown = new SimpleObjectProperty<>(Shown.NOTHING);

    Past(Workbench bench) {
        this.bench = bench;
    }

    void show(History history) {
        undoable.set(history.lastDone().map(Edit::title).orElse(""));
        redoable.set(history.nextUndone().map(Edit::title).orElse(""));
        shown.set(Shown.of(history));
    }

    public void undo() {
        if (!undoable.get().isEmpty()) change(LivingRun::undo);
    }

    public void redo() {
        if (!redoable.get().isEmpty()) change(LivingRun::redo);
    }

    /** Undoes or does again until the state after an edit is reached; 0 is the state that was opened. */
    public void goTo(long number) {
        List<Entry> entries = shown.get().entries();
        int to = -1;
        int now = 0;
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).number() == number) to = i;
            if (entries.get(i).now()) now = i;
        }
        if (to < 0 || to == now) return;
        int steps = to - now;
        change(run -> {
            History last = run.history();
            for (int i = 0; i < Math.abs(steps); i++) last = steps < 0 ? run.undo() : run.redo();
            return last;
        });
    }

    /** Gives the state a name, to which {@link #back} leads. */
    public void checkpoint(String name) {
        if (!name.isBlank()) mark(run -> run.checkpoint(name.strip(), Optional.of(bench.now())));
    }

    public void back(String checkpoint) {
        change(run -> run.back(checkpoint));
    }

    /** Results left the program as they are now. */
    public void reported() {
        mark(run -> run.reported(Optional.of(bench.now())));
    }

    private void change(Doing doing) {
        if (bench.living().isEmpty()) return;
        bench.signing().drop();
        bench.fits().end();
        bench.refresh();
        if (mark(doing) && !bench.living().get().isSettled()) bench.busy().set(true);
    }

    private boolean mark(Doing doing) {
        if (bench.living().isEmpty()) return false;
        try {
            show(doing.on(bench.living().get()));
            return true;
        } catch (ReadException e) {
            bench.failed(String.valueOf(e.getMessage()));
            return false;
        }
    }

    /** Settings in which single spots differ from their families and the holder. */
    public List<SpotException> exceptions() {
        return bench.living().map(r -> r.history().exceptions()).orElse(List.of());
    }

    /** SHA-256 of the document as it is; empty while nothing is open. */
    public String stateHash() {
        return bench.living().map(r -> r.document().hash()).orElse("");
    }

    /** What undo would take back; empty when nothing. */
    public StringProperty undoable() {
        return undoable;
    }

    /** What redo would do again; empty when nothing. */
    public StringProperty redoable() {
        return redoable;
    }

    public ObjectProperty<Shown> shown() {
        return shown;
    }
}
