package spotline.viewer.screen;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import spotline.run.document.Edit;
import spotline.viewer.model.Past;
import spotline.viewer.model.Words;

/** What was done to the run, the newest at the bottom; each state can be gone back to, and have a name. */
final class HistoryPane extends ScrollPane {
    private final Past past;
    private final Words words;
    private final VBox list = new VBox(6);

    HistoryPane(Past past, Words words, Runnable close) {
        this.past = past;
        this.words = words;
        setId("history");
        getStyleClass().add("account");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        Label title = new Label(words.of("past.title"));
        title.getStyleClass().add("card-name");
        TextField name = Controls.field(words.of("past.checkpoint-name"), "checkpoint-name");
        HBox.setHgrow(name, Priority.ALWAYS);
        Button set = Controls.button(words, "checkpoint-set", "past.set", () -> {
            past.checkpoint(name.getText());
            name.clear();
        });
        set.setMinWidth(Button.USE_PREF_SIZE);
        set.disableProperty().bind(name.textProperty().isEmpty());
        name.setOnAction(e -> set.fire());
        HBox naming = new HBox(6, name, set);
        naming.setAlignment(Pos.CENTER_LEFT);
        VBox all = new VBox(10, title, naming, list, Controls.button(words, "history-close", "past.close", close));
        all.getStyleClass().add("cards");
        setContent(all);
        past.shown().addListener((o, was, is) -> show(is));
        show(past.shown().get());
    }

    private void show(Past.Shown shown) {
        list.getChildren().clear();
        for (Past.Entry entry : shown.entries()) list.getChildren().add(entry(entry));
        if (!shown.elsewhere().isEmpty()) {
            list.getChildren().add(quiet(words.of("past.elsewhere")));
            shown.elsewhere().forEach(c -> list.getChildren().add(back(c)));
        }
        for (String gone : shown.takenBack()) list.getChildren().add(quiet(words.of("past.taken-back", gone)));
        if (!shown.reported() && !shown.entries().isEmpty()) list.getChildren().add(quiet(words.of("past.no-report")));
    }

    private Node entry(Past.Entry entry) {
        String title = entry.edit().map(Edit::title).orElse(words.of("past.opened"));
        boolean undone = entry.standing() == Past.Standing.UNDONE;
        Hyperlink link = new Hyperlink(undone ? words.of("past.undone", title) : title);
        link.setId("past-" + entry.number());
        link.setWrapText(true);
        link.setAccessibleHelp(words.of("past.go"));
        link.setOnAction(e -> past.goTo(entry.number()));
        VBox box = new VBox(1, link);
        box.getStyleClass().addAll("card", "past");
        if (entry.now()) box.getStyleClass().add("now");
        if (undone) box.setOpacity(0.6);
        entry.edit()
                .filter(e -> !e.why().isEmpty() || !e.who().isEmpty())
                .ifPresent(e -> box.getChildren()
                        .add(quiet(e.why().isEmpty() ? e.who() : words.of("past.by", e.who(), e.why()))));
        if (entry.sinceReport()) box.getChildren().add(quiet(words.of("past.since")));
        for (String checkpoint : entry.checkpoints()) {
            if (entry.now()) box.getChildren().add(quiet(words.of("past.checkpoint") + ": " + checkpoint));
            else box.getChildren().add(back(checkpoint));
        }
        return box;
    }

    private Hyperlink back(String checkpoint) {
        Hyperlink link = new Hyperlink(words.of("past.back", checkpoint));
        link.setId("back-" + checkpoint);
        link.setOnAction(e -> past.back(checkpoint));
        return link;
    }

    private static Label quiet(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("fact-name");
        label.setWrapText(true);
        return label;
    }

    /** What can be gone to, for tests. */
    List<Node> entries() {
        return List.copyOf(list.getChildren());
    }
}
