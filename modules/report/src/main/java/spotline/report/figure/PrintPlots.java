package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Font;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;

/** Axes and plots of one type size and one set of line widths. */
final class PrintPlots {
    static final double CURVE_PT = 0.9;
    static final double FRAME_PT = 0.6;

    private final Font font;
    private final Font small;

    PrintPlots(PrintStyle style) {
        font = style.font();
        small = font.deriveFont((float) Math.max(4, style.typePt() - 1));
    }

    Font font() {
        return font;
    }

    Font small() {
        return small;
    }

    /** Binding energy from high to low. */
    NumberAxis energy(double lowEv, double highEv, String label) {
        NumberAxis axis = axis(label);
        axis.setInverted(true);
        axis.setRange(lowEv, highEv);
        return axis;
    }

    NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign('\u2212');
        axis.setNumberFormatOverride(new DecimalFormat("0.######", symbols));
        dress(axis);
        return axis;
    }

    void dress(org.jfree.chart.axis.Axis axis) {
        axis.setLabelFont(font);
        axis.setTickLabelFont(small);
        axis.setLabelPaint(PrintPalette.AXIS);
        axis.setTickLabelPaint(PrintPalette.AXIS);
        axis.setAxisLinePaint(PrintPalette.AXIS);
        axis.setAxisLineStroke(new BasicStroke((float) FRAME_PT));
        axis.setTickMarkPaint(PrintPalette.AXIS);
        axis.setTickMarkStroke(new BasicStroke((float) FRAME_PT));
        axis.setTickMarkOutsideLength(2.5f);
        axis.setTickLabelInsets(new RectangleInsets(2, 2, 2, 2));
        axis.setLabelInsets(new RectangleInsets(1, 1, 1, 1));
    }

    /** An axis of arbitrary units shows no numbers. */
    NumberAxis arbitrary(String label) {
        NumberAxis axis = axis(label);
        axis.setTickLabelsVisible(false);
        axis.setTickMarksVisible(false);
        return axis;
    }

    XYPlot plot(XYDataset data, ValueAxis x, ValueAxis y, XYItemRenderer renderer) {
        XYPlot plot = new XYPlot(data, x, y, renderer);
        plot.setBackgroundPaint(null);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.setOutlinePaint(PrintPalette.AXIS);
        plot.setOutlineStroke(new BasicStroke((float) FRAME_PT));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setInsets(new RectangleInsets(2, 0, 0, 2));
        return plot;
    }

    /** Two plots above one another on one energy axis, the frames theirs alone. */
    CombinedDomainXYPlot stacked(NumberAxis energy, XYPlot upper, int share, XYPlot lower, int rest) {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(energy);
        both.setGap(4);
        both.setAxisOffset(RectangleInsets.ZERO_INSETS);
        both.setInsets(RectangleInsets.ZERO_INSETS);
        energy.setAxisLineVisible(false);
        both.add(upper, share);
        both.add(lower, rest);
        return both;
    }

    /** One curve after another, each in its colour and dashes. */
    XYLineAndShapeRenderer curves(int count) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < count; i++) {
            renderer.setSeriesPaint(i, PrintPalette.colour(i));
            renderer.setSeriesStroke(i, PrintPalette.stroke(i, CURVE_PT));
        }
        return renderer;
    }

    static BasicStroke line(double widthPt) {
        return new BasicStroke((float) widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }
}
