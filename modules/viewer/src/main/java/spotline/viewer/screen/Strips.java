package spotline.viewer.screen;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import spotline.report.figure.CurveStyle;
import spotline.viewer.model.Layer;
import spotline.viewer.model.Signing;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;

/** The narrow strips of the window: what went wrong, what is shown, what waits for its reason, what is being done. */
final class Strips {
    private Strips() {}

    static Node fault(Workbench bench, Words words) {
        Label text = new Label();
        text.setId("fault");
        text.setWrapText(true);
        text.setMaxWidth(Double.MAX_VALUE);
        text.textProperty().bind(bench.fault());
        HBox.setHgrow(text, Priority.ALWAYS);
        Button close = Controls.button(
                words, "fault-close", "fault.close", () -> bench.fault().set(""));
        close.setMinWidth(Button.USE_PREF_SIZE);
        HBox bar = new HBox(8, text, close);
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.getStyleClass().add("fault-bar");
        bar.visibleProperty().bind(bench.fault().isNotEmpty());
        bar.managedProperty().bind(bar.visibleProperty());
        return bar;
    }

    /** @param samples is given the pieces of curves that the switches show, for another room's colours */
    static Node layers(Workbench bench, Words words, Consumer<LineSample> samples) {
        FlowPane bar = new FlowPane(4, 4);
        bar.getStyleClass().add("layer-bar");
        for (Layer layer : Layer.values()) {
            ToggleButton button = Controls.toggle(words, "layer-" + layer.name().toLowerCase(Locale.ROOT), layer.key());
            button.setSelected(bench.layers().get().contains(layer));
            button.setOnAction(e -> bench.show(layer, button.isSelected()));
            bench.layers().addListener((o, was, is) -> button.setSelected(is.contains(layer)));
            style(layer).ifPresent(s -> {
                LineSample sample = new LineSample(s, Palette.LIGHT);
                button.setGraphic(sample);
                samples.accept(sample);
            });
            bar.getChildren().add(button);
        }
        return bar;
    }

    private static Optional<CurveStyle> style(Layer layer) {
        return switch (layer) {
            case MEASURED -> Optional.of(CurveStyle.MEASURED);
            case BACKGROUND -> Optional.of(CurveStyle.BACKGROUND);
            case MODEL -> Optional.of(CurveStyle.SUM);
            case COMPONENTS, LINES, OTHER_SPOTS, REFERENCED, DIFFERENCE, NORMALISED -> Optional.empty();
        };
    }

    /** A change by hand waits here for its reason. */
    static Node reason(Workbench bench, Words words) {
        Signing signing = bench.signing();
        Label what = new Label();
        what.setId("pending");
        what.setMinWidth(60);
        TextField why = Controls.field(words.of("reason.why"), "why");
        HBox.setHgrow(why, Priority.ALWAYS);
        TextField who = Controls.field(words.of("reason.who"), "who");
        who.setText(System.getProperty("user.name", ""));
        who.setPrefColumnCount(8);
        Button keep = Controls.button(words, "keep", "reason.keep", () -> {
            signing.keep(who.getText(), why.getText());
            if (signing.pending().get().isEmpty()) why.clear();
        });
        keep.setDefaultButton(true);
        keep.disableProperty()
                .bind(why.textProperty().isEmpty().or(who.textProperty().isEmpty()));
        Button drop = Controls.button(words, "drop", "reason.drop", signing::drop);
        HBox bar = new HBox(6, what, why, who, keep, drop);
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.getStyleClass().add("reason-bar");
        bar.setVisible(false);
        bar.managedProperty().bind(bar.visibleProperty());
        signing.pending().addListener((o, was, is) -> {
            bar.setVisible(is.isPresent());
            is.ifPresent(p -> what.setText(p.title()));
            if (is.isPresent() && was.isEmpty()) why.requestFocus();
        });
        return bar;
    }

    static Node doing(Workbench bench, Words words) {
        ProgressBar progress = new ProgressBar();
        progress.setPrefWidth(120);
        progress.setAccessibleText(words.of("work.progress"));
        progress.progressProperty()
                .bind(Bindings.when(bench.busy()).then(bench.progress()).otherwise(ProgressBar.INDETERMINATE_PROGRESS));
        Label doing = new Label();
        doing.setId("doing");
        doing.textProperty()
                .bind(Bindings.when(bench.busy()).then(bench.doing()).otherwise(words.of("work.fitting")));
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        HBox bar = new HBox(
                8, progress, doing, space, Controls.button(words, "cancel", "work.cancel", bench.stopping()::cancel));
        bar.setPadding(new Insets(3, 10, 3, 10));
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.visibleProperty().bind(bench.busy().or(bench.fits().fitting()));
        bar.managedProperty().bind(bar.visibleProperty());
        return bar;
    }

    /** Says that results are older than the last change, after work was cancelled. */
    static Node stopped(Workbench bench, Words words) {
        Label text = new Label(words.of("work.stopped"));
        HBox bar = new HBox(8, text, Controls.button(words, "go-on", "work.go-on", bench.stopping()::goOn));
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.getStyleClass().add("fault-bar");
        bar.visibleProperty().bind(bench.stopping().stopped());
        bar.managedProperty().bind(bar.visibleProperty());
        return bar;
    }
}
