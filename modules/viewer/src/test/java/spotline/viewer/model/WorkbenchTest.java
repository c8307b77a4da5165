package spotline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.analysis.charge.ChargeVerdict;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.run.RunResult;

class WorkbenchTest {
    private static Bench shared;

    @BeforeAll
    static void open() {
        shared = new Bench().demo();
    }

    @AfterAll
    static void close() {
        shared.close();
    }

    private static double percent(RunResult result, String spot, String element) {
        return result.spots().stream()
                .filter(s -> s.spot().equals(spot))
                .flatMap(s -> s.composition().stream())
                .filter(r -> r.element().equals(element))
                .findFirst()
                .orElseThrow()
                .atomicPercent()
                .orElseThrow()
                .value();
    }

    @Test
    void everySpotShowsItsVerdictAndComposition() {
        List<SpotFace> faces = shared.workbench.faces();
        assertThat(faces).extracting(SpotFace::id).containsExactly("1", "2", "3", "4", "5", "6");
        assertThat(faces.get(3).verdict()).isEqualTo(ChargeVerdict.NOT_NEEDED);
        for (SpotFace face : faces) {
            double sum =
                    face.shares().stream().mapToDouble(SpotFace.Share::part).sum();
            assertThat(sum).as("shares of spot %s", face.id()).isBetween(0.999, 1.001);
        }
        assertThat(faces.get(0).spoken())
                .contains("liner chip")
                .contains("accepted")
                .contains("F ");
    }

    @Test
    void choosingASpotBringsItsScansAndAccount() {
        Workbench bench = shared.workbench;
        bench.choose("5", false);
        assertThat(bench.primary().orElseThrow().spot()).isEqualTo("5");
        assertThat(bench.lanes().intervals())
                .extracting(ScanLanes.Interval::name)
                .contains("C 1s", "Ti 2p", "O 1s");
        Account account = bench.account().orElseThrow();
        assertThat(account.cards()).extracting(Account.Card::step).containsExactly(Account.Step.values());
        assertThat(account.cards().get(0).sentence()).contains("C 1s").contains("284.80 eV");
        assertThat(account.cards().get(1).sentence()).contains("Ti");
    }

    /** The line that is on the bench stays there when another spot has it too. */
    @Test
    void theSameLineStaysOnTheBench() {
        Workbench bench = shared.workbench;
        bench.choose("5", false);
        String oxygen = bench.lanes().intervals().stream()
                .filter(i -> i.name().equals("O 1s"))
                .findFirst()
                .orElseThrow()
                .spectrum();
        bench.chooseSpectrum(oxygen);
        bench.choose("6", false);
        assertThat(bench.bench().get().orElseThrow().name()).isEqualTo("O 1s");
        assertThat(bench.bench().get().orElseThrow().spot()).isEqualTo("6");
        bench.choose("5", true);
        assertThat(bench.compared()).extracting(BenchData::spot).containsExactly("5");
    }

    @Test
    void aScanOfAnotherSpotChoosesThatSpot() {
        Workbench bench = shared.workbench;
        bench.choose("1", false);
        bench.chooseSpectrum("04-contact-strip.txt#3");
        assertThat(bench.chosen().get()).containsExactly("4");
        assertThat(bench.bench().get().orElseThrow().name()).isEqualTo("Ag 3d");
    }

    /** 368.2 eV is silver's main line; source of the energy: ISO 15472:2010. */
    @Test
    void aClickNamesTheLinesNear() {
        Workbench bench = shared.workbench;
        bench.chooseSpectrum("04-contact-strip.txt#3");
        List<LineCandidates.Candidate> near = bench.candidates(368.2);
        assertThat(near.get(0).line()).isEqualTo("Ag 3d");
        assertThat(near.get(0).known()).isTrue();
    }

