package spotline.run.document;

import java.time.OffsetDateTime;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;

/** What can be done to a history, as data: a journal holds these. */
public sealed interface Operation {
    /** Makes an edit. */
    record Apply(Edit edit) implements Operation {}

    /** Takes the last edit back. */
    record Undo() implements Operation {}

    /** Does again what was undone last. */
    record Redo() implements Operation {}

    /** Gives the state a name. */
    record Mark(String name, Optional<OffsetDateTime> when) implements Operation {
        public Mark {
            if (name.isBlank()) throw new IllegalArgumentException("a checkpoint needs a name");
        }
    }

    /** Goes to a checkpoint. */
    record Back(String checkpoint) implements Operation {}

    /** A report was made. */
    record Reported(Optional<OffsetDateTime> when) implements Operation {}

    /**
     * The history after this operation.
     *
     * <p>Errors: {@link ReadException} when the result would not be a valid document, or no checkpoint has the name.
     */
    default History on(History history) throws ReadException {
        if (this instanceof Apply apply) return history.apply(apply.edit());
        if (this instanceof Undo) return history.undo();
        if (this instanceof Redo) return history.redo();
        if (this instanceof Mark mark) return history.checkpoint(mark.name(), mark.when());
        if (this instanceof Reported reported) return history.reported(reported.when());
        String name = ((Back) this).checkpoint();
        try {
            return history.back(name);
        } catch (IllegalArgumentException e) {
            throw new ReadException(
                    Place.file(history.document().name()), String.valueOf(e.getMessage()), "a checkpoint's name");
        }
    }
}
