package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import spotline.core.ReadException;

class UndoPropertyTest {
    @Test
    void tenThousandEditsUndoneGiveTheFirstDocument() throws ReadException {
        Random random = new Random(20260512);
        RunDocument first = Documents.small();
        History history = History.of(first);
        for (int i = 0; i < 10_000; i++) history = history.apply(RandomEdits.next(history.document(), random));
        assertThat(history.done()).hasSize(10_000);
        assertThat(history.document().hash()).isNotEqualTo(first.hash());
        while (history.lastDone().isPresent()) history = history.undo();
        assertThat(history.document().hash()).isEqualTo(first.hash());
        assertThat(history.undone()).hasSize(10_000);
    }

    @Property(tries = 60, seed = "4711")
    void undoneAndRedoneAnyNumberOfTimesEveryStateComesBack(@ForAll long seed) throws ReadException {
        Random random = new Random(seed);
        History history = History.of(Documents.small());
        List<String> hashes = new ArrayList<>(List.of(history.document().hash()));
        for (int i = 0; i < 25; i++) {
            history = history.apply(RandomEdits.next(history.document(), random));
            hashes.add(history.document().hash());
        }
        int at = 25;
        for (int i = 0; i < 60; i++) {
            boolean back = random.nextBoolean();
            history = back ? history.undo() : history.redo();
            at = Math.min(25, Math.max(0, at + (back ? -1 : 1)));
            assertThat(history.document().hash()).isEqualTo(hashes.get(at));
        }
        assertThat(History.of(history.record()).record()).isEqualTo(history.record());
    }
}
