package spotline.viewer.screen;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;

/** Opening, saving, going back, what is shown: with the run's title among them, or on a line of its own where text is large. */
final class ToolStrip extends VBox {
    private static final double LARGE = 1.15;
    private static final double GAP = 6;

    private final List<Region> before;
    private final List<Region> after;
    private final Label title = new Label();

    /**
     * @param views what the window can show
     * @param looks how it shows it
     */
    ToolStrip(
            Workbench bench,
            Words words,
            FileActions files,
            List<? extends Region> views,
            List<? extends Region> looks) {
        super(4);
        getStyleClass().add("tool-bar-strip");
        title.getStyleClass().add("title");
        title.setId("title");
        title.setMinWidth(0);
        title.textProperty().bind(bench.title());
        Tooltip whole = new Tooltip();
        whole.textProperty().bind(bench.title());
        title.setTooltip(whole);
        views.forEach(v -> v.disableProperty()
                .bind(Bindings.createBooleanBinding(() -> bench.picture().get().isEmpty(), bench.picture())));
        Button undo = Controls.button(words, "undo", "edit.undo", bench.past()::undo);
        undo.disableProperty().bind(bench.past().undoable().isEmpty());
        undo.getTooltip()
                .textProperty()
                .bind(Bindings.concat(
                        words.of("edit.undo.help"), " ", bench.past().undoable()));
        Button redo = Controls.button(words, "redo", "edit.redo", bench.past()::redo);
        redo.disableProperty().bind(bench.past().redoable().isEmpty());
        redo.getTooltip()
                .textProperty()
                .bind(Bindings.concat(
                        words.of("edit.redo.help"), " ", bench.past().redoable()));
        Button save = Controls.button(words, "save", "file.save", files::save);
        save.disableProperty()
                .bind(Bindings.createBooleanBinding(() -> bench.file().get().isEmpty(), bench.file()));
        Button spectra = Controls.button(words, "spectra", "file.spectra", files::openSpectra);
        spectra.disableProperty().bind(save.disableProperty());
        before = List.of(Controls.button(words, "open", "file.open", files::open), files.recentMenu(), spectra, save);
        List<Region> right = new ArrayList<>(List.of(undo, redo));
        right.addAll(views);
        right.add(files.exportMenu());
        right.addAll(looks);
        after = List.copyOf(right);
        before.forEach(b -> b.setMinWidth(USE_PREF_SIZE));
        after.forEach(b -> b.setMinWidth(USE_PREF_SIZE));
        textScale(1);
    }

    void textScale(double scale) {
        List<Node> buttons = new ArrayList<>(before);
        if (scale > LARGE) {
            buttons.addAll(after);
            FlowPane all = new FlowPane(GAP, GAP);
            all.getChildren().setAll(buttons);
            title.setStyle("-fx-padding: 0;");
            getChildren().setAll(all, title);
            return;
        }
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        title.setStyle("");
        buttons.add(title);
        buttons.add(space);
        buttons.addAll(after);
        HBox line = new HBox(GAP);
        line.setAlignment(Pos.CENTER_LEFT);
        getChildren().setAll(line);
        line.getChildren().setAll(buttons);
    }
}
