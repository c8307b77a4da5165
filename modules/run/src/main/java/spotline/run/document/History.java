package spotline.run.document;

import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import spotline.core.ReadException;

/**
 * A document with all that was done to it: a value, of which every operation gives another.
 *
 * <p>Edits form a tree. Undoing goes towards its root, an edit after that grows a new branch; a branch that was left is kept
 * as long as a checkpoint or the last report stands on it.
 */
public final class History {
    /** An edit with its number, which no other edit of the history has. */
    public record Numbered(long number, Edit edit) {}

    /** What changed since a report: edits it knew that were taken back, then edits it did not know. */
    public record Since(List<Edit> takenBack, List<Edit> made) {
        public Since {
            takenBack = List.copyOf(takenBack);
            made = List.copyOf(made);
        }

        public boolean nothing() {
            return takenBack.isEmpty() && made.isEmpty();
        }
    }

    /** A node of the tree; the root is null. */
    record Step(long number, @Nullable Step parent, Edit edit, int depth) {
        static int depth(@Nullable Step step) {
            return step == null ? 0 : step.depth();
        }
    }

    /** Steps to redo, the next one first. */
    record Undone(Step step, @Nullable Undone later) {}

    /** A checkpoint and where it stands. */
    record Marked(Checkpoint checkpoint, @Nullable Step step) {}

    private final RunDocument first;
    private final RunDocument document;
    private final @Nullable Step done;
    private final @Nullable Undone undone;
    private final List<Marked> checkpoints;
    private final Optional<Marked> report;
    private final long lastNumber;

    History(
            RunDocument first,
            RunDocument document,
            @Nullable Step done,
            @Nullable Undone undone,
            List<Marked> checkpoints,
            Optional<Marked> report,
            long lastNumber) {
        this.first = first;
        this.document = document;
        this.done = done;
        this.undone = undone;
        this.checkpoints = List.copyOf(checkpoints);
        this.report = report;
        this.lastNumber = lastNumber;
    }

    /** A document to which nothing was done yet. */
    public static History of(RunDocument document) {
        return new History(document, document, null, null, List.of(), Optional.empty(), 0);
    }

    /** The document as it is now. */
    public RunDocument document() {
        return document;
    }

    /** The document as it was first. */
    public RunDocument first() {
        return first;
    }

    /** Edits in force, the first one first. */
    public List<Numbered> done() {
        return path(done);
    }

    /** Edits to redo, the next one first. */
    public List<Numbered> undone() {
        List<Numbered> list = new ArrayList<>();
        for (Undone u = undone; u != null; u = u.later())
            list.add(new Numbered(u.step().number(), u.step().edit()));
        return list;
    }

    /** What {@link #undo} would take back. */
    public Optional<Edit> lastDone() {
        return Optional.ofNullable(done).map(Step::edit);
    }

    /** What {@link #redo} would do again. */
    public Optional<Edit> nextUndone() {
        return Optional.ofNullable(undone).map(u -> u.step().edit());
    }

    /** Checkpoints in the order they were set. */
    public List<Checkpoint> checkpoints() {
        return checkpoints.stream().map(Marked::checkpoint).toList();
    }

    /** Errors: {@link ReadException} when the result would not be a valid document; this history is left as it is. */
    public History apply(Edit edit) throws ReadException {
        RunDocument changed = edit.applied(document);
        Step step = new Step(lastNumber + 1, done, edit, Step.depth(done) + 1);
        return new History(first, changed, step, null, checkpoints, report, lastNumber + 1);
    }

    /** The state before the last edit; this history where there is none. */
    public History undo() throws ReadException {
        if (done == null) return this;
        RunDocument changed = done.edit().inverse().applied(document);
        return new History(first, changed, done.parent(), new Undone(done, undone), checkpoints, report, lastNumber);
    }

    /** The state after the edit that was undone last; this history where there is none. */
    public History redo() throws ReadException {
        if (undone == null) return this;
        RunDocument changed = undone.step().edit().applied(document);
        return new History(first, changed, undone.step(), undone.later(), checkpoints, report, lastNumber);
    }

    /** Gives the state a name; one of that name set before stands here now. */
    public History checkpoint(String name, Optional<OffsetDateTime> when) {
        List<Marked> all = new ArrayList<>(checkpoints);
        all.removeIf(m -> m.checkpoint().name().equals(name));
        all.add(new Marked(new Checkpoint(name, number(done), when), done));
        return new History(first, document, done, undone, all, report, lastNumber);
    }

