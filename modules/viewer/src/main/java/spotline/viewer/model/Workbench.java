package spotline.viewer.model;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.reference.ReferenceData;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;
import spotline.run.document.History;
import spotline.run.document.LivingRun;
import spotline.run.project.Stamp;

/**
 * What the window works on: one living run, what of it is chosen, and what is being done. Changed in the screen's thread
 * alone; work goes on in another and its results come back through the screen's executor, the newest winning.
 */
public final class Workbench implements AutoCloseable {
    private final ObjectProperty<Optional<RunResult>> result = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<HolderPicture>> picture = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<List<String>> chosen = new SimpleObjectProperty<>(List.of());
    private final StringProperty spectrum = new SimpleStringProperty("");
    private final ObjectProperty<Set<Layer>> layers = new SimpleObjectProperty<>(
            EnumSet.of(Layer.MEASURED, Layer.BACKGROUND, Layer.MODEL, Layer.COMPONENTS, Layer.LINES));
    private final ObjectProperty<Optional<BenchData>> bench = new SimpleObjectProperty<>(Optional.empty());
    private final StringProperty fault = new SimpleStringProperty("");
    private final StringProperty doing = new SimpleStringProperty("");
    private final DoubleProperty progress = new SimpleDoubleProperty(0);
    private final BooleanProperty busy = new SimpleBooleanProperty(false);
    private final StringProperty title = new SimpleStringProperty("");

    private final Executor screen;
    private final ExecutorService background;
    private final Clock clock;
    private final Words words;
    private final String programVersion;
    private final int threads;
    private final ReferenceData reference = ReferenceData.shipped();
    private final Choice choice = new Choice(this);
    private final Signing signing = new Signing(this);
    private final Past past = new Past(this);
    private final Stopping stopping = new Stopping(this);
    private final LooseSpectra loose = new LooseSpectra(this);
    private final WindowDrag windows = new WindowDrag(this);
    private final FitEditor fits = new FitEditor(this);
    private final ObjectProperty<Optional<Path>> file = new SimpleObjectProperty<>(Optional.empty());
    private @Nullable Opened open;
    private @Nullable LivingRun run;

    /**
     * @param screen runs what changes properties
     * @param background loads, treats and previews; closed with this
     */
    public Workbench(
            Executor screen, ExecutorService background, Words words, Clock clock, String programVersion, int threads) {
        this.screen = screen;
        this.background = background;
        this.words = words;
        this.clock = clock;
        this.programVersion = programVersion;
        this.threads = threads;
    }

