package spotline.viewer.screen;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.report.text.DisplayNumber;
import spotline.viewer.model.FitEditor;
import spotline.viewer.model.FitEditor.Holding;
import spotline.viewer.model.FitEditor.Row;

/** The fit model of the scan on the bench, a block a component, a line a parameter. */
final class FitPane extends ScrollPane {
    /** Parameter, what holds it, its number, the fitted value: percent of the width. */
    private static final double[] COLUMNS = {29, 27, 19, 25};

    private final FitEditor editor;
    private final Words words;
    private final VBox components = new VBox(8);
    private final ToggleButton adding;

    /**
     * @param close puts the editor down
     * @param apply asks for the spots to carry the settings to
     */
    FitPane(FitEditor editor, Words words, Runnable close, Runnable apply) {
        this.editor = editor;
        this.words = words;
        setId("fit-editor");
        getStyleClass().add("account");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        adding = new ToggleButton(words.of("fit.add"));
        adding.setId("fit-add");
        adding.setTooltip(new Tooltip(words.of("fit.add.help")));
        FlowPane tools = new FlowPane(4, 4);
        tools.getChildren()
                .addAll(
                        adding,
                        button("fit-guess", "fit.guess", editor::guess),
                        button("fit-again", "fit.again", editor::refit),
                        button("fit-revert", "fit.revert", editor::revert),
                        button("fit-keep", "fit.keep", editor::keep),
                        button("fit-apply", "fit.apply", apply),
                        button("fit-close", "fit.close", close));
        Label name = new Label(words.of("fit.title"));
        name.getStyleClass().add("card-name");
        Label message = new Label();
        message.setId("fit-message");
        message.setWrapText(true);
        message.textProperty().bind(editor.message());
        VBox all = new VBox(8, name, tools, components, message);
        all.getStyleClass().add("cards");
        setContent(all);
        editor.model().addListener((o, was, is) -> show());
        editor.result().addListener((o, was, is) -> show());
    }

    private Button button(String id, String key, Runnable action) {
        Button button = new Button(words.of(key));
        button.setId(id);
        button.setTooltip(new Tooltip(words.of(key + ".help")));
        button.setOnAction(e -> action.run());
        return button;
    }

    /** A click on the bench adds a component when that is asked for. */
    void clicked(double energyEv) {
        if (!adding.isSelected() || editor.model().get().isEmpty()) return;
        adding.setSelected(false);
        editor.add(energyEv);
    }

    private void show() {
        components.getChildren().clear();
        Optional<FitModel> model = editor.model().get();
        if (model.isEmpty()) return;
        List<Row> rows = editor.rows();
        for (ComponentModel c : model.get().components()) {
            components.getChildren().add(block(c, model.get(), rows));
        }
    }

