package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.core.ReadException;
import spotline.holder.SpectrumRole;
import spotline.reference.Line;
import spotline.spectra.Window;

class EditTest {
    private static final Line C1S = Line.parse("C 1s");

    @Test
    void aWindowIsTitledAsAnAnalystWouldSayIt() throws ReadException {
        RunDocument document = Documents.small();
        Edit edit = Edits.window(document, "3", C1S, new Window(280.1, 291.4));
        assertThat(edit.title()).isEqualTo("C 1s window of spot 3: 280.1 to 291.4 eV");
        RunDocument changed = edit.applied(document);
        assertThat(changed.treatments().get(2).line(C1S).window()).contains(new Window(280.1, 291.4));
        assertThat(changed.treatments().get(0).line(C1S).window()).isEmpty();
        assertThat(edit.inverse().applied(changed)).isEqualTo(document);
    }

    @Test
    void everyKindOfEditIsTakenBackToTheSameDocument() throws ReadException {
        RunDocument document = Documents.small();
        for (Edit edit : List.of(
                Edits.setting(document, Scope.holder(), "/narrow/minimumSignificance", Documents.json("6")),
                Edits.setting(document, Scope.family("oxide"), "/narrow/background/kind", Documents.json("'shirley'")),
                Edits.setting(document, Scope.family("paint/wet"), "/charge/method", Documents.json("'none'")),
                Edits.setting(document, Scope.spot("3"), "/charge/largestDriftEv", Documents.json("0.2")),
                Edits.withoutSetting(document, Scope.spot("3"), "/charge/method"),
                Edits.withoutSettings(document, Scope.family("oxide")),
                Edits.background(document, Scope.spot("1"), C1S, Documents.object("{'kind': 'linear'}")),
                Edits.charge(
                        document,
                        Scope.spot("2"),
                        Documents.object("{'method': 'fixed', 'shiftEv': -1.5, 'reason': 'r'}")),
                Edits.silence(document, "one-spot-only", Optional.of("1"), "known"),
                Edits.photonEnergy(document, "1", 0, 1253.6, "the header is wrong"),
                Edits.role(document, "1", 0, SpectrumRole.REPEAT),
                Edits.role(document, "2", 0, SpectrumRole.UNKNOWN),
                Edits.fact(document, "Title", "/title", Optional.of(Documents.json("'another'"))),
                Edits.fact(document, "No title", "/title", Optional.empty()))) {
            RunDocument changed = edit.applied(document);
            assertThat(changed.hash()).as(edit.title()).isNotEqualTo(document.hash());
            assertThat(edit.inverse().applied(changed).hash()).as(edit.title()).isEqualTo(document.hash());
        }
    }

    @Test
    void anEditWhoseResultIsNoDocumentIsRefusedInTheReadersWords() throws ReadException {
        RunDocument document = Documents.small();
        Edit wrongWord = Edits.charge(document, Scope.spot("2"), Documents.object("{'method': 'guess'}"));
        ReadException fault = catchThrowableOfType(ReadException.class, () -> wrongWord.applied(document));
        assertThat(fault.place().toString()).isEqualTo("small.json:/spots/1/treatment/charge/method");
        assertThat(fault.getMessage()).contains("guess", "adventitious-carbon");
        Edit outOfRange = Edits.setting(document, Scope.holder(), "/prepare/spikeSignificance", Documents.json("2"));
        assertThatExceptionOfType(ReadException.class).isThrownBy(() -> outOfRange.applied(document));
        Edit unknownLine = Edits.setting(
                document,
                Scope.spot("1"),
                "/lines",
                Documents.json("{'Qq 1s': {'window': {'lowEv': 1, 'highEv': 2}}}"));
        assertThatExceptionOfType(ReadException.class).isThrownBy(() -> unknownLine.applied(document));
        assertThat(document).isEqualTo(Documents.small());
    }

    @Test
    void anEditForAnotherStateIsRefused() throws ReadException {
        RunDocument document = Documents.small();
        Edit edit = Edits.setting(document, Scope.spot("3"), "/charge/method", Documents.json("'fixed'"));
        RunDocument other = Edits.withoutSettings(document, Scope.spot("3")).applied(document);
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> edit.applied(other))
                .withMessageContaining("another value than the edit");
    }

    @Test
    void numbersThatMoveByHandAskWhoAndWhy() throws ReadException {
        RunDocument document = Documents.small();
        Edit window = Edits.window(document, "1", C1S, new Window(280, 292));
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> HandEdits.WHO_AND_WHY.check(window))
                .withMessageContaining("no name and no reason");
        HandEdits.WHO_AND_WHY.check(window.signed("A. Analyst", "a satellite stands at 291.5 eV"));
        HandEdits.NOTHING_ASKED.check(window);
        HandEdits.WHO_AND_WHY.check(
                Edits.setting(document, Scope.holder(), "/narrow/minimumSignificance", Documents.json("6")));
    }

    @Test
    void whatIsHandedOutIsACopy() throws ReadException {
        RunDocument document = Documents.small();
        document.tree().put("title", "changed behind its back");
        assertThat(document).isEqualTo(Documents.small());
        Edit edit = Edits.charge(document, Scope.spot("2"), Documents.object("{'method': 'none'}"));
        ((com.fasterxml.jackson.databind.node.ObjectNode)
                        edit.changes().get(0).after().orElseThrow())
                .removeAll();
        assertThat(edit.applied(document)
                        .at("/spots/1/treatment/charge/method")
                        .orElseThrow()
                        .asText())
                .isEqualTo("none");
    }

    @Test
    void theHashIsOfWhatTheDocumentSays() throws ReadException {
        RunDocument document = Documents.small();
        com.fasterxml.jackson.databind.node.ObjectNode tree = document.tree();
        tree.set("format", tree.remove("format"));
        assertThat(RunDocument.of("other name", tree, 1).hash()).isEqualTo(document.hash());
        assertThat(RunDocument.of("small.json", tree, 2).hash()).isNotEqualTo(document.hash());
    }
}
