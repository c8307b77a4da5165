package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.reference.AugerParameter;
import spotline.report.text.Shown;

/**
 * Kinetic energy of an Auger line against binding energy of a photoelectron line: listed states as numbered circles, the
 * spot on the straight line of its own Auger parameter. A wrong energy reference moves the spot along that line, never off
 * it.
 *
 * <p>Source of the kind of plot: C. D. Wagner's chemical-state plot, as ISO 18115-1 defines it.
 */
public final class ChemicalStateFigure {
    private static final int WIDTH = 430;
    private static final int HEIGHT = 340;
    /** Room around the outermost point, eV. */
    private static final double MARGIN = 1.0;

    /** What stands beside a point or a line stands this share of the figure away. */
    private static final double ASIDE = 0.012;

    private static final double LISTED_RADIUS = 4.5;
    private static final double SPOT_RADIUS = 4;
    private static final Color FAINT = new Color(0xB4, 0xBC, 0xC1);

    private ChemicalStateFigure() {}

    /** Both energies of every point, eV, and the range drawn. */
    private record Range(double lowBinding, double highBinding, double lowKinetic, double highKinetic) {
        static Range of(AugerParameterSeen seen) {
            double[] binding = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
            double[] kinetic = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
            for (AugerParameter listed : seen.listed()) {
                widen(binding, listed.bindingEv());
                widen(kinetic, listed.augerKineticEv());
            }
            seen.referencedBindingEv().ifPresent(e -> widen(binding, e));
            seen.referencedKineticEv().ifPresent(e -> widen(kinetic, e));
            return new Range(binding[0] - MARGIN, binding[1] + MARGIN, kinetic[0] - MARGIN, kinetic[1] + MARGIN);
        }

        private static void widen(double[] range, double value) {
            range[0] = Math.min(range[0], value);
            range[1] = Math.max(range[1], value);
        }

        double bindingSpan() {
            return highBinding - lowBinding;
        }

        double kineticSpan() {
            return highKinetic - lowKinetic;
        }

        /** The stretch of a line of constant sum that lies inside, as bindings and kinetics; the ends coincide where none. */
        double[][] stretch(double parameter) {
            double from = Math.max(lowBinding, parameter - highKinetic);
            double to = Math.max(from, Math.min(highBinding, parameter - lowKinetic));
            return new double[][] {{from, to}, {parameter - from, parameter - to}};
        }
    }

    /**
     * @param scale what the binding energies are referenced to: {@code "C 1s set to 284.80 eV"}
     * @param name unique on the page
     */
    public static Figure of(AugerParameterSeen seen, String scale, String name) {
        String photo = seen.line().toString();
        String auger = seen.line().element() + " " + seen.transition();
        XYPlot plot = plot(seen, Plots.LABEL, Plots.SMALL);
        return new Figure(
                Plots.svg(plot, name, WIDTH, HEIGHT),
                describe(seen, photo, auger, scale),
                List.of(
                        new Figure.Key("this spot's Auger parameter, whatever the reference", CurveStyle.SUM),
                        new Figure.Key("equal Auger parameters, eV", CurveStyle.WINDOW)));
    }

    private static XYPlot plot(AugerParameterSeen seen, Font names, Font numbers) {
        Range range = Range.of(seen);
        String photo = seen.line().toString();
        String auger = seen.line().element() + " " + seen.transition();
        NumberAxis binding = Plots.energyAxis(range.lowBinding(), range.highBinding());
        binding.setLabel(Shown.label(photo + " binding energy (eV)"));
        NumberAxis kinetic = Plots.axis(Shown.label(auger + " kinetic energy (eV)"));
        kinetic.setRange(range.lowKinetic(), range.highKinetic());
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        XYPlot plot = Plots.plot(data, binding, kinetic, renderer);
        plot.setDomainGridlinesVisible(false);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        constant(plot, data, renderer, range, numbers);
        double[][] own = range.stretch(seen.parameter().value());
        add(data, renderer, "spot's parameter", own, CurveStyle.SUM);
        listed(plot, data, renderer, seen.listed(), range, names);
        spot(data, renderer, seen.referencedBindingEv(), seen.referencedKineticEv());
        return plot;
    }

    /** The same for print, at its own size. */
    public static PrintFigure print(AugerParameterSeen seen, String scale, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        XYPlot plot = plot(seen, plots.small(), plots.small());
        plot.setInsets(new RectangleInsets(2, 0, 0, 2));
        plot.setFixedDomainAxisSpace(null);
        plot.setFixedRangeAxisSpace(null);
        plots.dress(plot.getDomainAxis());
        plots.dress(plot.getRangeAxis());
        String auger = seen.line().element() + " " + seen.transition();
        plot.setFixedLegendItems(key(seen));
        return new PrintFigure(plot, true, style, describe(seen, seen.line().toString(), auger, scale));
    }

