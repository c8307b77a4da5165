package spotline.run.document;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * A named, invertible change of a document: data, so that it can be journalled, told and taken back.
 *
 * @param title what was done, for a person: {@code "C 1s window of spot 3: 280.1 to 291.4 eV"}
 * @param byHand whether it moves a reported number, or hides something, by the analyst's hand alone
 * @param who made it; empty when nobody said
 * @param why empty when nobody said
 * @param when given by the caller, who has a clock
 */
public record Edit(
        String title, List<Change> changes, boolean byHand, String who, String why, Optional<OffsetDateTime> when) {
    public Edit {
        if (title.isBlank()) throw new IllegalArgumentException("an edit needs a title");
        if (changes.isEmpty()) throw new IllegalArgumentException("an edit needs a change");
        changes = List.copyOf(changes);
    }

    static Edit of(String title, List<Change> changes, boolean byHand) {
        return new Edit(title, changes, byHand, "", "", Optional.empty());
    }

    /** The same edit with who made it and why; what is blank keeps what is there. */
    public Edit signed(String newWho, String newWhy) {
        return new Edit(title, changes, byHand, newWho.isBlank() ? who : newWho, newWhy.isBlank() ? why : newWhy, when);
    }

    public Edit at(OffsetDateTime time) {
        return new Edit(title, changes, byHand, who, why, Optional.of(time));
    }

    /** The edit that takes this one back. */
    public Edit inverse() {
        List<Change> back = new ArrayList<>();
        for (Change change : changes) back.add(change.inverse());
        Collections.reverse(back);
        return new Edit("Take back: " + title, back, byHand, who, why, when);
    }

    /**
     * The document after this edit.
     *
     * <p>Errors: {@link ReadException} when the document does not say what the edit found before, or when the result would
     * not be a valid document: with the reader's own sentences. The document is left as it is.
     */
    public RunDocument applied(RunDocument document) throws ReadException {
        JsonNode tree = document.shared();
        for (Change change : changes) {
            JsonPointer pointer = JsonPointer.compile(change.pointer());
            if (!Trees.same(Trees.at(tree, pointer), change.before())) {
                throw new ReadException(
                        Place.pointer(document.name(), change.pointer()),
                        "another value than the edit \"" + title + "\" was made for",
                        change.before().map(b -> "the value " + b).orElse("no value"));
            }
            try {
                tree = Trees.with(tree, pointer, change.after());
            } catch (IllegalArgumentException e) {
                throw new ReadException(
                        Place.pointer(document.name(), change.pointer()),
                        String.valueOf(e.getMessage()),
                        "a place the edit \"" + title + "\" can change");
            }
        }
        return document.with((ObjectNode) tree);
    }
}
