package spotline.viewer.screen;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import javafx.scene.AccessibleRole;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.fx.ChartCanvas;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import spotline.report.figure.CurveStyle;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Curve;
import spotline.viewer.model.Layer;
import spotline.viewer.model.Words;

/**
 * One scan, large. Binding energy runs from high to low; the wheel zooms about the pointer, the arrow keys move the section
 * shown, the ends of windows are dragged.
 */
public final class BenchPane extends Region {
    /** What a drag or a click on the plot asks for. */
    public interface Listener {
        /** Ends of a line's window while they are dragged, eV; {@code settled} when the button is let go. */
        void window(String line, double lowEv, double highEv, boolean settled);

        /** The apex of a component of the fit was put elsewhere: measured energy, new height over the old one. */
        void component(String name, double energyEv, double factor);

        void clicked(double energyEv);
    }

    /** Without room for two plots the residuals are left out. */
    private static final double SHORT = 215;

    private final ChartCanvas canvas;
    private final PlotGrips grips;
    private final BenchFoot foot;
    private final Words words;
    private final Listener listener;
    private final DoubleFunction<String> candidates;
    private Optional<BenchData> data = Optional.empty();
    private List<BenchData> others = List.of();
    private Set<Layer> layers = EnumSet.noneOf(Layer.class);
    private Palette palette = Palette.LIGHT;
    private double fontScale = 1;
    private NumberAxis energy = new NumberAxis();
    private double lowEv;
    private double highEv;
    private String shown = "";
    private double panFrom = Double.NaN;
    private NumberAxis values = new NumberAxis();
    private boolean fitEdited;
    private List<BenchCurves> drawn = List.of();

    /** @param candidates lines that the reference data have near a measured energy, for a person */
    public BenchPane(Words words, Listener listener, DoubleFunction<String> candidates) {
        this.words = words;
        this.listener = listener;
        this.candidates = candidates;
        canvas = new ChartCanvas(new JFreeChart(null, null, new XYPlot(), false));
        canvas.setTooltipEnabled(false);
        setId("bench");
        getStyleClass().add("bench");
        setFocusTraversable(true);
        foot = new BenchFoot(words);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(words.of("bench.name"));
        grips = new PlotGrips(words, new Shown(), listener);
        getChildren().addAll(canvas, grips, foot);
        addEventHandler(ScrollEvent.SCROLL, this::zoom);
        addEventHandler(KeyEvent.KEY_PRESSED, this::key);
        canvas.addEventHandler(MouseEvent.MOUSE_CLICKED, this::clicked);
        canvas.addEventHandler(MouseEvent.MOUSE_PRESSED, e -> panFrom = energyAt(e.getX()));
        canvas.addEventHandler(MouseEvent.MOUSE_DRAGGED, this::pan);
    }

    /**
     * @param newOthers the same line at other chosen spots
     * @param newFitEdited whether components can be taken hold of
     */
    public void show(
            Optional<BenchData> newData,
            List<BenchData> newOthers,
            Set<Layer> newLayers,
            Palette newPalette,
            double newFontScale,
            boolean newFitEdited) {
        data = newData;
        others = List.copyOf(newOthers);
        fitEdited = newFitEdited;
        layers = newLayers.isEmpty() ? EnumSet.noneOf(Layer.class) : EnumSet.copyOf(newLayers);
        palette = newPalette;
        fontScale = newFontScale;
        String now = data.map(d -> d.spot() + "/" + d.spectrum()).orElse("");
        if (!now.equals(shown)) {
            shown = now;
            hush();
            setAccessibleText(data.map(d -> words.of("bench.showing", d.name(), d.spot()) + ". ")
                            .orElse("")
                    + words.of("bench.name"));
            whole();
        }
        redraw();
    }

    private void whole() {
        data.ifPresent(d -> {
            lowEv = d.measured().energy(0);
            highEv = d.measured().energy(d.measured().channels() - 1);
        });
    }

    @Override
    protected void layoutChildren() {
        double below = Math.max(22, foot.prefHeight(-1));
        double height = Math.max(1, getHeight() - below);
        boolean resized = canvas.getWidth() != Math.max(1, getWidth()) || canvas.getHeight() != height;
        canvas.setWidth(Math.max(1, getWidth()));
        canvas.setHeight(height);
        // Room for names and residuals goes with the height.
        if (resized) draw();
        grips.resizeRelocate(0, 0, getWidth(), height);
        foot.resizeRelocate(8, height, getWidth() - 16, below);
        placeGrips();
    }