    /** What the numbered circles stand for, and which one is the spot's own. */
    private static LegendItemCollection key(AugerParameterSeen seen) {
        LegendItemCollection items = new LegendItemCollection();
        items.add(item("this spot, and its Auger parameter", CurveStyle.SUM.color()));
        for (int i = 0; i < seen.listed().size(); i++) {
            items.add(item((i + 1) + "  " + Shown.label(seen.listed().get(i).state()), FAINT));
        }
        return items;
    }

    private static LegendItem item(String label, Color fill) {
        Ellipse2D shape = new Ellipse2D.Double(-2.2, -2.2, 4.4, 4.4);
        return new LegendItem(label, null, null, null, shape, fill, new BasicStroke(0.6f), CurveStyle.MEASURED.color());
    }

    private static void add(
            DefaultXYDataset data, XYLineAndShapeRenderer renderer, String key, double[][] points, CurveStyle style) {
        int series = data.getSeriesCount();
        Plots.add(data, key, points[0], points[1]);
        renderer.setSeriesPaint(series, style.color());
        renderer.setSeriesStroke(series, style.stroke());
    }

    /** Lines of constant Auger parameter a whole electronvolt or more apart, so that about six cross the figure. */
    private static void constant(
            XYPlot plot, DefaultXYDataset data, XYLineAndShapeRenderer renderer, Range range, Font font) {
        double low = range.lowBinding() + range.lowKinetic();
        double high = range.highBinding() + range.highKinetic();
        double step = Math.max(1, Math.ceil((high - low) / 7));
        for (double parameter = Math.ceil(low / step) * step; parameter < high; parameter += step) {
            double[][] stretch = range.stretch(parameter);
            if (!(stretch[0][1] - stretch[0][0] > 0.3 * MARGIN)) continue;
            add(data, renderer, "parameter " + parameter, stretch, CurveStyle.WINDOW);
            // The end at the low binding energy is the upper right one: the label goes inside, under the line.
            XYTextAnnotation label = new XYTextAnnotation(
                    String.format(Locale.ROOT, "%.0f", parameter),
                    stretch[0][0] + ASIDE * range.bindingSpan(),
                    stretch[1][0] - 2 * ASIDE * range.kineticSpan());
            label.setTextAnchor(TextAnchor.TOP_RIGHT);
            label.setFont(font);
            label.setBackgroundPaint(Color.WHITE);
            label.setPaint(CurveStyle.WINDOW.color());
            plot.addAnnotation(label);
        }
    }

    private static void listed(
            XYPlot plot,
            DefaultXYDataset data,
            XYLineAndShapeRenderer renderer,
            List<AugerParameter> states,
            Range range,
            Font font) {
        double[][] points = new double[2][states.size()];
        for (int i = 0; i < states.size(); i++) {
            points[0][i] = states.get(i).bindingEv();
            points[1][i] = states.get(i).augerKineticEv();
            XYTextAnnotation number = new XYTextAnnotation(
                    String.valueOf(i + 1), points[0][i] - 2 * ASIDE * range.bindingSpan(), points[1][i]);
            number.setTextAnchor(TextAnchor.CENTER_LEFT);
            number.setFont(font);
            plot.addAnnotation(number);
        }
        dots(data, renderer, "listed", points, LISTED_RADIUS, FAINT);
    }

    private static void spot(
            DefaultXYDataset data, XYLineAndShapeRenderer renderer, OptionalDouble binding, OptionalDouble kinetic) {
        if (binding.isEmpty() || kinetic.isEmpty()) return;
        double[][] point = {{binding.getAsDouble()}, {kinetic.getAsDouble()}};
        dots(data, renderer, "spot", point, SPOT_RADIUS, CurveStyle.SUM.color());
    }

    private static void dots(
            DefaultXYDataset data,
            XYLineAndShapeRenderer renderer,
            String key,
            double[][] points,
            double radius,
            Color fill) {
        int series = data.getSeriesCount();
        Plots.add(data, key, points[0], points[1]);
        renderer.setSeriesLinesVisible(series, false);
        renderer.setSeriesShapesVisible(series, true);
        renderer.setSeriesShapesFilled(series, true);
        renderer.setUseFillPaint(true);
        renderer.setSeriesFillPaint(series, fill);
        renderer.setDrawOutlines(true);
        renderer.setSeriesPaint(series, CurveStyle.MEASURED.color());
        renderer.setSeriesOutlineStroke(series, new BasicStroke(0.8f));
        renderer.setSeriesShape(series, new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius));
    }

    private static String describe(AugerParameterSeen seen, String photo, String auger, String scale) {
        String where = seen.referencedBindingEv().isPresent()
                ? String.format(
                        Locale.ROOT,
                        "the spot at %.1f eV binding (%s) and %.1f eV kinetic energy",
                        seen.referencedBindingEv().getAsDouble(),
                        scale,
                        seen.referencedKineticEv().orElse(Double.NaN))
                : "the spot somewhere on its line, for it has no energy reference";
        return Shown.text(String.format(
                Locale.ROOT,
                "Chemical-state plot of %s and %s: %s, Auger parameter %.2f eV, among %d listed states",
                photo,
                auger,
                where,
                seen.parameter().value(),
                seen.listed().size()));
    }
}
