package spotline.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class WordsTest {
    @Test
    void aPlaceIsAFileWithALineOrAPointer() {
        assertThat(Place.line("a.txt", 12)).hasToString("a.txt:12");
        assertThat(Place.pointer("h.json", "/spots/0/id")).hasToString("h.json:/spots/0/id");
        assertThat(Place.file("a.txt")).hasToString("a.txt");
        assertThatThrownBy(() -> Place.line("a", -1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aReadErrorIsOneSentenceAndCarriesTheOthers() {
        ReadException one = new ReadException(Place.line("a.txt", 3), "\"x\"", "a number");
        ReadException two = new ReadException(Place.line("a.txt", 9), "the end", "a number");
        ReadException all = ReadException.all(List.of(one, two));
        assertThat(all).hasMessage("a.txt:3: \"x\", expected a number");
        assertThat(all.others()).containsExactly(two);
        assertThatThrownBy(() -> ReadException.all(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aFindingKeepsThePlaceItHas() {
        Finding finding = Finding.caution("rule", "what").at("1", "liner").in("f#2");
        assertThat(finding.at("2", "other").in("g#1")).isEqualTo(finding);
        assertThat(finding.severity().word()).isEqualTo("caution");
        assertThatThrownBy(() -> Finding.note("rule", " ")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void allProblemsAtOnce() {
        List<Problem> problems = List.of(new Problem("a", "0 eV", "above 0 eV"), new Problem("b", "x", "y"));
        assertThatThrownBy(() -> Problems.throwIfAny(problems))
                .hasMessage("a: 0 eV, expected above 0 eV; b: x, expected y");
        Problems.throwIfAny(List.of());
    }

    @Test
    void anOutcomeIsAValueOrAReason() {
        Finding why = Finding.caution("rule", "too short");
        Outcome<Integer> none = Outcome.untreated(why);
        Outcome<Integer> done = Outcome.done(3, List.of(why));
        assertThat(none.result()).isEmpty();
        assertThat(none.allFindings()).containsExactly(why);
        assertThat(done.result()).hasValue(3);
        assertThat(done.allFindings()).containsExactly(why);
    }
}
