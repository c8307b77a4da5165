package spotline.viewer.model;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import spotline.analysis.background.Background;
import spotline.analysis.background.Subtraction;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.run.LinkedSpectrum;
import spotline.run.Treatment;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.LivingRun;
import spotline.spectra.Window;

/** Ends of a window that follow the hand: the background is drawn anew while they move, the newest place winning. */
public final class WindowDrag {
    private final Workbench bench;
    private final Newest newest = new Newest();

    WindowDrag(Workbench bench) {
        this.bench = bench;
    }

    /** @param settled the hand let go: the edit waits for its reason */
    public void move(String lineName, double lowEv, double highEv, boolean settled) {
        Optional<BenchData> now = bench.bench().get();
        Optional<Line> line = Line.find(lineName);
        Optional<LivingRun> run = bench.living();
        if (run.isEmpty() || now.isEmpty() || line.isEmpty() || !(lowEv < highEv)) return;
        Window window = new Window(lowEv, highEv);
        preview(now.get(), line.get(), window, run.get());
        if (!settled) return;
        try {
            Edit edit = Edits.window(run.get().document(), now.get().spot(), line.get(), window);
            bench.signing().propose(edit.title(), why -> edit);
        } catch (IllegalArgumentException e) {
            bench.fault().set(String.valueOf(e.getMessage()));
        }
    }

    void giveUp() {
        newest.next();
    }

    private void preview(BenchData data, Line line, Window window, LivingRun run) {
        Optional<LinkedSpectrum> scan = bench.spot(data.spot()).flatMap(s -> Workbench.scan(s, data.spectrum()));
        if (scan.isEmpty()) return;
        long mine = newest.next();
        bench.inBackground(() -> {
            if (mine != newest.get()) return;
            try {
                Optional<Curve> curve = background(run, data, line, window, scan.get(), newest.work(mine));
                bench.onScreen(() -> show(mine, data, line, window, curve));
            } catch (CancellationException e) {
                // The hand is elsewhere by now.
                return;
            }
        });
    }

    private void show(long mine, BenchData data, Line line, Window window, Optional<Curve> curve) {
        boolean same = bench.bench()
                .get()
                .filter(b -> b.spectrum().equals(data.spectrum()) && b.spot().equals(data.spot()))
                .isPresent();
        if (!same || mine != newest.get()) return;
        bench.bench()
                .set(bench.bench()
                        .get()
                        .map(b -> b.withWindow(line.toString(), window.lowEv(), window.highEv(), curve)));
    }

    private static Optional<Curve> background(
            LivingRun run, BenchData data, Line line, Window window, LinkedSpectrum scan, Work work) {
        Treatment treatment = run.document().treatments().get(run.document().indexOf(data.spot()));
        Background chosen = treatment
                .line(line)
                .background()
                .orElse((data.survey() ? treatment.survey() : treatment.narrow()).background());
        Outcome<Subtraction> taken = chosen.subtract(scan.scan(), window, "preview", work);
        return taken.result().map(s -> BenchData.curve(line.toString(), data.measured(), s));
    }
}
