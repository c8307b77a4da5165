package spotline.viewer.screen;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.SplitPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import spotline.report.ResultFiles;
import spotline.run.RunResult;
import spotline.viewer.model.ChargeOverview;
import spotline.viewer.model.CompositionGrid;
import spotline.viewer.model.LineCandidates;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;

/** The whole window over a workbench. */
public final class WorkbenchWindow {
    private static final double LARGEST_TEXT = 1.6;
    private static final double SMALLEST_TEXT = 0.8;
    private static final int MOST_UNSEEN = 3;

    /** The account beside the bench: a share of the window's width, within what its lines need. */
    private static final double SIDE_SHARE = 0.32;

    private static final double SIDE_LOWEST = 440;
    private static final double SIDE_HIGHEST = 580;

    private final Workbench bench;
    private final Words words;
    private final Optional<Path> demo;
    private final Consumer<String> settled;
    private final BorderPane root = new BorderPane();
    private final HolderBar holder;
    private final ScanRuler ruler;
    private final BenchPane plot;
    private final AccountPane account;
    private final FitPane fit;
    private final StackPane side = new StackPane();
    private final CompositionPane composition;
    private final ChargePane charge;
    private final HistoryPane history;
    private final FileActions files;
    private final ToolStrip tools;
    private final StackPane centre = new StackPane();
    private final ToggleButton chargeView;
    private final ToggleButton historyView;
    private final ToggleButton dark;
    private final List<LineSample> samples = new ArrayList<>();
    private Palette palette = Palette.LIGHT;
    private double textScale = 1;

    /**
     * @param demo the demonstration's holder run, offered while nothing is open
     * @param settled is told the title when a run was drawn for the first time
     */
    public WorkbenchWindow(Workbench bench, Words words, Optional<Path> demo, Consumer<String> settled) {
        this.bench = bench;
        this.words = words;
        this.demo = demo;
        this.settled = settled;
        fit = new FitPane(bench.fits(), words, bench.fits()::end, this::applyToChosen);
        holder = new HolderBar(words, bench::choose);
        ruler = new ScanRuler(words, bench::chooseSpectrum);
        plot = new BenchPane(
                words,
                new BenchPane.Listener() {
                    @Override
                    public void window(String line, double lowEv, double highEv, boolean done) {
                        plot.tell(line, lowEv, highEv);
                        bench.windows().move(line, lowEv, highEv, done);
                    }

                    @Override
                    public void component(String name, double energyEv, double factor) {
                        bench.fits().move(name, energyEv, factor);
                    }

                    @Override
                    public void clicked(double energyEv) {
                        fit.clicked(energyEv);
                    }
                },
                this::candidates);
        account = new AccountPane(words, bench::chooseSpectrum, bench.signing()::silence, bench.fits()::begin);
        composition = new CompositionPane(words, cell -> {
            bench.choose(cell.spot(), false);
            bench.chooseSpectrum(cell.spectrum());
        });
        charge = new ChargePane(words, spot -> {
            bench.choose(spot, false);
            showCharge(false);
        });
        history = new HistoryPane(bench.past(), words, () -> showHistory(false));
        files = new FileActions(
                bench, words, () -> root.getScene().getWindow(), () -> composition, ResultFiles::contents);
        chargeView = Controls.toggle(words, "charge", "view.charge");
        historyView = Controls.toggle(words, "show-history", "past.show");
        historyView.setOnAction(e -> showHistory(historyView.isSelected()));
        dark = Controls.toggle(words, "dark", "view.dark");
        tools = new ToolStrip(
                bench,
                words,
                files,
                List.of(historyView, chargeView),
                List.of(
                        Controls.button(words, "smaller", "view.smaller", () -> textSize(textScale - 0.1)),
                        Controls.button(words, "larger", "view.larger", () -> textSize(textScale + 0.1)),
                        dark));
        chargeView.setOnAction(e -> showCharge(chargeView.isSelected()));
        dark.setOnAction(e -> room());
        root.setId("workbench");
        root.getStylesheets().add(stylesheet());
        build();
        listen();
        room();
        // A run that is being opened may be there before the window is.
        holder.managedProperty().bind(holder.visibleProperty());
        holder.setVisible(bench.picture().get().isPresent());
        if (bench.picture().get().isEmpty()) empty();
        else root.setCenter(centre);
        bench.result().get().ifPresent(this::treated);
    }

