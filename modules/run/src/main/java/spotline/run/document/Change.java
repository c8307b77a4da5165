package spotline.run.document;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/**
 * Another value at one place of a document.
 *
 * @param pointer JSON pointer into the holder-run file
 * @param before what stands there; empty where nothing does; copied in and out
 * @param after what will stand there; empty where nothing will; copied in and out
 */
public record Change(String pointer, Optional<JsonNode> before, Optional<JsonNode> after) {
    /** Errors: {@link IllegalArgumentException} for text that is no JSON pointer, or nothing before and after. */
    public Change {
        if (pointer.isEmpty()) throw new IllegalArgumentException("a change needs a place inside the document");
        JsonPointer.compile(pointer);
        if (before.isEmpty() && after.isEmpty()) {
            throw new IllegalArgumentException("a change needs a value before or after, at " + pointer);
        }
        before = before.map(JsonNode::deepCopy);
        after = after.map(JsonNode::deepCopy);
    }

    @Override
    public Optional<JsonNode> before() {
        return before.map(JsonNode::deepCopy);
    }

    @Override
    public Optional<JsonNode> after() {
        return after.map(JsonNode::deepCopy);
    }

    public Change inverse() {
        return new Change(pointer, after, before);
    }
}