    private void redraw() {
        drawn = data.map(d -> BenchCurves.of(d, others, layers, words)).orElse(List.of());
        if (foot.key(drawn, palette)) requestLayout();
        draw();
        placeGrips();
    }

    private void draw() {
        JFreeChart chart = new JFreeChart(null, null, data.map(this::plot).orElseGet(XYPlot::new), false);
        chart.setBackgroundPaint(Palette.awt(palette.paper()));
        chart.setPadding(new RectangleInsets(8, 6, 2, 14));
        chart.setAntiAlias(true);
        canvas.setChart(chart);
        canvas.setVisible(data.isPresent());
        canvas.draw();
    }

    private boolean on(Layer layer) {
        return layers.contains(layer);
    }

    private double moved(BenchData d) {
        return BenchCurves.moved(d, layers);
    }

    private double factor(BenchData d) {
        return BenchCurves.factor(d, layers);
    }

    private Plot plot(BenchData d) {
        List<spotline.viewer.screen.Plot.Drawn> curves = new ArrayList<>();
        for (BenchCurves c : drawn) curves.add(drawn(c.curve(), c.style()));
        boolean referenced = on(Layer.REFERENCED) && d.shiftEv().isPresent();
        energy = spotline.viewer.screen.Plot.energyAxis(
                words.of(referenced ? "bench.axis-referenced" : "bench.axis-measured"),
                lowEv + moved(d),
                highEv + moved(d),
                palette,
                fontScale);
        values = spotline.viewer.screen.Plot.axis(
                on(Layer.NORMALISED) ? words.of("bench.normalised") : words.of(d.ordinate()), palette, fontScale);
        XYPlot upper = spotline.viewer.screen.Plot.of(curves, energy, values, palette);
        fit(values, curves, d);
        if (on(Layer.LINES)) {
            LineNames.on(
                    upper,
                    d,
                    new LineNames.Section(lowEv, highEv, getWidth(), moved(d), factor(d)),
                    values,
                    palette,
                    fontScale);
        }
        if (on(Layer.BACKGROUND)) {
            for (BenchData.WindowMark w : d.windows()) {
                upper.addDomainMarker(spotline.viewer.screen.Plot.end(w.lowEv() + moved(d), palette));
                upper.addDomainMarker(spotline.viewer.screen.Plot.end(w.highEv() + moved(d), palette));
            }
        }
        if (!stacked(d)) return upper;
        NumberAxis sigma = spotline.viewer.screen.Plot.axis(words.of("bench.residual"), palette, fontScale);
        Curve residual = moved(d) == 0
                ? d.residuals().orElseThrow()
                : d.residuals().orElseThrow().shifted(moved(d));
        XYPlot lower =
                spotline.viewer.screen.Plot.of(List.of(drawn(residual, CurveStyle.MEASURED)), energy, sigma, palette);
        double reach = Math.max(4, spotline.viewer.screen.Plot.reach(residual));
        sigma.setRange(-reach, reach);
        upper.setDomainAxis(null);
        lower.setDomainAxis(null);
        return spotline.viewer.screen.Plot.stacked(upper, lower, energy);
    }

    /** Whether the residuals have a plot of their own below. */
    private boolean stacked(BenchData d) {
        return on(Layer.MODEL) && d.residuals().isPresent() && canvas.getHeight() >= SHORT * fontScale;
    }

    private spotline.viewer.screen.Plot.Drawn drawn(Curve curve, CurveStyle style) {
        return spotline.viewer.screen.Plot.Drawn.of(curve, style, palette);
    }

