package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import spotline.core.Estimate;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.run.HolderRunLoader;
import spotline.run.InputFiles;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.findings.RuleBook;
import spotline.spectra.Window;

class LivingRunTest {
    private static final InputFiles FILES = InputFiles.in(Path.of("../../demo-spectra"));

    private static LivingRun demo() throws ReadException {
        return new LivingRun(History.of(Documents.demo()), FILES, HandEdits.NOTHING_ASKED, Keeper.NOBODY, "test", 2);
    }

    private static List<String> numbers(RunResult result) {
        List<String> numbers = new ArrayList<>();
        result.spots()
                .forEach(s -> s.composition()
                        .forEach(row -> numbers.add(
                                s.spot() + row.element() + row.atomicPercent().map(Estimate::value))));
        return numbers;
    }

    @Test
    void anEditMovesItsNumbersAndUndoBringsThemBack() throws ReadException {
        try (LivingRun run = demo()) {
            RunResult before = run.settle(Work.UNWATCHED);
            Window used = before.spots().get(4).intensities().stream()
                    .filter(m -> m.intensity().line().equals(Line.parse("O 1s")))
                    .findFirst()
                    .orElseThrow()
                    .intensity()
                    .window();
            Window wider = new Window(used.lowEv() - 0.5, used.highEv() - 0.7);
            run.apply(Edits.window(run.document(), "5", Line.parse("O 1s"), wider));
            assertThat(run.isSettled()).isFalse();
            RunResult after = run.settle(Work.UNWATCHED);
            assertThat(after.spots().get(4).intensities())
                    .anySatisfy(m -> assertThat(m.intensity().window()).isEqualTo(wider));
            List<String> moved = new ArrayList<>(numbers(after));
            moved.removeAll(numbers(before));
            assertThat(moved).isNotEmpty().allMatch(n -> n.startsWith("5"));
            run.undo();
            assertThat(numbers(run.settle(Work.UNWATCHED))).isEqualTo(numbers(before));
        }
    }

    @Test
    void aLivingRunSaysWhatTheCommandSays() throws ReadException {
        ReferenceData reference = ReferenceData.shipped();
        var loaded = new HolderRunLoader(reference).load(Documents.DEMO, Optional.empty(), 1, Work.UNWATCHED);
        RunResult whole = new RunPipeline(reference, "test", RuleBook.standard()).treat(loaded, 1, Work.UNWATCHED);
        try (LivingRun run = demo()) {
            RunResult result = run.settle(Work.UNWATCHED);
            assertThat(numbers(result)).isEqualTo(numbers(whole));
            assertThat(result.findings()).isEqualTo(whole.findings());
        }
    }

    @Test
    void listenersHearOfTheNewestDocument() throws ReadException, InterruptedException {
        LinkedBlockingQueue<LivingRun.Settled> heard = new LinkedBlockingQueue<>();
        try (LivingRun run = demo()) {
            run.listen(Runnable::run, new LivingRun.Listener() {
                @Override
                public void settled(LivingRun.Settled settled) {
                    heard.add(settled);
                }
            });
            run.follow();
            for (int i = 5; i < 9; i++) {
                run.apply(Edits.setting(
                        run.document(), Scope.holder(), "/survey/minimumSignificance", Documents.json("" + i)));
            }
            LivingRun.Settled last = heard.poll(60, TimeUnit.SECONDS);
            while (last != null && last.document() != run.document()) last = heard.poll(60, TimeUnit.SECONDS);
            assertThat(last).isNotNull();
            assertThat(run.isSettled()).isTrue();
        }
    }

    @Test
    void aCancelledSettlingLeavesTheRunAsItWas() throws ReadException {
        try (LivingRun run = demo()) {
            Work cancelled = new Work() {
                @Override
                public void check() {
                    throw new CancellationException("no longer wanted");
                }

                @Override
                public void progress(double done, String what) {}
            };
            assertThatExceptionOfType(CancellationException.class).isThrownBy(() -> run.settle(cancelled));
            assertThat(run.latest()).isEmpty();
            assertThat(run.settle(Work.UNWATCHED).spots()).hasSize(6);
        }
    }

    @Test
    void anEditByHandWithoutAReasonChangesNothing() throws ReadException {
        try (LivingRun run =
                new LivingRun(History.of(Documents.demo()), FILES, HandEdits.WHO_AND_WHY, Keeper.NOBODY, "test", 1)) {
            RunDocument before = run.document();
            Edit edit = Edits.window(before, "5", Line.parse("O 1s"), new Window(525, 536));
            assertThatExceptionOfType(ReadException.class).isThrownBy(() -> run.apply(edit));
            assertThat(run.document()).isSameAs(before);
            run.apply(edit.signed("A. Analyst", "the loss feature begins at 536 eV"));
            assertThat(run.document()).isNotEqualTo(before);
        }
    }
}
