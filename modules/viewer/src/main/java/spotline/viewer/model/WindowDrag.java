package spotline.viewer.model;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import spotline.analysis.background.Background;
import spotline.analysis.background.Subtraction;
import spotline.analysis.quantify.Basis;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.run.LineSettings;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;
import spotline.run.Treatment;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.LivingRun;
import spotline.run.document.RunDocument;
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
        if (now.get().survey()) {
            bench.fault().set(bench.words().of("window.survey"));
            return;
        }
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

    /**
     * A window set by hand in which its line could not be measured gives no intensity; it stays on the bench, so that it
     * can be moved on.
     */
    BenchData stated(BenchData data, SpotResult spot) {
        if (data.survey() || bench.living().isEmpty()) return data;
        RunDocument document = bench.living().get().document();
        Treatment treatment = document.treatments().get(document.indexOf(data.spot()));
        BenchData all = data;
        for (Map.Entry<Line, LineSettings> stated : treatment.lines().entrySet()) {
            Optional<Window> window = stated.getValue().window();
            Line line = stated.getKey();
            boolean measured = spot.intensities().stream()
                    .anyMatch(m -> m.basis() == Basis.NARROW
                            && m.intensity().line().whole().equals(line));
            if (window.isEmpty() || measured || !here(data, line, window.get())) continue;
            all = all.withMark(new BenchData.WindowMark(
                    line.toString(), window.get().lowEv(), window.get().highEv()));
        }
        return all;
    }

    /** By the scan's name, or by where it lies when that names no line. */
    private static boolean here(BenchData data, Line line, Window window) {
        Optional<Line> named = Line.find(data.name()).map(Line::whole);
        if (named.isPresent()) return named.get().equals(line);
        Curve m = data.measured();
        return window.lowEv() < m.energy(m.channels() - 1) && window.highEv() > m.energy(0);
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