    private static String stylesheet() {
        return java.util.Objects.requireNonNull(
                        WorkbenchWindow.class.getResource("/spotline/viewer/viewer.css"), "viewer.css")
                .toExternalForm();
    }

    public Parent root() {
        return root;
    }

    private void build() {
        SplitPane upper = new SplitPane(
                new VBox(Strips.layers(bench, words, samples::add), Strips.reason(bench, words), grow(plot)), side);
        upper.widthProperty().addListener((o, was, is) -> {
            if (was.doubleValue() > 0 || !(is.doubleValue() > 0)) return;
            double wanted = Math.max(SIDE_LOWEST, Math.min(SIDE_HIGHEST, SIDE_SHARE * is.doubleValue()));
            upper.setDividerPositions(Math.max(0.5, 1 - wanted / is.doubleValue()));
        });
        SplitPane.setResizableWithParent(side, false);
        side.getChildren().setAll(account, fit, history);
        showSide();
        SplitPane lower = new SplitPane(upper, composition);
        lower.setOrientation(Orientation.VERTICAL);
        lower.setDividerPositions(0.74);
        SplitPane.setResizableWithParent(composition, false);
        VBox work = new VBox(ruler, grow(lower));
        centre.getChildren().setAll(work, charge);
        charge.setVisible(false);
        root.setTop(new VBox(
                tools,
                Strips.fault(bench, words),
                Strips.stopped(bench, words),
                new LayingStrip(bench, words),
                holder));
        root.setCenter(centre);
        root.setBottom(Strips.doing(bench, words));
        side.setMinWidth(250);
        root.addEventFilter(KeyEvent.KEY_PRESSED, this::shortcut);
        root.setOnDragOver(e -> {
            if (e.getDragboard().hasFiles()) e.acceptTransferModes(TransferMode.COPY);
            e.consume();
        });
        root.setOnDragDropped(e -> {
            if (e.getDragboard().hasFiles()) files.took(e.getDragboard().getFiles());
            e.setDropCompleted(e.getDragboard().hasFiles());
            e.consume();
        });
    }

    private static Node grow(Region node) {
        VBox.setVgrow(node, Priority.ALWAYS);
        return node;
    }

    /** Exports the table, for tests and for whoever has the name already. */
    void exportTo(Path file) {
        files.exportTo(file);
    }

    void saveTo(Path file) {
        files.saveTo(file);
    }

    private void listen() {
        bench.picture().addListener((o, was, is) -> {
            root.setCenter(centre);
            holder.setVisible(true);
            drawHolder();
        });
        bench.chosen().addListener((o, was, is) -> {
            drawHolder();
            drawSpot();
        });
        bench.result().addListener((o, was, is) -> {
            drawHolder();
            drawSpot();
            plot.hush();
            is.ifPresent(this::treated);
        });
        bench.signing().pending().addListener((o, was, is) -> {
            if (is.isEmpty()) plot.hush();
        });
        bench.spectrum().addListener((o, was, is) -> ruler.show(bench.lanes(), is, palette, textScale));
        bench.bench().addListener((o, was, is) -> drawBench());
        bench.layers().addListener((o, was, is) -> drawBench());
        bench.fits().model().addListener((o, was, is) -> {
            if (was.isPresent() == is.isPresent()) return;
            showSide();
            drawBench();
        });
    }

    private void treated(RunResult result) {
        composition.show(CompositionGrid.of(result, bench.past().exceptions(), words));
        charge.show(ChargeOverview.of(result, words), palette, textScale);
        settled.accept(bench.title().get());
    }

    /** The history where it is asked for, else the fit that is edited, else the account. */
    private void showSide() {
        boolean past = historyView.isSelected();
        boolean fitting = bench.fits().model().get().isPresent();
        history.setVisible(past);
        fit.setVisible(!past && fitting);
        account.setVisible(!past && !fitting);
    }

    private void showHistory(boolean on) {
        if (bench.picture().get().isEmpty()) return;
        historyView.setSelected(on);
        showSide();
    }

    /** The settings of the first chosen spot go to the others that are chosen. */
    private void applyToChosen() {
        List<String> chosen = bench.chosen().get();
        if (chosen.size() < 2) {
            bench.fits().message().set(words.of("fit.choose-others"));
            return;
        }
        bench.fits().applyTo(chosen.subList(1, chosen.size()));
    }

