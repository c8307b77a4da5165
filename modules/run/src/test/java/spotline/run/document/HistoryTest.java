package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.core.ReadException;

class HistoryTest {
    private static History set(History history, double significance) throws ReadException {
        return history.apply(Edits.setting(
                history.document(),
                Scope.holder(),
                "/narrow/minimumSignificance",
                Documents.json(Double.toString(significance))));
    }

    @Test
    void undoAndRedoAreWithoutLimit() throws ReadException {
        History start = History.of(Documents.small());
        History history = start;
        for (int i = 1; i <= 50; i++) history = set(history, 4 + i);
        String end = history.document().hash();
        for (int i = 0; i < 60; i++) history = history.undo();
        assertThat(history.document().hash()).isEqualTo(start.document().hash());
        assertThat(history.lastDone()).isEmpty();
        for (int i = 0; i < 60; i++) history = history.redo();
        assertThat(history.document().hash()).isEqualTo(end);
        assertThat(history.done()).hasSize(50);
        assertThat(history.nextUndone()).isEmpty();
    }

    @Test
    void whatChangedSinceTheReportIsTold() throws ReadException {
        History history = set(set(History.of(Documents.small()), 5), 6);
        assertThat(history.sinceReport().made()).hasSize(2);
        history = history.reported(Optional.empty());
        assertThat(history.sinceReport().nothing()).isTrue();
        history = set(history.undo(), 7);
        assertThat(history.sinceReport().takenBack())
                .extracting(Edit::title)
                .containsExactly("Narrow minimumSignificance of all spots: 6");
        assertThat(history.sinceReport().made())
                .extracting(Edit::title)
                .containsExactly("Narrow minimumSignificance of all spots: 7");
    }

    @Test
    void aCheckpointKeepsItsBranch() throws ReadException {
        History history = set(set(History.of(Documents.small()), 5), 6).checkpoint("first look", Optional.empty());
        String marked = history.document().hash();
        history = set(history.undo().undo(), 8);
        String other = history.document().hash();
        history = history.checkpoint("second look", Optional.empty()).back("first look");
        assertThat(history.document().hash()).isEqualTo(marked);
        assertThat(history.back("second look").document().hash()).isEqualTo(other);
        History ahead = set(history, 9);
        assertThat(ahead.back("first look").nextUndone())
                .map(Edit::title)
                .hasValueSatisfying(t -> assertThat(t).endsWith("9"));
    }

    @Test
    void exceptionsAreTheSettingsOfASpotThatDiffer() throws ReadException {
        History history = History.of(Documents.small());
        assertThat(history.exceptions())
                .extracting(SpotException::spot, SpotException::setting)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("3", "/charge/method"));
        History same = history.apply(Edits.setting(
                history.document(), Scope.spot("1"), "/narrow/background/kind", Documents.json("'linear'")));
        assertThat(same.exceptions()).hasSize(1);
        History other = history.apply(Edits.setting(
                history.document(), Scope.spot("1"), "/narrow/background/kind", Documents.json("'shirley'")));
        assertThat(other.exceptions()).hasSize(2);
        assertThat(other.exceptions().get(0).elsewhere()).contains(Documents.json("'linear'"));
    }
}
