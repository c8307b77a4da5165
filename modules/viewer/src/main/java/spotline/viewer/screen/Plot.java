package spotline.viewer.screen;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.List;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.report.figure.CurveStyle;
import spotline.report.figure.Plots;
import spotline.viewer.model.Curve;

/** Builds the plots of the bench and of the charge view in the colours of the room. */
final class Plot {
    private Plot() {}

    /** A curve with how it is drawn. */
    record Drawn(Curve curve, Color color, BasicStroke stroke) {
        static Drawn of(Curve curve, CurveStyle style, Palette palette) {
            Color color = Palette.awt(palette.of(style));
            return new Drawn(curve, color, style.stroke());
        }
    }

    static XYPlot of(List<Drawn> curves, NumberAxis energy, NumberAxis values, Palette palette) {
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        for (int k = 0; k < curves.size(); k++) {
            Drawn d = curves.get(k);
            data.addSeries(k, new double[][] {d.curve().energies(), d.curve().values()});
            renderer.setSeriesPaint(k, d.color());
            renderer.setSeriesStroke(k, d.stroke());
        }
        XYPlot plot = new XYPlot(data, energy, values, renderer);
        plot.setBackgroundPaint(Palette.awt(palette.paper()));
        plot.setDomainGridlinePaint(Palette.awt(palette.rule()));
        plot.setRangeGridlinePaint(Palette.awt(palette.rule()));
        plot.setDomainGridlineStroke(new BasicStroke(0.5f));
        plot.setRangeGridlineStroke(new BasicStroke(0.5f));
        plot.setOutlinePaint(Palette.awt(palette.rule()));
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return plot;
    }

    static NumberAxis axis(String label, Palette palette, double fontScale) {
        NumberAxis axis = Plots.axis(label);
        Color ink = Palette.awt(palette.quiet());
        axis.setLabelPaint(ink);
        axis.setTickLabelPaint(ink);
        axis.setAxisLinePaint(ink);
        axis.setTickMarkPaint(ink);
        axis.setTickLabelFont(font(10.5, fontScale));
        axis.setLabelFont(font(11.5, fontScale));
        return axis;
    }

    static NumberAxis energyAxis(String label, double lowEv, double highEv, Palette palette, double fontScale) {
        NumberAxis axis = axis(label, palette, fontScale);
        axis.setInverted(true);
        axis.setRange(lowEv, highEv);
        return axis;
    }

    static Font font(double size, double scale) {
        return new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont((float) (size * scale));
    }

    static CombinedDomainXYPlot stacked(XYPlot upper, XYPlot lower, NumberAxis energy) {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(energy);
        both.setGap(6);
        both.setInsets(RectangleInsets.ZERO_INSETS);
        both.add(upper, 3);
        both.add(lower, 1);
        return both;
    }

    static ValueMarker end(double energyEv, Palette palette) {
        return new ValueMarker(
                energyEv,
                Palette.awt(palette.accent()),
                new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {3, 3}, 0));
    }

    static XYTextAnnotation upright(String text, double energyEv, double value, Color color, double fontScale) {
        XYTextAnnotation label = new XYTextAnnotation(text, energyEv, value);
        label.setFont(font(10, fontScale));
        label.setPaint(color);
        label.setTextAnchor(TextAnchor.CENTER_LEFT);
        label.setRotationAnchor(TextAnchor.CENTER_LEFT);
        label.setRotationAngle(-Math.PI / 2);
        return label;
    }

    /** How far a residual goes, a few channels aside. */
    static double reach(Curve residual) {
        double[] sizes = residual.values();
        for (int i = 0; i < sizes.length; i++) sizes[i] = Math.abs(sizes[i]);
        java.util.Arrays.sort(sizes);
        return sizes.length == 0 ? 4 : 1.3 * sizes[(int) (0.99 * (sizes.length - 1))];
    }
}