    private void drawHolder() {
        bench.picture()
                .get()
                .ifPresent(p -> holder.show(
                        p, bench.faces(), new LinkedHashSet<>(bench.chosen().get()), palette, textScale));
    }

    private void drawSpot() {
        ruler.show(bench.lanes(), bench.spectrum().get(), palette, textScale);
        account.show(bench.account());
    }

    private void drawBench() {
        plot.show(
                bench.bench().get(),
                bench.compared(),
                bench.layers().get(),
                palette,
                textScale,
                bench.fits().model().get().isPresent());
    }

    /** Lines near a place of the plot: those that were found there, then what the tables have. */
    private String candidates(double measuredEv) {
        List<String> here =
                new ArrayList<>(bench.bench().get().map(b -> b.linesNear(measuredEv)).orElse(List.of()).stream()
                        .map(l -> words.of("bench.found", l.line()))
                        .toList());
        List<String> unseen = new ArrayList<>();
        for (LineCandidates.Candidate c : bench.candidates(measuredEv)) {
            String text = String.format(Locale.ROOT, "%s %.1f", c.line(), c.energyEv());
            if (c.known()) here.add(text);
            else if (unseen.size() < MOST_UNSEEN) unseen.add(text);
        }
        String first = here.isEmpty() ? words.of("bench.no-line") : String.join(", ", here);
        return unseen.isEmpty() ? first : words.of("bench.unseen", first, String.join(", ", unseen));
    }

    /** What is shown while nothing is open. */
    private void empty() {
        Label what = new Label(words.of("empty.what"));
        what.setWrapText(true);
        what.getStyleClass().add("empty-text");
        what.setMaxWidth(520);
        VBox box = new VBox(14, what, Controls.button(words, "empty-open", "file.open", files::open));
        demo.ifPresent(
                d -> box.getChildren().add(Controls.button(words, "empty-demo", "empty.demo", () -> bench.open(d))));
        box.setAlignment(Pos.CENTER);
        box.getStyleClass().add("empty");
        root.setCenter(box);
    }

    private void showCharge(boolean on) {
        if (bench.picture().get().isEmpty()) return;
        chargeView.setSelected(on);
        charge.setVisible(on);
        centre.getChildren().get(0).setVisible(!on);
    }

    private void room() {
        palette = dark.isSelected() ? Palette.DARK : Palette.LIGHT;
        root.getStyleClass().removeAll("light-room", "dark-room");
        root.getStyleClass().add(dark.isSelected() ? "dark-room" : "light-room");
        samples.forEach(s -> s.room(palette));
        redraw();
    }

    private void textSize(double scale) {
        textScale = Math.max(SMALLEST_TEXT, Math.min(LARGEST_TEXT, scale));
        root.setStyle(String.format(Locale.ROOT, "-fx-font-size: %.2fpx;", 12.5 * textScale));
        composition.textScale(textScale);
        fit.textScale(textScale);
        tools.textScale(textScale);
        redraw();
    }

    private void redraw() {
        drawHolder();
        drawSpot();
        drawBench();
        bench.result().get().ifPresent(r -> charge.show(ChargeOverview.of(r, words), palette, textScale));
    }

    private void shortcut(KeyEvent e) {
        List<Map.Entry<KeyCombination, Runnable>> all = new ArrayList<>();
        all.add(Map.entry(new KeyCodeCombination(KeyCode.O, KeyCombination.SHORTCUT_DOWN), files::open));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.S, KeyCombination.SHORTCUT_DOWN), files::save));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN), bench.past()::undo));
        all.add(Map.entry(
                new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN),
                bench.past()::redo));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.F2), () -> holder.requestFocus()));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.F3), () -> ruler.requestFocus()));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.F4), () -> plot.requestFocus()));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.F6), () -> showCharge(!chargeView.isSelected())));
        all.add(Map.entry(new KeyCodeCombination(KeyCode.F7), () -> showHistory(!historyView.isSelected())));
        for (Map.Entry<KeyCombination, Runnable> entry : all) {
            if (!entry.getKey().match(e)) continue;
            entry.getValue().run();
            e.consume();
            return;
        }
        if (e.getCode() == KeyCode.ESCAPE && bench.signing().pending().get().isPresent()) {
            bench.signing().drop();
            e.consume();
        }
    }
}
