package spotline.run.document;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * A state of the document that has a name.
 *
 * @param edit number of the last edit made when it was set, 0 for the document as it was first
 */
public record Checkpoint(String name, long edit, Optional<OffsetDateTime> when) {
    public Checkpoint {
        if (name.isBlank()) throw new IllegalArgumentException("a checkpoint needs a name");
    }
}