    private Node block(ComponentModel c, FitModel model, List<Row> rows) {
        TextField name = new TextField(c.name());
        name.setId("component-" + c.name());
        name.setOnAction(e -> editor.rename(c.name(), name.getText()));
        HBox.setHgrow(name, Priority.ALWAYS);
        CheckBox doublet = new CheckBox(words.of("fit.doublet"));
        doublet.setSelected(c.doublet().isPresent());
        doublet.setOnAction(e -> editor.doublet(c.name(), doublet.isSelected()));
        HBox head =
                new HBox(6, name, doublet, button("remove-" + c.name(), "fit.remove", () -> editor.remove(c.name())));
        head.setAlignment(Pos.CENTER_LEFT);
        GridPane grid = new GridPane();
        grid.setHgap(6);
        grid.setVgap(2);
        for (double share : COLUMNS) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(share);
            grid.getColumnConstraints().add(column);
        }
        int line = 0;
        for (Row row : rows) {
            if (row.component().equals(c.name())) parameter(grid, line++, row, model);
        }
        VBox box = new VBox(4, head, grid);
        box.getStyleClass().addAll("card", "note");
        return box;
    }

    private void parameter(GridPane grid, int line, Row row, FitModel model) {
        Label what = new Label(words.of("parameter." + row.parameter()));
        what.getStyleClass().add("fact-name");
        what.setTooltip(new Tooltip(words.of("parameter." + row.parameter() + ".unit")));
        ComboBox<Holding> holding = new ComboBox<>();
        holding.getItems().addAll(Holding.FREE, Holding.FIXED);
        boolean first = model.components().get(0).name().equals(row.component());
        if (!first) holding.getItems().addAll(Holding.EQUAL, Holding.OFFSET, Holding.RATIO);
        holding.setValue(row.holding());
        holding.setConverter(new StringConverter<>() {
            @Override
            public String toString(Holding h) {
                String text = words.of("holding." + h.name().toLowerCase(Locale.ROOT));
                return h == row.holding() && !row.leader().isEmpty() ? text + " " + row.leader() : text;
            }

            @Override
            public Holding fromString(String text) {
                throw new UnsupportedOperationException(text);
            }
        });
        holding.setId("hold-" + row.component() + "-" + row.parameter());
        holding.setMaxWidth(Double.MAX_VALUE);
        holding.setOnAction(e -> hold(row, holding.getValue(), model));
        TextField value = number(row.start(), "value-" + row.component() + "-" + row.parameter());
        value.setPromptText(words.of("fit.guessed"));
        value.setDisable(row.holding() == Holding.EQUAL);
        value.setOnAction(e -> typed(row, value.getText()));
        Label fitted = new Label(
                row.fitted().isEmpty()
                        ? ""
                        : DisplayNumber.of(row.fitted().getAsDouble(), row.u(), 3)
                                .text());
        grid.addRow(line, what, holding, value, fitted);
    }

    private static TextField number(OptionalDouble value, String id) {
        TextField field =
                new TextField(value.isPresent() ? spotline.core.Decimal.significant(value.getAsDouble(), 6) : "");
        field.setId(id);
        field.setPrefColumnCount(6);
        return field;
    }

    private void hold(Row row, Holding to, FitModel model) {
        String leader = row.leader().isEmpty() ? model.components().get(0).name() : row.leader();
        double now = row.fitted().orElse(row.start().orElse(0));
        double led = editor.rows().stream()
                .filter(r -> r.component().equals(leader) && r.parameter().equals(row.parameter()))
                .findFirst()
                .map(r -> r.fitted().orElse(r.start().orElse(0)))
                .orElse(0.0);
        ParameterRule rule = switch (to) {
            case FREE ->
                ParameterRule.Free.within(
                        row.holding() == Holding.FREE ? row.min() : Double.NEGATIVE_INFINITY,
                        row.holding() == Holding.FREE ? row.max() : Double.POSITIVE_INFINITY);
            case FIXED -> new ParameterRule.Fixed(now);
            case EQUAL -> new ParameterRule.EqualTo(leader);
            case OFFSET -> new ParameterRule.OffsetFrom(leader, new ParameterRule.Fixed(now - led));
            case RATIO -> new ParameterRule.RatioTo(leader, new ParameterRule.Fixed(led == 0 ? 1 : now / led));
        };
        editor.rule(row.component(), row.parameter(), rule);
    }

    /** A typed number is the start of a free parameter, the value of a fixed one, the ratio or offset of a tie. */
    private void typed(Row row, String text) {
        double value;
        try {
            value = Double.parseDouble(text.strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            editor.message().set(words.of("fit.no-number", text));
            return;
        }
        ParameterRule rule = switch (row.holding()) {
            case FIXED -> new ParameterRule.Fixed(value);
            case FREE -> ParameterRule.Free.from(value, Math.min(value, row.min()), Math.max(value, row.max()));
            case OFFSET -> new ParameterRule.OffsetFrom(row.leader(), new ParameterRule.Fixed(value));
            case RATIO -> new ParameterRule.RatioTo(row.leader(), new ParameterRule.Fixed(value));
            case EQUAL -> new ParameterRule.EqualTo(row.leader());
        };
        editor.rule(row.component(), row.parameter(), rule);
    }
}
