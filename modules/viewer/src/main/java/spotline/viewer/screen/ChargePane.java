package spotline.viewer.screen;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import javafx.scene.text.Text;
import spotline.viewer.model.ChargeOverview;
import spotline.viewer.model.Curve;
import spotline.viewer.model.Words;

/** The reference lines of all spots on one axis, as measured and as referenced: a row a spot. */
public final class ChargePane extends Region {
    private static final double LEFT = 190;
    private static final double RIGHT = 230;
    private static final double TOP = 26;
    private static final double BOTTOM = 34;
    private static final double LARGEST_ROW = 132;

    private final Pane drawing = new Pane();
    private final Consumer<String> choose;
    private final Words words;
    private ChargeOverview overview = new ChargeOverview(java.util.List.of());
    private Palette palette = Palette.LIGHT;
    private double scale = 1;
    private double left = LEFT;
    private double right = RIGHT;
    private double drawnWidth = -1;
    private double drawnHeight = -1;

    public ChargePane(Words words, Consumer<String> choose) {
        this.words = words;
        this.choose = choose;
        setId("charge-view");
        setAccessibleText(words.of("charge.name"));
        getStyleClass().add("charge-view");
        getChildren().add(drawing);
    }

    public void show(ChargeOverview newOverview, Palette newPalette, double newTextScale) {
        scale = newTextScale;
        left = LEFT * newTextScale;
        right = RIGHT * newTextScale;
        overview = newOverview;
        palette = newPalette;
        requestLayout();
        draw();
    }

    @Override
    protected double computeMinHeight(double width) {
        return (TOP + BOTTOM) * scale + 34.0 * scale * overview.rows().size();
    }

    @Override
    protected void layoutChildren() {
        // Drawing changes what is laid out: only another size asks for it.
        if (getWidth() != drawnWidth || getHeight() != drawnHeight) draw();
    }

    private double low = Double.NaN;
    private double high = Double.NaN;

    private void extent() {
        low = Double.POSITIVE_INFINITY;
        high = Double.NEGATIVE_INFINITY;
        for (ChargeOverview.Row row : overview.rows()) {
            if (row.scan().isEmpty()) continue;
            Curve scan = row.scan().get();
            double shift = row.shiftEv().orElse(0);
            low = Math.min(low, scan.energy(0) + Math.min(0, shift));
            high = Math.max(high, scan.energy(scan.channels() - 1) + Math.max(0, shift));
        }
    }

    private double x(double energyEv) {
        return left + (high - energyEv) / (high - low) * (getWidth() - left - right);
    }

    private void draw() {
        drawnWidth = getWidth();
        drawnHeight = getHeight();
        drawing.resizeRelocate(0, 0, getWidth(), getHeight());
        drawing.getChildren().clear();
        extent();
        if (getWidth() < left + right + 80) return;
        double room = (getHeight() - (TOP + BOTTOM) * scale)
                / Math.max(1, overview.rows().size());
        double rowHeight = Math.min(LARGEST_ROW, room);
        text(left, 6, words.of("charge.legend"), palette.quiet());
        double y = TOP * scale;
        for (ChargeOverview.Row row : overview.rows()) {
            row(row, y, rowHeight);
            y += rowHeight;
        }
        if (high > low) axis(y);
    }