    @Test
    void aDraggedWindowFollowsAtOnceAndWaitsForItsReason() {
        try (Bench own = new Bench().demo()) {
            Workbench bench = own.workbench;
            bench.choose("5", false);
            bench.chooseSpectrum("05-pigment-a.txt#3");
            BenchData before = bench.bench().get().orElseThrow();
            BenchData.WindowMark mark = before.windows().get(0);
            double titanium = percent(bench.result().get().orElseThrow(), "5", "Ti");

            bench.windows().move(mark.line(), mark.lowEv() + 0.5, mark.highEv() - 1, true);
            own.until(() -> !bench.bench().get().orElseThrow().windows().equals(before.windows()));
            BenchData preview = bench.bench().get().orElseThrow();
            assertThat(preview.windows().get(0).highEv()).isEqualTo(mark.highEv() - 1);
            assertThat(preview.backgrounds().get(0).energy(0)).isGreaterThanOrEqualTo(mark.lowEv() + 0.5 - 0.1);
            assertThat(percent(bench.result().get().orElseThrow(), "5", "Ti")).isEqualTo(titanium);
            assertThat(bench.signing().pending().get().orElseThrow().title()).contains("Ti 2p window of spot 5");

            bench.signing().keep("a tester", " ");
            assertThat(bench.fault().get()).contains("reason");
            bench.signing().keep("a tester", "shake-up left out, to see");
            own.settled();
            assertThat(bench.fault().get()).isEmpty();
            double changed = percent(bench.result().get().orElseThrow(), "5", "Ti");
            assertThat(changed).isNotEqualTo(titanium);
            assertThat(bench.past().undoable().get()).contains("Ti 2p window of spot 5");

            bench.past().undo();
            own.settled();
            assertThat(percent(bench.result().get().orElseThrow(), "5", "Ti")).isEqualTo(titanium);
            assertThat(bench.past().undoable().get()).isEmpty();
            bench.past().redo();
            own.settled();
            assertThat(percent(bench.result().get().orElseThrow(), "5", "Ti")).isEqualTo(changed);
        }
    }

    @Test
    void droppingAPreviewRestoresWhatWasThere() {
        Workbench bench = shared.workbench;
        bench.chooseSpectrum("05-pigment-a.txt#3");
        BenchData before = bench.bench().get().orElseThrow();
        BenchData.WindowMark mark = before.windows().get(0);
        bench.windows().move(mark.line(), mark.lowEv() + 1, mark.highEv(), true);
        bench.signing().drop();
        assertThat(bench.signing().pending().get()).isEmpty();
        assertThat(bench.bench().get().orElseThrow().windows()).isEqualTo(before.windows());
    }

    @Test
    void aSilencedFindingBecomesANoteWithItsReason() {
        try (Bench own = new Bench()) {
            Path holder = holderWithACaution();
            own.workbench.open(holder);
            own.settled();
            Workbench bench = own.workbench;
            Finding caution = bench.result().get().orElseThrow().findings().stream()
                    .filter(f -> f.severity() == Severity.CAUTION)
                    .findFirst()
                    .orElseThrow();
            bench.signing().silence(caution);
            bench.signing().keep("a tester", "the place is known to be safe");
            own.settled();
            List<Finding> of = bench.result().get().orElseThrow().findings().stream()
                    .filter(f -> f.rule().equals(caution.rule()) && f.spot().equals(caution.spot()))
                    .toList();
            assertThat(of).isNotEmpty().allMatch(f -> f.severity() == Severity.NOTE);
            assertThat(of.get(0).message()).contains("the place is known to be safe");
        }
    }

    @TempDir
    Path folder;

