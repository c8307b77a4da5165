package spotline.run.document;

import java.util.List;
import java.util.Optional;

/**
 * A history as data.
 *
 * @param first the document before any edit
 * @param document the document now
 * @param edits all that are kept, each after the one it follows
 * @param done number of the last edit in force, 0 for none
 * @param undone numbers of the edits to redo, the next one first
 * @param report what the last report was made of
 * @param lastNumber the highest number ever given to an edit
 */
public record HistoryRecord(
        RunDocument first,
        RunDocument document,
        List<Node> edits,
        long done,
        List<Long> undone,
        List<Checkpoint> checkpoints,
        Optional<Checkpoint> report,
        long lastNumber) {
    /** @param after number of the edit that it follows, 0 for the document as it was first */
    public record Node(long number, long after, Edit edit) {}

    public HistoryRecord {
        edits = List.copyOf(edits);
        undone = List.copyOf(undone);
        checkpoints = List.copyOf(checkpoints);
    }
}