    private void row(ChargeOverview.Row row, double y, double height) {
        Node mark = VerdictMark.of(row.verdict(), 11, palette);
        mark.relocate(14, y + height / 2 - 6);
        Region hit = new Region();
        hit.setManaged(false);
        hit.setId("charge-" + row.spot());
        hit.getStyleClass().add("charge-row");
        hit.resizeRelocate(4, y + 2, getWidth() - 8, height - 4);
        hit.setAccessibleRole(AccessibleRole.BUTTON);
        hit.setAccessibleText(
                words.of("charge.row", row.spot(), words.word(row.verdict().word()), row.shift()));
        hit.setFocusTraversable(true);
        hit.setOnMouseClicked(e -> choose.accept(row.spot()));
        hit.setOnKeyPressed(e -> {
            if (e.getCode() != KeyCode.ENTER && e.getCode() != KeyCode.SPACE) return;
            choose.accept(row.spot());
            e.consume();
        });
        drawing.getChildren().addAll(hit, mark);
        text(34, y + height / 2 - 15 * scale, row.spot() + "  " + row.sample(), palette.ink());
        text(34, y + height / 2 + 1, words.word(row.verdict().word()), palette.ofVerdict(row.verdict()));
        row.scan().ifPresent(scan -> {
            curve(scan, 0, y, height, palette.quiet(), true);
            row.shiftEv().ifPresent(s -> curve(scan, s, y, height, palette.accent(), false));
        });
        arrow(row.measuredEv(), row.shiftEv(), y + height - 7);
        double at = getWidth() - right + 14;
        text(
                at,
                y + height / 2 - 15 * scale,
                (row.line().isEmpty() ? "" : row.line() + "  ") + row.shift(),
                palette.ink());
        if (!row.drift().isEmpty()) {
            text(at, y + height / 2 + 1, words.of("charge.drift", row.drift()), palette.quiet());
        }
    }

    private void curve(Curve scan, double shiftEv, double y, double height, Color color, boolean thin) {
        Polyline line = new Polyline();
        double span = scan.span() > 0 ? scan.span() : 1;
        double lowest = scan.lowest();
        for (int i = 0; i < scan.channels(); i++) {
            double share = (scan.value(i) - lowest) / span;
            line.getPoints().addAll(x(scan.energy(i) + shiftEv), y + height - 8 - share * (height - 14));
        }
        line.setStroke(color);
        line.setStrokeWidth(thin ? 0.9 : 1.6);
        if (thin) line.getStrokeDashArray().addAll(3.0, 2.0);
        line.setMouseTransparent(true);
        drawing.getChildren().add(line);
    }

    private void arrow(OptionalDouble measuredEv, OptionalDouble shiftEv, double y) {
        if (measuredEv.isEmpty() || shiftEv.isEmpty() || shiftEv.getAsDouble() == 0) return;
        double from = x(measuredEv.getAsDouble());
        double to = x(measuredEv.getAsDouble() + shiftEv.getAsDouble());
        double tip = Math.signum(to - from) * Math.min(5, Math.abs(to - from));
        Polyline arrow = new Polyline(from, y, to, y, to - tip, y - 3, to, y, to - tip, y + 3);
        arrow.setStroke(palette.accent());
        arrow.setStrokeWidth(1.1);
        arrow.setMouseTransparent(true);
        drawing.getChildren().add(arrow);
    }

    private void axis(double y) {
        Line line = new Line(left, y, getWidth() - right, y);
        line.setStroke(palette.quiet());
        drawing.getChildren().add(line);
        double step = high - low > 60 ? 10 : high - low > 24 ? 5 : 2;
        for (double e = Math.ceil(low / step) * step; e <= high; e += step) {
            Line tick = new Line(x(e), y, x(e), y + 4);
            tick.setStroke(palette.quiet());
            drawing.getChildren().add(tick);
            Text number = text(x(e), y + 5, String.format(Locale.ROOT, "%.0f", e), palette.quiet());
            number.setX(-number.getLayoutBounds().getWidth() / 2);
        }
        text(left, y + 4 + 15 * scale, words.of("charge.axis"), palette.quiet());
    }

    private Text text(double x, double y, String what, Color color) {
        Text text = new Text(what);
        text.setFill(color);
        text.setMouseTransparent(true);
        text.setTextOrigin(javafx.geometry.VPos.TOP);
        text.setLayoutX(x);
        text.setLayoutY(y);
        drawing.getChildren().add(text);
        return text;
    }
}
