package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.TickUnitSource;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/** What all figures share: axes that lean on no locale, a known data area, SVG without random names. */
public final class Plots {
    public static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 10);
    public static final Font LABEL = new Font(Font.SANS_SERIF, Font.PLAIN, 11);
    public static final int LEFT = 58;
    public static final int BOTTOM = 40;
    public static final int TOP = 8;
    public static final int RIGHT = 10;
    public static final String ENERGY_LABEL = "Binding energy (eV), as measured";

    private static final Color AXIS = new Color(0x44, 0x44, 0x44);
    private static final Color GRID = new Color(0xE4, 0xE4, 0xE4);

    private Plots() {}

    /** Binding energy from high to low. */
    public static NumberAxis energyAxis(double lowEv, double highEv) {
        NumberAxis axis = axis(ENERGY_LABEL);
        axis.setInverted(true);
        axis.setRange(lowEv, highEv);
        return axis;
    }

    public static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setStandardTickUnits(ticks());
        axis.setNumberFormatOverride(plainNumbers());
        axis.setTickLabelFont(SMALL);
        axis.setLabelFont(LABEL);
        axis.setTickLabelPaint(AXIS);
        axis.setLabelPaint(AXIS);
        axis.setAxisLinePaint(AXIS);
        axis.setTickMarkPaint(AXIS);
        axis.setTickLabelInsets(new RectangleInsets(5, 4, 5, 4));
        axis.setLabelInsets(new RectangleInsets(2, 2, 2, 2));
        return axis;
    }

    private static TickUnitSource ticks() {
        return NumberAxis.createStandardTickUnits(Locale.ROOT);
    }

    private static DecimalFormat plainNumbers() {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign('\u2212');
        return new DecimalFormat("0.######", symbols);
    }

    /** A plot whose data area fills the figure but for fixed margins. */
    public static XYPlot plot(
            XYDataset data, NumberAxis energy, NumberAxis intensity, XYLineAndShapeRenderer renderer) {
        XYPlot plot = new XYPlot(data, energy, intensity, renderer);
        plot.setBackgroundPaint(null);
        plot.setOutlinePaint(AXIS);
        plot.setOutlineStroke(new BasicStroke(0.6f));
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinesVisible(false);
        plot.setDomainGridlineStroke(new BasicStroke(0.6f));
        plot.setInsets(new RectangleInsets(TOP, 0, 0, RIGHT));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        AxisSpace left = new AxisSpace();
        left.setLeft(LEFT);
        plot.setFixedRangeAxisSpace(left);
        AxisSpace bottom = new AxisSpace();
        bottom.setBottom(BOTTOM);
        plot.setFixedDomainAxisSpace(bottom);
        return plot;
    }

    /** Draws each series as one path, in the styles given. */
    public static XYLineAndShapeRenderer lines(CurveStyle... styles) {
        XYLineAndShapeRenderer renderer = new Curves();
        for (int i = 0; i < styles.length; i++) {
            renderer.setSeriesPaint(i, styles[i].color());
            renderer.setSeriesStroke(i, styles[i].stroke());
        }
        return renderer;
    }

    public static void add(DefaultXYDataset data, String key, double[] energies, double[] values) {
        data.addSeries(key, new double[][] {energies, values});
    }

    /**
     * @param name unique on the page: it begins every identifier in the drawing
     */
    public static String svg(Plot plot, String name, int width, int height) {
        keepRotatedText();
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(RectangleInsets.ZERO_INSETS);
        SVGGraphics2D graphics = new SVGGraphics2D(width, height);
        graphics.setDefsKeyPrefix(name);
        graphics.setGeomDoubleConverter(Plots::coordinate);
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        return plain(graphics.getSVGElement(null, false, new ViewBox(0, 0, width, height), null, null));
    }

    /** Inside HTML only the namespace of SVG itself may be declared; the others are not used. */
    private static String plain(String svg) {
        int from = svg.indexOf(" xmlns:xlink='");
        int to = svg.indexOf('>', from);
        String last = " xmlns:jfreesvg='";
        int begins = svg.indexOf(last, from);
        if (from < 0 || begins < 0 || begins > to) return svg;
        int ends = svg.indexOf('\'', begins + last.length()) + 1;
        return svg.substring(0, from) + svg.substring(ends);
    }

    /** Upright names stay text, which can be searched and read aloud; the library would else draw their outlines. */
    static void keepRotatedText() {
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    /** One decimal at most: a tenth of a pixel, a fiftieth of a millimetre on paper. */
    private static String coordinate(double value) {
        long tenths = Math.round(value * 10);
        long rest = Math.abs(tenths % 10);
        String whole = (tenths < 0 ? "-" : "") + Math.abs(tenths / 10);
        return rest == 0 ? whole : whole + '.' + rest;
    }
}