    /** A workbench with one thread of its own beside the screen's. */
    public static Workbench on(Executor screen, Words words, Clock clock, String programVersion) {
        ExecutorService background = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "spotline-workbench");
            thread.setDaemon(true);
            return thread;
        });
        int threads = Math.max(1, Runtime.getRuntime().availableProcessors());
        return new Workbench(screen, background, words, clock, programVersion, threads);
    }

    /** Opens a holder run or a project; what goes wrong becomes {@link #fault()}, and what was open stays. */
    public void open(Path file) {
        busy.set(true);
        fault.set("");
        doing.set(words.of("file.reading", file.getFileName()));
        background.execute(() -> {
            try {
                Opened opened = Opened.of(file, words, programVersion, threads, now());
                screen.execute(() -> opened(opened));
            } catch (ReadException | IOException e) {
                screen.execute(() -> failed(String.valueOf(e.getMessage())));
            } catch (RuntimeException e) {
                screen.execute(() -> failed(words.of("file.failed", e)));
            }
        });
    }

    private void opened(Opened now) {
        if (open != null) open.close();
        open = now;
        run = now.run();
        fits.end();
        result.set(Optional.empty());
        stopping.stopped().set(false);
        bench.set(Optional.empty());
        signing.drop();
        loose.leaveAll();
        spectrum.set("");
        HolderPicture holder = now.picture();
        chosen.set(
                holder.spots().isEmpty()
                        ? List.of()
                        : List.of(holder.spots().get(0).id()));
        picture.set(Optional.of(holder));
        title.set(now.title());
        file.set(Optional.of(now.file()));
        past.show(now.run().history());
        now.run().listen(screen, new Following(now.run()));
        now.run().follow();
    }

    /**
     * Saves as a project: the one that is open, or a new one.
     *
     * @param results bytes to keep along, by name
     */
    public void save(Path target, Map<String, byte[]> results) {
        if (open == null) return;
        Opened now = open;
        busy.set(true);
        doing.set(words.of("file.saving", target.getFileName()));
        background.execute(() -> {
            try {
                boolean same = now.save(target, results, new Stamp(programVersion, now(), Optional.empty()));
                screen.execute(() -> {
                    busy.set(false);
                    doing.set("");
                    if (!same) open(target);
                });
            } catch (ReadException | IOException e) {
                screen.execute(() -> failed(String.valueOf(e.getMessage())));
            }
        });
    }

    private final class Following implements LivingRun.Listener {
        private final LivingRun of;

        Following(LivingRun of) {
            this.of = of;
        }

        @Override
        public void edited(History history) {
            if (of == run) past.show(history);
        }

        @Override
        public void progress(double done, String what) {
            if (of != run) return;
            busy.set(true);
            progress.set(done);
            doing.set(what);
        }

        @Override
        public void settled(LivingRun.Settled settled) {
            if (of != run) return;
            busy.set(!of.isSettled());
            stopping.stopped().set(false);
            doing.set("");
            result.set(Optional.of(settled.result()));
            if (spectrum.get().isEmpty()) choice.firstScan();
            refresh();
        }

        @Override
        public void stopped() {
            if (of != run) return;
            busy.set(false);
            doing.set("");
            stopping.stopped().set(true);
        }

        @Override
        public void failed(Exception e) {
            if (of == run) Workbench.this.failed(String.valueOf(e.getMessage()));
        }
    }

    void failed(String sentence) {
        busy.set(false);
        doing.set("");
        fault.set(sentence);
    }

    /** @param add to those already chosen, or take away again, instead of in their place */
    public void choose(String spot, boolean add) {
        choice.choose(spot, add);
    }

    /** Spectrum files that wait for their spot. */
    public LooseSpectra loose() {
        return loose;
    }

    /** Giving up the work that is going on. */
    public Stopping stopping() {
        return stopping;
    }

    /** A scan of any spot; its spot is chosen with it. */
    public void chooseSpectrum(String label) {
        choice.chooseSpectrum(label);
    }

    public void show(Layer layer, boolean on) {
        EnumSet<Layer> now = EnumSet.noneOf(Layer.class);
        now.addAll(layers.get());
        if (on) now.add(layer);
        else now.remove(layer);
        layers.set(now);
    }

    static Optional<LinkedSpectrum> scan(SpotResult spot, String label) {
        return spot.spectra().stream().filter(s -> s.label().equals(label)).findFirst();
    }

    /** The first of the chosen spots. */
    public Optional<SpotResult> primary() {
        if (chosen.get().isEmpty()) return Optional.empty();
        return spot(chosen.get().get(0));
    }

    Optional<SpotResult> spot(String id) {
        return result.get()
                .flatMap(
                        r -> r.spots().stream().filter(s -> s.spot().equals(id)).findFirst());
    }

    /** Puts on the bench what the results say of the chosen scan. */
    void refresh() {
        bench.set(primary().flatMap(s -> BenchData.of(s, spectrum.get()).map(b -> windows.stated(b, s))));
    }

    public List<SpotFace> faces() {
        return result.get()
                .map(r -> r.spots().stream().map(s -> SpotFace.of(s, words)).toList())
                .orElse(List.of());
    }

    public ScanLanes lanes() {
        return primary().map(s -> ScanLanes.of(s.spectra())).orElse(ScanLanes.NONE);
    }

    public Optional<Account> account() {
        return primary().map(spot -> {
            List<Finding> findings = new ArrayList<>();
            for (Finding f : result.get().orElseThrow().findings()) {
                boolean ofRun = f.spot().isEmpty()
                        && (f.sample().isEmpty() || f.sample().equals(spot.sample()));
                if (ofRun || f.spot().equals(spot.spot())) findings.add(f);
            }
            return Account.of(spot, findings, words);
        });
    }

    /** The scan of the same name at the other chosen spots. */
    public List<BenchData> compared() {
        return choice.compared();
    }

    /** Lines that the reference data have near a measured energy, for a person. */
    public List<LineCandidates.Candidate> candidates(double measuredEv) {
        if (bench.get().isEmpty() || primary().isEmpty()) return List.of();
        return LineCandidates.at(reference, primary().get(), bench.get().get().photonEnergyEv(), measuredEv);
    }

    /** Windows dragged by hand. */
    public WindowDrag windows() {
        return windows;
    }

    /** Changes by hand and the reasons for them. */
    public Signing signing() {
        return signing;
    }

    /** The fit of the scan on the bench. */
    public FitEditor fits() {
        return fits;
    }

    /** What was done, and going back to it. */
    public Past past() {
        return past;
    }

    @Override
    public void close() {
        if (open != null) open.close();
        background.shutdownNow();
    }

    Optional<LivingRun> living() {
        return Optional.ofNullable(run);
    }

    Optional<Opened> opened() {
        return Optional.ofNullable(open);
    }

    ReferenceData reference() {
        return reference;
    }

    OffsetDateTime now() {
        return OffsetDateTime.now(clock);
    }

    Words words() {
        return words;
    }

    void inBackground(Runnable work) {
        background.execute(work);
    }

    void onScreen(Runnable change) {
        screen.execute(change);
    }

    public ObjectProperty<Optional<RunResult>> result() {
        return result;
    }

    public ObjectProperty<Optional<HolderPicture>> picture() {
        return picture;
    }

    /** Ids of the chosen spots, the one that everything shows first. */
    public ObjectProperty<List<String>> chosen() {
        return chosen;
    }

    /** Label of the scan on the bench. */
    public StringProperty spectrum() {
        return spectrum;
    }

    public ObjectProperty<Set<Layer>> layers() {
        return layers;
    }

    public ObjectProperty<Optional<BenchData>> bench() {
        return bench;
    }

    /** What went wrong last, a sentence; empty when nothing did. */
    public StringProperty fault() {
        return fault;
    }

    /** What is being done; empty when nothing is. */
    public StringProperty doing() {
        return doing;
    }

    public DoubleProperty progress() {
        return progress;
    }

    public BooleanProperty busy() {
        return busy;
    }

    /** What is open. */
    public ObjectProperty<Optional<Path>> file() {
        return file;
    }

    public StringProperty title() {
        return title;
    }
}
