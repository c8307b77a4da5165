package spotline.viewer.screen;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.shape.Polygon;
import spotline.viewer.model.CompositionGrid;
import spotline.viewer.model.Words;

/** Samples by elements along the bottom; a cell leads to the spectrum, window and spot behind it. */
public final class CompositionPane extends TableView<CompositionGrid.Row> {
    private final Words words;
    private final Consumer<CompositionGrid.Cell> lead;
    private static final double COLUMN = 92;
    private static final double LETTER = 6.3;
    private static final double ROW = 22;

    private double textScale = 1;
    private CompositionGrid grid = new CompositionGrid(java.util.List.of(), java.util.List.of());

    public CompositionPane(Words words, Consumer<CompositionGrid.Cell> lead) {
        this.words = words;
        this.lead = lead;
        setId("composition");
        getStyleClass().add("composition");
        getSelectionModel().setCellSelectionEnabled(true);
        setPlaceholder(new Label(words.of("composition.empty")));
        setAccessibleText(words.of("composition.name"));
        KeyCombination copy = new KeyCodeCombination(KeyCode.C, KeyCombination.SHORTCUT_DOWN);
        addEventHandler(KeyEvent.KEY_PRESSED, e -> {
            if (copy.match(e)) copyAll();
            if (e.getCode() == KeyCode.ENTER) leadFromFocus();
        });
    }

    /** Columns as wide as their text needs. */
    public void textScale(double scale) {
        textScale = scale;
        if (!getColumns().isEmpty()) columns();
    }

    public void show(CompositionGrid newGrid) {
        boolean sameColumns =
                newGrid.elements().equals(grid.elements()) && !getColumns().isEmpty();
        grid = newGrid;
        if (!sameColumns) columns();
        setItems(FXCollections.observableArrayList(newGrid.rows()));
    }

    private int longest() {
        return grid.rows().stream().mapToInt(r -> label(r).length()).max().orElse(0);
    }

    private void columns() {
        setFixedCellSize(ROW * textScale);
        getColumns().clear();
        TableColumn<CompositionGrid.Row, CompositionGrid.Row> sample =
                new TableColumn<>(words.of("composition.sample"));
        sample.setCellValueFactory(row -> new ReadOnlyObjectWrapper<>(row.getValue()));
        sample.setCellFactory(column -> new SampleCell());
        sample.setPrefWidth(textScale * Math.max(150, LETTER * longest() + 38));
        sample.setSortable(false);
        getColumns().add(sample);
        for (int k = 0; k < grid.elements().size(); k++) {
            int index = k;
            TableColumn<CompositionGrid.Row, CompositionGrid.Cell> column =
                    new TableColumn<>(grid.elements().get(k));
            column.setCellValueFactory(
                    row -> new ReadOnlyObjectWrapper<>(row.getValue().cells().get(index)));
            column.setCellFactory(c -> new ValueCell());
            column.setPrefWidth(COLUMN * textScale);
            column.setSortable(false);
            getColumns().add(column);
        }
    }

    private final class SampleCell extends TableCell<CompositionGrid.Row, CompositionGrid.Row> {
        SampleCell() {
            setContentDisplay(ContentDisplay.RIGHT);
            setGraphicTextGap(8);
        }

        @Override
        protected void updateItem(CompositionGrid.Row row, boolean empty) {
            super.updateItem(row, empty);
            boolean own = !empty && row != null && !row.own().isEmpty();
            setGraphic(own ? mark() : null);
            setTooltip(own ? new Tooltip(words.of("own.tooltip", row.own())) : null);
            setAccessibleText(own ? words.of("own.spoken", label(row).strip(), row.own()) : null);
            if (empty || row == null) {
                setText(null);
                return;
            }
            setText(label(row));
        }
    }

    /** A lozenge behind the name: settings of its own. */
    private static Polygon mark() {
        Polygon mark = new Polygon(4, 0, 8, 4, 4, 8, 0, 4);
        mark.getStyleClass().add("own-mark");
        return mark;
    }

    private String label(CompositionGrid.Row row) {
        if (row.replicate()) return "     " + words.of("composition.spot", row.spot());
        return row.sample() + "  "
                + (row.spot().isEmpty() ? words.of("composition.mean") : words.of("composition.spot", row.spot()));
    }

    private final class ValueCell extends TableCell<CompositionGrid.Row, CompositionGrid.Cell> {
        ValueCell() {
            setAlignment(Pos.CENTER_RIGHT);
            addEventHandler(MouseEvent.MOUSE_CLICKED, e -> {
                if (getItem() != null && !getItem().spectrum().isEmpty()) lead.accept(getItem());
            });
        }

        @Override
        protected void updateItem(CompositionGrid.Cell cell, boolean empty) {
            super.updateItem(cell, empty);
            setText(empty || cell == null ? null : cell.text());
        }
    }

    private void leadFromFocus() {
        var at = getFocusModel().getFocusedCell();
        int element = at.getColumn() - 1;
        if (at.getRow() < 0
                || at.getRow() >= grid.rows().size()
                || element < 0
                || element >= grid.elements().size()) return;
        CompositionGrid.Cell cell = grid.rows().get(at.getRow()).cells().get(element);
        if (!cell.spectrum().isEmpty()) lead.accept(cell);
    }

    /** The table as tab-separated text on the clipboard. */
    private void copyAll() {
        StringBuilder text =
                new StringBuilder(words.of("composition.sample") + "\t" + words.of("composition.spot-head"));
        grid.elements().forEach(e -> text.append('\t').append(e));
        for (CompositionGrid.Row row : grid.rows()) {
            text.append('\n').append(row.sample()).append('\t').append(row.spot());
            row.cells().forEach(c -> text.append('\t').append(c.text()));
        }
        ClipboardContent content = new ClipboardContent();
        content.putString(text.toString());
        Clipboard.getSystemClipboard().setContent(content);
    }
}