    /** The values of the section shown, with room above for line names. */
    private void fit(NumberAxis values, List<spotline.viewer.screen.Plot.Drawn> curves, BenchData d) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (spotline.viewer.screen.Plot.Drawn drawn : curves) {
            Curve c = drawn.curve();
            for (int i = 0; i < c.channels(); i++) {
                if (c.energy(i) < lowEv + moved(d) || c.energy(i) > highEv + moved(d)) continue;
                low = Math.min(low, c.value(i));
                high = Math.max(high, c.value(i));
            }
        }
        if (!(high > low)) return;
        boolean named = on(Layer.LINES) && !d.lines().isEmpty();
        double room = named ? LineNames.room(d, canvas.getHeight(), stacked(d), fontScale) : 0.06;
        values.setRange(low - 0.04 * (high - low), high + room * (high - low));
    }

    private Rectangle2D area() {
        if (canvas.getRenderingInfo() == null) return new Rectangle2D.Double();
        PlotRenderingInfo info = canvas.getRenderingInfo().getPlotInfo();
        return info.getSubplotCount() > 0 ? info.getSubplotInfo(0).getDataArea() : info.getDataArea();
    }

    private double energyAt(double x) {
        return energy.java2DToValue(x, area(), RectangleEdge.BOTTOM)
                - data.map(this::moved).orElse(0.0);
    }

    double xOf(double measuredEv) {
        double at = measuredEv + data.map(this::moved).orElse(0.0);
        return energy.valueToJava2D(at, area(), RectangleEdge.BOTTOM);
    }

    private void placeGrips() {
        List<PlotGrips.Apex> apexes = new ArrayList<>();
        if (fitEdited && on(Layer.COMPONENTS)) {
            data.ifPresent(d -> d.components().forEach(c -> apexes.add(PlotGrips.Apex.of(c, factor(d)))));
        }
        grips.place(
                data.filter(d -> on(Layer.BACKGROUND) && !d.survey())
                        .map(BenchData::windows)
                        .orElse(List.of()),
                apexes);
    }

    /** Where things are in the plot as it is drawn. */
    private final class Shown implements PlotGrips.Scale {
        @Override
        public Rectangle2D area() {
            return BenchPane.this.area();
        }

        @Override
        public double x(double energyEv) {
            return xOf(energyEv);
        }

        @Override
        public double energy(double x) {
            return energyAt(x);
        }

        @Override
        public double y(double value) {
            return values.valueToJava2D(value, area(), RectangleEdge.LEFT);
        }

        @Override
        public double value(double y) {
            return values.java2DToValue(y, area(), RectangleEdge.LEFT);
        }

        @Override
        public double lowEv() {
            return lowEv;
        }

        @Override
        public double highEv() {
            return highEv;
        }
    }

    /** Says where the ends of a window are while they are moved. */
    void tell(String line, double newLow, double newHigh) {
        foot.window(line, newLow, newHigh);
    }

    /** What was said of a window or a place holds no longer. */
    void hush() {
        foot.hush();
    }

    /** Where values are drawn, in pixels, for tests. */
    Rectangle2D plotted() {
        return area();
    }

    /** The curves that are drawn, for tests. */
    List<BenchCurves> drawn() {
        return drawn;
    }

    private void clicked(MouseEvent e) {
        requestFocus();
        if (data.isEmpty() || e.getButton() != MouseButton.PRIMARY || !e.isStillSincePress()) return;
        if (e.getClickCount() == 2) {
            whole();
            redraw();
            return;
        }
        double at = energyAt(e.getX());
        foot.place(data.get(), at, candidates.apply(at));
        listener.clicked(at);
    }

    private void zoom(ScrollEvent e) {
        if (data.isEmpty() || e.getDeltaY() == 0) return;
        double at = energyAt(e.getX());
        double factor = e.getDeltaY() > 0 ? 0.85 : 1 / 0.85;
        section(at - (at - lowEv) * factor, at + (highEv - at) * factor);
        e.consume();
    }

    private void pan(MouseEvent e) {
        if (data.isEmpty() || Double.isNaN(panFrom)) return;
        double by = panFrom - energyAt(e.getX());
        section(lowEv + by, highEv + by);
    }

    private void key(KeyEvent e) {
        double width = highEv - lowEv;
        switch (e.getCode()) {
            case LEFT -> section(lowEv + 0.1 * width, highEv + 0.1 * width);
            case RIGHT -> section(lowEv - 0.1 * width, highEv - 0.1 * width);
            case PLUS, EQUALS, ADD -> section(lowEv + 0.1 * width, highEv - 0.1 * width);
            case MINUS, SUBTRACT -> section(lowEv - 0.125 * width, highEv + 0.125 * width);
            case HOME -> {
                whole();
                redraw();
            }
            default -> {
                return;
            }
        }
        if (e.getCode() != KeyCode.UNDEFINED) e.consume();
    }

    /** Shows a section of the scan, never beyond its ends nor under four channels. */
    private void section(double low, double high) {
        if (data.isEmpty()) return;
        Curve m = data.get().measured();
        double first = m.energy(0);
        double last = m.energy(m.channels() - 1);
        double least = 4 * (last - first) / m.channels();
        double width = Math.min(last - first, Math.max(least, high - low));
        double from = Math.max(first, Math.min(last - width, low));
        lowEv = from;
        highEv = from + width;
        redraw();
    }

    /** Ends of the section shown, measured eV. */
    double[] section() {
        return new double[] {lowEv, highEv};
    }
}
