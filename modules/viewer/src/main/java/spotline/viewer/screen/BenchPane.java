package spotline.viewer.screen;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
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
    private static final double SHORT = 180;

    private final ChartCanvas canvas;
    private final PlotGrips grips;
    private final Label readout = new Label();
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
        readout.getStyleClass().add("readout");
        readout.setId("readout");
        readout.setAlignment(Pos.CENTER_LEFT);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(words.of("bench.name"));
        grips = new PlotGrips(words, new Shown(), listener);
        getChildren().addAll(canvas, grips, readout);
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
            readout.setText("");
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
        double foot = Math.max(22, readout.prefHeight(-1));
        double height = Math.max(1, getHeight() - foot);
        boolean resized = canvas.getWidth() != Math.max(1, getWidth()) || canvas.getHeight() != height;
        canvas.setWidth(Math.max(1, getWidth()));
        canvas.setHeight(height);
        if (resized) canvas.draw();
        grips.resizeRelocate(0, 0, getWidth(), height);
        readout.resizeRelocate(8, height, getWidth() - 16, foot);
        placeGrips();
    }

    private void redraw() {
        JFreeChart chart = new JFreeChart(null, null, data.map(this::plot).orElseGet(XYPlot::new), false);
        chart.setBackgroundPaint(Palette.awt(palette.paper()));
        chart.setPadding(new RectangleInsets(8, 6, 2, 14));
        chart.setAntiAlias(true);
        canvas.setChart(chart);
        canvas.setVisible(data.isPresent());
        canvas.draw();
        placeGrips();
    }

    private boolean on(Layer layer) {
        return layers.contains(layer);
    }

    private double moved(BenchData d) {
        return on(Layer.REFERENCED) ? d.shiftEv().orElse(0) : 0;
    }

    private double factor(BenchData d) {
        if (!on(Layer.NORMALISED)) return 1;
        double span = d.measured().span();
        return span > 0 ? 1 / span : 1;
    }

    private Curve placed(BenchData d, Curve curve) {
        Curve c = moved(d) == 0 ? curve : curve.shifted(moved(d));
        double factor = factor(d);
        return factor == 1 ? c : c.times(factor);
    }

    private Plot plot(BenchData d) {
        List<spotline.viewer.screen.Plot.Drawn> curves = new ArrayList<>();
        if (on(Layer.COMPONENTS)) {
            for (int k = 0; k < d.components().size(); k++) {
                curves.add(drawn(placed(d, d.components().get(k)), CurveStyle.component(k)));
            }
        }
        if (on(Layer.BACKGROUND)) d.backgrounds().forEach(b -> curves.add(drawn(placed(d, b), CurveStyle.BACKGROUND)));
        if (on(Layer.MODEL)) d.model().ifPresent(m -> curves.add(drawn(placed(d, m), CurveStyle.SUM)));
        if (on(Layer.MEASURED)) curves.add(0, drawn(placed(d, d.measured()), CurveStyle.MEASURED));
        if (on(Layer.OTHER_SPOTS)) {
            for (int k = 0; k < others.size(); k++) {
                BenchData o = others.get(k);
                curves.add(drawn(placed(o, o.measured()), CurveStyle.component(k)));
            }
        }
        if (on(Layer.DIFFERENCE) && !others.isEmpty()) {
            Curve rest = placed(d, d.measured())
                    .minus(placed(others.get(0), others.get(0).measured()));
            if (rest.channels() > 1) curves.add(drawn(rest, CurveStyle.FOURTH));
        }
        boolean referenced = on(Layer.REFERENCED) && d.shiftEv().isPresent();
        energy = spotline.viewer.screen.Plot.energyAxis(
                words.of(referenced ? "bench.axis-referenced" : "bench.axis-measured"),
                lowEv + moved(d),
                highEv + moved(d),
                palette,
                fontScale);
        values = spotline.viewer.screen.Plot.axis(
                on(Layer.NORMALISED) ? words.of("bench.normalised") : d.ordinate(), palette, fontScale);
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
        if (!on(Layer.MODEL) || d.residuals().isEmpty() || canvas.getHeight() < SHORT * fontScale) return upper;
        NumberAxis sigma = spotline.viewer.screen.Plot.axis(words.of("bench.residual"), palette, fontScale);
        Curve residual =
                moved(d) == 0 ? d.residuals().get() : d.residuals().get().shifted(moved(d));
        XYPlot lower =
                spotline.viewer.screen.Plot.of(List.of(drawn(residual, CurveStyle.MEASURED)), energy, sigma, palette);
        double reach = Math.max(4, spotline.viewer.screen.Plot.reach(residual));
        sigma.setRange(-reach, reach);
        upper.setDomainAxis(null);
        lower.setDomainAxis(null);
        return spotline.viewer.screen.Plot.stacked(upper, lower, energy);
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
        double room = named ? LineNames.room(d, canvas.getHeight(), fontScale) : 0.06;
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

    private double xOf(double measuredEv) {
        double at = measuredEv + data.map(this::moved).orElse(0.0);
        return energy.valueToJava2D(at, area(), RectangleEdge.BOTTOM);
    }

    private void placeGrips() {
        List<PlotGrips.Apex> apexes = new ArrayList<>();
        if (fitEdited && on(Layer.COMPONENTS)) {
            data.ifPresent(d -> d.components().forEach(c -> apexes.add(PlotGrips.Apex.of(c, factor(d)))));
        }
        grips.place(
                data.filter(d -> on(Layer.BACKGROUND)).map(BenchData::windows).orElse(List.of()), apexes);
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
        readout.setText(words.of("bench.window", line, fixed(newHigh, 2), fixed(newLow, 2)));
    }

    private static String fixed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
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
        readout.setText(words.of(
                "bench.readout",
                fixed(at, 2),
                fixed(data.get().measuredAt(at), 0),
                data.get().ordinate(),
                candidates.apply(at)));
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
