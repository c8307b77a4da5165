package spotline.viewer.screen;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import javafx.event.ActionEvent;
import javafx.event.EventHandler;
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
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.report.text.DisplayNumber;
import spotline.viewer.model.FitEditor;
import spotline.viewer.model.FitRow;
import spotline.viewer.model.FitRow.Holding;
import spotline.viewer.model.Words;

/** The fit model of the scan on the bench, a block a component, a line a parameter. */
final class FitPane extends ScrollPane {
    private static final double[] HALVES = {50, 50};

    /** Parameter, what holds it, its number, the fitted value: percent of the width. */
    private static final double[] COLUMNS = {18.5, 32, 18.5, 31};

    private static final double LARGE = 1.15;

    private final FitEditor editor;
    private final Words words;
    private final VBox components = new VBox(8);
    private final ToggleButton adding;
    private double textScale = 1;
    private final Set<String> limited = new TreeSet<>();

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
        setFocusTraversable(false);
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

    /** Large text takes two lines a parameter. */
    void textScale(double scale) {
        textScale = scale;
        show();
    }

    private boolean wide() {
        return textScale > LARGE;
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
        List<FitRow> rows = editor.rows();
        for (ComponentModel c : model.get().components()) {
            components.getChildren().add(block(c, model.get(), rows));
        }
    }

    private Node block(ComponentModel c, FitModel model, List<FitRow> rows) {
        TextField name = Controls.field(words.of("fit.name"), "component-" + c.name());
        name.setText(c.name());
        name.setOnAction(e -> editor.rename(c.name(), name.getText()));
        CheckBox doublet = new CheckBox(words.of("fit.doublet"));
        doublet.setSelected(c.doublet().isPresent());
        doublet.setOnAction(e -> editor.doublet(c.name(), doublet.isSelected()));
        CheckBox limits = new CheckBox(words.of("fit.limits"));
        limits.setId("limits-" + c.name());
        limits.setSelected(limited.contains(c.name()));
        limits.setOnAction(e -> {
            if (limits.isSelected()) limited.add(c.name());
            else limited.remove(c.name());
            show();
        });
        FlowPane head = new FlowPane(
                6, 2, name, doublet, limits, button("remove-" + c.name(), "fit.remove", () -> editor.remove(c.name())));
        head.setRowValignment(javafx.geometry.VPos.CENTER);
        name.setPrefColumnCount(9);
        GridPane grid = new GridPane();
        grid.setHgap(6);
        grid.setVgap(2);
        for (double share : wide() ? HALVES : COLUMNS) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(share);
            grid.getColumnConstraints().add(column);
        }
        int line = 0;
        for (FitRow row : rows) {
            if (!row.component().equals(c.name())) continue;
            parameter(grid, line, row, model);
            line += wide() ? 2 : 1;
            if (limits.isSelected() && row.holding() == Holding.FREE) {
                limits(grid, line, row);
                line += wide() ? 2 : 1;
            }
        }
        VBox box = new VBox(4, head, grid);
        box.getStyleClass().addAll("card", "note");
        return box;
    }

    private void parameter(GridPane grid, int line, FitRow row, FitModel model) {
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
        holding.setAccessibleText(words.of("fit.held", what.getText(), row.component()));
        holding.setTooltip(new Tooltip(holding.getConverter().toString(row.holding())));
        holding.setMaxWidth(Double.MAX_VALUE);
        holding.setOnAction(e -> hold(row, holding.getValue(), model));
        TextField value = number(row.start(), "value-" + row.component() + "-" + row.parameter());
        value.setPromptText(words.of("fit.guessed"));
        value.setAccessibleText(words.of("fit.number", what.getText(), row.component()));
        value.setDisable(row.holding() == Holding.EQUAL);
        value.setOnAction(e -> typed(row, value.getText()));
        Label fitted = new Label(
                row.fitted().isEmpty()
                        ? ""
                        : DisplayNumber.of(row.fitted().getAsDouble(), uncertainty(row), 3)
                                .text());
        if (wide()) {
            grid.addRow(line, what, holding);
            grid.addRow(line + 1, value, fitted);
        } else {
            grid.addRow(line, what, holding, value, fitted);
        }
    }

    /** A locked number has none: it was not fitted. */
    private static OptionalDouble uncertainty(FitRow row) {
        return row.holding() == Holding.FIXED ? OptionalDouble.empty() : row.u();
    }

    private void limits(GridPane grid, int line, FitRow row) {
        String id = row.component() + "-" + row.parameter();
        TextField low = bound(row.min(), "low-" + id, words.of("fit.limit-low"));
        TextField high = bound(row.max(), "high-" + id, words.of("fit.limit-high"));
        String parameter = words.of("parameter." + row.parameter());
        low.setAccessibleText(words.of("fit.limit-low-of", parameter, row.component()));
        high.setAccessibleText(words.of("fit.limit-high-of", parameter, row.component()));
        EventHandler<ActionEvent> set = e -> bounded(row, low.getText(), high.getText());
        low.setOnAction(set);
        high.setOnAction(set);
        Label what = new Label(words.of("fit.limits"));
        what.getStyleClass().add("fact-name");
        what.setMaxWidth(Double.MAX_VALUE);
        what.setAlignment(Pos.CENTER_RIGHT);
        if (wide()) {
            grid.addRow(line, what);
            grid.addRow(line + 1, low, high);
        } else {
            grid.addRow(line, what, low, high);
        }
    }

    private static TextField bound(double value, String id, String prompt) {
        TextField field = Controls.field(prompt, id);
        if (!Double.isInfinite(value)) field.setText(spotline.core.Decimal.significant(value, 6));
        field.setPrefColumnCount(6);
        return field;
    }

    private void bounded(FitRow row, String low, String high) {
        OptionalDouble min = low.isBlank() ? OptionalDouble.of(Double.NEGATIVE_INFINITY) : typedNumber(low);
        OptionalDouble max = high.isBlank() ? OptionalDouble.of(Double.POSITIVE_INFINITY) : typedNumber(high);
        if (min.isEmpty() || max.isEmpty()) return;
        editor.limits(row.component(), row.parameter(), min.getAsDouble(), max.getAsDouble());
    }

    /** Empty, with a sentence, where the text is no number. */
    private OptionalDouble typedNumber(String text) {
        try {
            double value = Double.parseDouble(text.strip().replace(',', '.'));
            if (Double.isFinite(value)) return OptionalDouble.of(value);
        } catch (NumberFormatException e) {
            editor.message().set(words.of("fit.no-number", text));
            return OptionalDouble.empty();
        }
        editor.message().set(words.of("fit.no-number", text));
        return OptionalDouble.empty();
    }

    private static TextField number(OptionalDouble value, String id) {
        TextField field =
                new TextField(value.isPresent() ? spotline.core.Decimal.significant(value.getAsDouble(), 6) : "");
        field.setId(id);
        field.setPrefColumnCount(6);
        return field;
    }

    private void hold(FitRow row, Holding to, FitModel model) {
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
    private void typed(FitRow row, String text) {
        OptionalDouble number = typedNumber(text);
        if (number.isEmpty()) return;
        double value = number.getAsDouble();
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
