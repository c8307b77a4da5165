package spotline.viewer.screen;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import spotline.viewer.model.HolderPicture;
import spotline.viewer.model.LooseSpectra;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;

/** Files that wait for their spot, a line each. */
final class LayingStrip extends VBox {
    private static final int MOST = 3;
    private static final double HIGHEST = 84;

    private final Workbench bench;
    private final Words words;

    LayingStrip(Workbench bench, Words words) {
        super(4);
        this.bench = bench;
        this.words = words;
        setId("laying");
        getStyleClass().add("reason-bar");
        setVisible(false);
        managedProperty().bind(visibleProperty());
        bench.loose().waiting().addListener((o, was, is) -> show(is));
    }

    private void show(List<LooseSpectra.Loose> waiting) {
        setVisible(!waiting.isEmpty());
        getChildren().clear();
        if (waiting.isEmpty()) return;
        Label title = new Label(words.of("laying.title"));
        title.getStyleClass().add("card-name");
        Button close = Controls.button(words, "laying-close", "laying.close", bench.loose()::leaveAll);
        HBox head = new HBox(8, title, close);
        head.setAlignment(Pos.CENTER_LEFT);
        getChildren().add(head);
        VBox lines = new VBox(4);
        for (int i = 0; i < waiting.size(); i++) lines.getChildren().add(line(waiting.get(i), i));
        if (waiting.size() <= MOST) {
            getChildren().add(lines);
            return;
        }
        ScrollPane scroll = new ScrollPane(lines);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setPrefViewportHeight(HIGHEST);
        scroll.setMaxHeight(HIGHEST);
        scroll.setFocusTraversable(false);
        scroll.getStyleClass().add("account");
        getChildren().add(scroll);
    }

    private Node line(LooseSpectra.Loose loose, int number) {
        Label sentence = new Label(loose.sentence());
        sentence.setId("laying-" + number);
        sentence.setWrapText(true);
        sentence.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(sentence, Priority.ALWAYS);
        HBox line = new HBox(8, sentence);
        line.setAlignment(Pos.CENTER_LEFT);
        if (!loose.fits()) return line;
        ComboBox<String> spot = new ComboBox<>();
        spot.setId("laying-spot-" + number);
        spot.setAccessibleText(words.of("laying.spot") + ", " + loose.name());
        bench.picture()
                .get()
                .ifPresent(
                        p -> p.spots().stream().map(HolderPicture.SpotPlace::id).forEach(spot.getItems()::add));
        bench.chosen().get().stream().findFirst().ifPresent(spot::setValue);
        Button put = Controls.button(words, "laying-put-" + number, "laying.put", () -> {
            if (spot.getValue() != null) bench.loose().lay(loose, spot.getValue());
        });
        put.setMinWidth(Button.USE_PREF_SIZE);
        line.getChildren().addAll(new Label(words.of("laying.spot")), spot, put);
        return line;
    }
}