    /**
     * The state a checkpoint stands at. Edits after it can be redone where they follow it; else they are left on their
     * branch, which a checkpoint should hold.
     *
     * <p>Errors: {@link IllegalArgumentException} for a name that no checkpoint has.
     */
    public History back(String name) throws ReadException {
        Marked marked = checkpoints.stream()
                .filter(m -> m.checkpoint().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no checkpoint is called " + name));
        Step target = marked.step();
        Step common = common(done, target);
        RunDocument changed = document;
        Undone toRedo = undone;
        for (Step s = done; s != null && s != common; s = s.parent()) {
            changed = s.edit().inverse().applied(changed);
            toRedo = new Undone(s, toRedo);
        }
        Deque<Step> forward = new ArrayDeque<>();
        for (Step s = target; s != null && s != common; s = s.parent()) forward.push(s);
        for (Step s : forward) changed = s.edit().applied(changed);
        return new History(first, changed, target, forward.isEmpty() ? toRedo : null, checkpoints, report, lastNumber);
    }

    /** A report was made of this state. */
    public History reported(Optional<OffsetDateTime> when) {
        Marked here = new Marked(new Checkpoint("report", number(done), when), done);
        return new History(first, document, done, undone, checkpoints, Optional.of(here), lastNumber);
    }

    /** When the last report was made, and of which state; empty when none was. */
    public Optional<Checkpoint> lastReport() {
        return report.map(Marked::checkpoint);
    }

    /** What changed since the last report, or since the beginning when there was none. */
    public Since sinceReport() {
        Step known = report.map(Marked::step).orElse(null);
        Step common = common(done, known);
        List<Edit> takenBack = new ArrayList<>();
        for (Step s = known; s != null && s != common; s = s.parent()) takenBack.add(s.edit());
        List<Edit> made = new ArrayList<>();
        for (Step s = done; s != null && s != common; s = s.parent()) made.add(s.edit());
        Collections.reverse(made);
        return new Since(takenBack, made);
    }

    /** The history as data, from which {@link #of(HistoryRecord)} makes it again. */
    public HistoryRecord record() {
        Map<Long, HistoryRecord.Node> nodes = new TreeMap<>();
        collect(done, nodes);
        List<Long> redo = new ArrayList<>();
        for (Undone u = undone; u != null; u = u.later()) {
            collect(u.step(), nodes);
            redo.add(u.step().number());
        }
        for (Marked m : checkpoints) collect(m.step(), nodes);
        report.ifPresent(m -> collect(m.step(), nodes));
        return new HistoryRecord(
                first,
                document,
                List.copyOf(nodes.values()),
                number(done),
                redo,
                checkpoints(),
                lastReport(),
                lastNumber);
    }

    /** Errors: {@link IllegalArgumentException} when a number in the record names no edit of it. */
    public static History of(HistoryRecord record) {
        Map<Long, Step> steps = new HashMap<>();
        for (HistoryRecord.Node node : record.edits()) {
            Step parent = step(steps, node.after());
            steps.put(node.number(), new Step(node.number(), parent, node.edit(), Step.depth(parent) + 1));
        }
        Undone redo = null;
        for (int i = record.undone().size() - 1; i >= 0; i--) {
            Step step = step(steps, record.undone().get(i));
            if (step == null) throw new IllegalArgumentException("the document as it was first cannot be redone");
            redo = new Undone(step, redo);
        }
        List<Marked> marks = new ArrayList<>();
        for (Checkpoint c : record.checkpoints()) marks.add(new Marked(c, step(steps, c.edit())));
        Optional<Marked> report = record.report().map(c -> new Marked(c, step(steps, c.edit())));
        return new History(
                record.first(),
                record.document(),
                step(steps, record.done()),
                redo,
                marks,
                report,
                record.lastNumber());
    }

    private static @Nullable Step step(Map<Long, Step> steps, long number) {
        if (number == 0) return null;
        Step step = steps.get(number);
        if (step == null) throw new IllegalArgumentException("edit " + number + " is named, but not there before");
        return step;
    }

    private static void collect(@Nullable Step end, Map<Long, HistoryRecord.Node> nodes) {
        for (Step s = end; s != null && !nodes.containsKey(s.number()); s = s.parent()) {
            nodes.put(s.number(), new HistoryRecord.Node(s.number(), number(s.parent()), s.edit()));
        }
    }

    /** Settings in which spots differ from their families or the holder. */
    public List<SpotException> exceptions() {
        return SpotException.of(document.file());
    }

    private static long number(@Nullable Step step) {
        return step == null ? 0 : step.number();
    }

    private static List<Numbered> path(@Nullable Step end) {
        List<Numbered> list = new ArrayList<>();
        for (Step s = end; s != null; s = s.parent()) list.add(new Numbered(s.number(), s.edit()));
        Collections.reverse(list);
        return list;
    }

    private static @Nullable Step common(@Nullable Step a, @Nullable Step b) {
        Step one = a;
        Step other = b;
        while (one != other) {
            if (Step.depth(one) >= Step.depth(other)) one = one == null ? null : one.parent();
            else other = other == null ? null : other.parent();
        }
        return one;
    }
}
