package spotline.viewer.screen;

import java.util.Locale;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.text.Text;
import spotline.viewer.model.ScanLanes;
import spotline.viewer.model.Words;

/** One binding-energy axis, from high to low, on which every scan of a spot lies as an interval. */
public final class ScanRuler extends Region {
    private static final double SIDE = 14;
    private static final double LANE = 19;
    private static final double AXIS = 20;
    private static final double SMALLEST = 40;
    private static final double LETTER = 6.6;
    private static final double[] STEPS = {1, 2, 5, 10, 20, 50, 100, 200, 500};

    private final Pane drawing = new Pane();
    private final Words words;
    private final Consumer<String> choose;
    private ScanLanes lanes = ScanLanes.NONE;
    private String chosen = "";
    private Palette palette = Palette.LIGHT;
    private double textScale = 1;
    private double drawnWidth = -1;
    private double drawnHeight = -1;

    public ScanRuler(Words words, Consumer<String> choose) {
        this.words = words;
        this.choose = choose;
        getStyleClass().add("scan-ruler");
        setId("scan-ruler");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.LIST_VIEW);
        setAccessibleText(words.of("ruler.name"));
        getChildren().add(drawing);
        addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
    }

    public void show(ScanLanes newLanes, String newChosen, Palette newPalette, double newTextScale) {
        boolean resized = lanes.lanes() != newLanes.lanes() || newTextScale != textScale;
        textScale = newTextScale;
        lanes = newLanes;
        chosen = newChosen;
        palette = newPalette;
        if (resized) requestLayout();
        draw();
    }

    @Override
    protected double computePrefHeight(double width) {
        return AXIS * textScale + 6 + LANE * textScale * Math.max(2, lanes.lanes());
    }

    @Override
    protected double computeMinHeight(double width) {
        return computePrefHeight(width);
    }

    @Override
    protected void layoutChildren() {
        // Drawing changes what is laid out: only another size asks for it.
        if (getWidth() != drawnWidth || getHeight() != drawnHeight) draw();
    }

    private double x(double energyEv) {
        double share = (lanes.highEv() - energyEv) / (lanes.highEv() - lanes.lowEv());
        return SIDE + share * (getWidth() - 2 * SIDE);
    }

    private void draw() {
        drawnWidth = getWidth();
        drawnHeight = getHeight();
        drawing.resizeRelocate(0, 0, getWidth(), getHeight());
        drawing.getChildren().clear();
        if (getWidth() < 60 || lanes.intervals().isEmpty()) return;
        double axis = getHeight() - AXIS * textScale;
        axis(axis);
        int left = lanes.lanes();
        for (ScanLanes.Interval i : lanes.intervals()) {
            drawing.getChildren().add(interval(i, axis - LANE * textScale * (left - i.lane())));
        }
        // What is made while the window is laid out would be styled a frame late, or never.
        drawing.applyCss();
        drawing.layout();
    }

    private void axis(double y) {
        Line line = new Line(SIDE, y, getWidth() - SIDE, y);
        line.setStroke(palette.quiet());
        drawing.getChildren().add(line);
        double span = lanes.highEv() - lanes.lowEv();
        double step = STEPS[STEPS.length - 1];
        for (int k = STEPS.length - 1; k >= 0; k--) {
            if (STEPS[k] / span * getWidth() >= 70 * textScale) step = STEPS[k];
        }
        java.util.List<Text> numbers = new java.util.ArrayList<>();
        double clear = Double.POSITIVE_INFINITY;
        for (double e = Math.ceil(lanes.lowEv() / step) * step; e <= lanes.highEv(); e += step) {
            Line tick = new Line(x(e), y, x(e), y + 4);
            tick.setStroke(palette.quiet());
            drawing.getChildren().add(tick);
            boolean last = e + step > lanes.highEv();
            String number = String.valueOf(Math.round(e));
            Text text = new Text(last ? words.of("ruler.axis", number) : number);
            text.getStyleClass().add("tick");
            text.setFill(palette.quiet());
            drawing.getChildren().add(text);
            text.applyCss();
            double width = text.getLayoutBounds().getWidth();
            // The highest number stands with the unit, and from its tick on.
            double left = last ? x(e) - 8 : Math.min(getWidth() - width - 2, x(e) - width / 2);
            text.relocate(left, y + 4);
            if (last && left + width + 6 > clear)
                numbers.remove(numbers.size() - 1).setVisible(false);
            numbers.add(text);
            clear = left;
        }
    }

    private Node interval(ScanLanes.Interval i, double y) {
        double from = x(i.highEv());
        double to = x(i.lowEv());
        double width = Math.max(textScale * Math.max(SMALLEST, LETTER * i.name().length() + 8), to - from);
        double left = Math.max(2, Math.min(getWidth() - width - 2, (from + to - width) / 2));
        Label bar = new Label(i.name());
        bar.setManaged(false);
        bar.setId("scan-" + i.spectrum());
        bar.getStyleClass().addAll("scan", i.survey() ? "survey" : "narrow");
        if (!i.main()) bar.getStyleClass().add("later");
        if (i.spectrum().equals(chosen)) bar.getStyleClass().add("chosen");
        bar.setAlignment(Pos.CENTER);
        bar.setTextOverrun(OverrunStyle.CLIP);
        bar.setAccessibleRole(AccessibleRole.TOGGLE_BUTTON);
        String spoken = words.of(
                i.main() ? "ruler.scan" : "ruler.later-scan",
                i.name(),
                String.format(Locale.ROOT, "%.1f", i.highEv()),
                String.format(Locale.ROOT, "%.1f", i.lowEv()));
        bar.setAccessibleText(spoken);
        bar.setTooltip(new Tooltip(spoken + "\n" + i.spectrum()));
        bar.resizeRelocate(left, y + 1, width, LANE * textScale - 3);
        bar.setOnMouseClicked(e -> {
            requestFocus();
            choose.accept(i.spectrum());
        });
        return bar;
    }

    private void pressed(KeyEvent e) {
        int step = e.getCode() == KeyCode.RIGHT ? 1 : e.getCode() == KeyCode.LEFT ? -1 : 0;
        if (step == 0 || lanes.intervals().isEmpty()) return;
        var sorted = lanes.intervals().stream()
                .sorted(java.util.Comparator.comparing((ScanLanes.Interval i) -> !i.survey())
                        .thenComparing(i -> -i.highEv()))
                .toList();
        int at = 0;
        for (int k = 0; k < sorted.size(); k++) if (sorted.get(k).spectrum().equals(chosen)) at = k;
        choose.accept(sorted.get(Math.floorMod(at + step, sorted.size())).spectrum());
        e.consume();
    }
}