    /** Two insulators whose outlines lie on each other: invented. */
    private Path holderWithACaution() {
        try {
            Path file = folder.resolve("holder.json");
            Files.writeString(file, """
                    { "format": "spotline-holder-run/1", "holder": { "template": "flat-bar" },
                      "instrument": { "excitation": { "source": "Al Ka", "monochromated": true },
                                      "analysisAreaMm": { "x": 0.7, "y": 0.3 } },
                      "spots": [ { "id": "1", "xMm": 20, "yMm": 2.2, "sample": { "name": "chip", "conductivity": "insulator" },
                                   "mount": { "method": "metal-clip", "electricalState": "isolated",
                                              "outlineMm": { "width": 4, "height": 4 } } } ] }
                    """);
            return file;
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void whatCannotBeOpenedIsASentenceAndWhatIsOpenStays() {
        try (Bench own = new Bench().demo()) {
            own.workbench.open(folder.resolve("nothing.json"));
            own.until(() -> !own.workbench.fault().get().isEmpty());
            assertThat(own.workbench.fault().get()).contains("nothing.json").contains("no such file");
            assertThat(own.workbench.result().get()).isPresent();
            assertThat(own.workbench.busy().get()).isFalse();
        }
    }

    @Test
    void layersAreShownAndHidden() {
        Workbench bench = shared.workbench;
        Set<Layer> before = bench.layers().get();
        bench.show(Layer.DIFFERENCE, true);
        assertThat(bench.layers().get()).contains(Layer.DIFFERENCE).containsAll(before);
        bench.show(Layer.DIFFERENCE, false);
        assertThat(bench.layers().get()).isEqualTo(before);
    }

    @Test
    void looseSpectraAreLaidOnASpot() throws Exception {
        Path from = Bench.DEMO.getParent();
        for (String name : List.of("footbridge-bearing.json", "01-liner-chip.txt", "04-contact-strip.txt")) {
            Files.copy(from.resolve(name), folder.resolve(name));
        }
        Path few = folder.resolve("few.json");
        Files.writeString(few, """
                { "format": "spotline-holder-run/1", "instrument": { "excitation": { "source": "Al Ka" } },
                  "spots": [ { "id": "1", "sample": { "name": "chip" }, "spectra": [ { "file": "01-liner-chip.txt" } ] },
                             { "id": "2", "sample": { "name": "strip" } } ] }
                """);
        Files.writeString(folder.resolve("bad.txt"), "no spectrum");
        try (Bench own = new Bench()) {
            Workbench bench = own.workbench;
            bench.loose().offer(List.of(few));
            assertThat(bench.fault().get()).contains("Open a holder run first");
            bench.open(few);
            own.settled();
            bench.loose()
                    .offer(List.of(
                            folder.resolve("04-contact-strip.txt"),
                            folder.resolve("bad.txt"),
                            folder.resolve("01-liner-chip.txt"),
                            folder.resolve("missing.txt")));
            own.until(() -> bench.loose().waiting().get().size() == 4);
            List<LooseSpectra.Loose> waiting = bench.loose().waiting().get();
            assertThat(waiting).extracting(LooseSpectra.Loose::fits).containsExactly(true, false, true, false);
            assertThat(waiting.get(0).sentence()).contains("Ag 3d");
            assertThat(waiting.get(1).sentence()).contains("bad.txt").contains("expected");
            assertThat(waiting.get(3).sentence()).contains("missing.txt").contains("no such file");
            bench.loose().lay(waiting.get(2), "1");
            assertThat(bench.fault().get()).contains("on spot 1 already");
            bench.loose().lay(waiting.get(0), "2");
            bench.signing().keep("a tester", "the strip's scans came later");
            own.settled();
            assertThat(bench.loose().waiting().get()).hasSize(3);
            bench.choose("2", false);
            assertThat(bench.lanes().intervals())
                    .extracting(ScanLanes.Interval::name)
                    .contains("Ag 3d");
        }
    }

    /** The record names a file where it lies: no copy is made of it. */
    @Test
    void aFileFromElsewhereIsLaidWithoutACopy() throws Exception {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere")).resolve("late.txt");
        Files.copy(Bench.DEMO.resolveSibling("04-contact-strip.txt"), elsewhere);
        Path here = Files.createDirectories(folder.resolve("run")).resolve("few.json");
        Files.writeString(here, """
                { "format": "spotline-holder-run/1", "instrument": { "excitation": { "source": "Al Ka" } },
                  "spots": [ { "id": "2", "sample": { "name": "strip" } } ] }
                """);
        try (Bench own = new Bench()) {
            own.workbench.open(here);
            own.settled();
            laid(own, elsewhere, "2");
            assertThat(lines(own, "2")).contains("Ag 3d");
            try (var files = Files.list(here.getParent())) {
                assertThat(files).containsExactly(here);
            }
        }
    }

    /** A project holds its files itself: it takes a new one in when it is saved, whatever its name. */
    @Test
    void aProjectTakesInWhatIsLaidOnItsSpots() throws Exception {
        Path file = folder.resolve("study.spotline");
        Path late = folder.resolve("01-liner-chip.txt");
        Files.copy(Bench.DEMO.resolveSibling("04-contact-strip.txt"), late);
        try (Bench own = new Bench().demo()) {
            Workbench bench = own.workbench;
            bench.save(file, java.util.Map.of());
            own.until(() -> bench.file().get().equals(java.util.Optional.of(file)));
            own.settled();
            bench.loose().offer(List.of(Bench.DEMO.resolveSibling("01-liner-chip.txt")));
            own.until(() -> bench.loose().waiting().get().size() == 1);
            bench.loose().lay(bench.loose().waiting().get().get(0), "1");
            assertThat(bench.fault().get()).contains("on spot 1 already");
            bench.loose().leaveAll();

            // The project has another file of that name, which must not be taken for this one.
            laid(own, late, "1");
            assertThat(lines(own, "1")).contains("Ag 3d");
            bench.save(file, java.util.Map.of());
            own.until(() -> !bench.busy().get());
            assertThat(bench.fault().get()).isEmpty();
        }
        Files.delete(late);
        try (Bench again = new Bench()) {
            again.workbench.open(file);
            again.settled();
            assertThat(lines(again, "1")).contains("Ag 3d", "F 1s");
        }
    }

    private static void laid(Bench own, Path file, String spot) {
        Workbench bench = own.workbench;
        bench.loose().offer(List.of(file));
        own.until(() -> !bench.loose().waiting().get().isEmpty());
        LooseSpectra.Loose loose = bench.loose().waiting().get().get(0);
        assertThat(loose.sentence()).contains("It stays in");
        bench.loose().lay(loose, spot);
        bench.signing().keep("a tester", "came later");
        own.settled();
        assertThat(bench.fault().get()).isEmpty();
    }

    private static List<String> lines(Bench own, String spot) {
        own.workbench.choose(spot, false);
        return own.workbench.lanes().intervals().stream()
                .map(ScanLanes.Interval::name)
                .toList();
    }

    /** Where a window misses its line there is no intensity; its ends can still be moved, not only be taken back. */
    @Test
    void aWindowInWhichNothingCountsCanBeMovedOn() {
        try (Bench own = new Bench().demo()) {
            Workbench bench = own.workbench;
            bench.choose("5", false);
            bench.chooseSpectrum("05-pigment-a.txt#3");
            BenchData.WindowMark mark =
                    bench.bench().get().orElseThrow().windows().get(0);
            moved(own, mark.line(), 450.5, 451.2);
            assertThat(bench.primary().orElseThrow().intensities())
                    .noneMatch(m -> m.intensity().spectrum().equals("05-pigment-a.txt#3"));
            assertThat(bench.bench().get().orElseThrow().windows())
                    .containsExactly(new BenchData.WindowMark(mark.line(), 450.5, 451.2));
            moved(own, mark.line(), mark.lowEv(), mark.highEv());
            assertThat(bench.primary().orElseThrow().intensities())
                    .anyMatch(m -> m.intensity().spectrum().equals("05-pigment-a.txt#3"));
        }
    }

    private static void moved(Bench own, String line, double lowEv, double highEv) {
        own.workbench.windows().move(line, lowEv, highEv, true);
        own.workbench.signing().keep("a tester", "to see");
        own.settled();
        assertThat(own.workbench.fault().get()).isEmpty();
    }

    /** A survey's windows are not those of the treatment: one moved there would change another scan. */
    @Test
    void aSurveysWindowsAreNotMovedByHand() {
        Workbench bench = shared.workbench;
        bench.chooseSpectrum("05-pigment-a.txt#1");
        BenchData before = bench.bench().get().orElseThrow();
        assertThat(before.survey()).isTrue();
        BenchData.WindowMark mark = before.windows().get(0);
        bench.windows().move(mark.line(), mark.lowEv() + 1, mark.highEv(), true);
        assertThat(bench.signing().pending().get()).isEmpty();
        assertThat(bench.fault().get()).contains("on the narrow scan");
        bench.fault().set("");
    }

    @Test
    void theTableTellsOfSettingsOfOneSpot() {
        try (Bench own = new Bench().demo()) {
            assertThat(row(own, "6").own()).isEmpty();
            narrowed(own, 0.5);
            assertThat(row(own, "5").own()).contains("Ti 2p window").contains(" eV");
            assertThat(row(own, "").own()).startsWith("spot 5, Ti 2p window");
            assertThat(row(own, "6").own()).isEmpty();
            own.workbench.past().undo();
            own.settled();
            assertThat(row(own, "5").own()).isEmpty();
        }
    }

    private static CompositionGrid.Row row(Bench own, String spot) {
        Workbench bench = own.workbench;
        return CompositionGrid.of(
                        bench.result().get().orElseThrow(), bench.past().exceptions(), Bench.WORDS)
                .rows()
                .stream()
                .filter(r -> r.spot().equals(spot))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theHistoryTellsWhatChangedSinceTheReportAndGoesBack() {
        try (Bench own = new Bench().demo()) {
            Workbench bench = own.workbench;
            bench.past().checkpoint("as measured");
            narrowed(own, 0.5);
            bench.past().reported();
            narrowed(own, 0.7);
            Past.Shown shown = bench.past().shown().get();
            assertThat(shown.entries()).extracting(Past.Entry::sinceReport).containsExactly(false, false, true);
            assertThat(shown.entries().get(0).checkpoints()).containsExactly("as measured");
            assertThat(shown.entries().get(2).now()).isTrue();
            bench.past().back("as measured");
            own.settled();
            shown = bench.past().shown().get();
            assertThat(shown.entries().get(0).now()).isTrue();
            assertThat(shown.takenBack()).hasSize(1);
            bench.past().goTo(shown.entries().get(2).number());
            own.settled();
            assertThat(bench.past().shown().get().entries().get(2).now()).isTrue();
            assertThat(bench.past().redoable().get()).isEmpty();
        }
    }

    /** The results of a change that nobody waits for are worked out when they are wanted again. */
    @Test
    void cancelledWorkIsTakenUpAgain() {
        try (Bench own = new Bench().demo()) {
            Workbench bench = own.workbench;
            RunResult before = bench.result().get().orElseThrow();
            bench.chooseSpectrum("05-pigment-a.txt#3");
            BenchData.WindowMark mark =
                    bench.bench().get().orElseThrow().windows().get(0);
            bench.windows().move(mark.line(), mark.lowEv() + 0.5, mark.highEv() - 1, true);
            bench.signing().keep("a tester", "to see");
            bench.stopping().cancel();
            own.until(() -> !bench.busy().get());
            // Whether the work was done before it could be given up is the machine's to say.
            if (bench.stopping().stopped().get()) {
                assertThat(bench.result().get().orElseThrow()).isSameAs(before);
                bench.stopping().goOn();
                own.settled();
            }
            assertThat(bench.stopping().stopped().get()).isFalse();
            assertThat(percent(bench.result().get().orElseThrow(), "5", "Ti")).isNotEqualTo(percent(before, "5", "Ti"));
        }
    }

    private static void narrowed(Bench own, double byEv) {
        Workbench bench = own.workbench;
        bench.chooseSpectrum("05-pigment-a.txt#3");
        BenchData.WindowMark mark = bench.bench().get().orElseThrow().windows().get(0);
        bench.windows().move(mark.line(), mark.lowEv() + byEv, mark.highEv(), true);
        bench.signing().keep("a tester", "to see");
        own.settled();
    }
}
