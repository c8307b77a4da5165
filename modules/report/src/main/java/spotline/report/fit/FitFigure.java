package spotline.report.fit;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.report.figure.CurveStyle;
import spotline.report.figure.IntensityScale;
import spotline.report.figure.Plots;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;

/** The drawing of one fit: data, background, components, fitted sum, and the residuals beneath on the same energy axis. */
public final class FitFigure {
    private static final int WIDTH = 640;
    private static final int PLOT_HEIGHT = 440;
    private static final int KEY_ROW = 16;
    private static final int MARGIN = 10;

    private FitFigure() {}

    /** A whole SVG document, UTF-8. */
    public static String svg(FitReport report) {
        PeakFitResult result = report.result();
        List<FigureKey.Entry> keys = new ArrayList<>();
        String plot = plot(result, keys);
        String file = report.source().file();
        String name = file.substring(1 + Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')));
        String title = Shown.label(report.region()) + ", " + Shown.label(name) + ", block "
                + report.source().block();
        List<FigureKey.Placed> placed = FigureKey.placed(keys, WIDTH - 2 * MARGIN);
        List<String> titleLines = FigureKey.lines(title + statistics(result), WIDTH - 2 * MARGIN);
        int keyTop = MARGIN + titleLines.size() * KEY_ROW;
        int top = keyTop + FigureKey.rows(placed) * KEY_ROW + 4;
        int height = top + PLOT_HEIGHT;
        StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\""
                        + " font-family=\"sans-serif\" font-size=\"11\">%n",
                WIDTH,
                height,
                WIDTH,
                height));
        out.append("<title>").append(escaped("Peak fit of " + title)).append("</title>\n");
        out.append("<desc>").append(escaped(description(result))).append("</desc>\n");
        out.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        for (int line = 0; line < titleLines.size(); line++) {
            out.append(text(MARGIN, MARGIN + line * KEY_ROW + 9, titleLines.get(line), "#222222"));
        }
        for (FigureKey.Placed p : placed) {
            int x = MARGIN + p.x();
            int y = keyTop + p.row() * KEY_ROW + 9;
            out.append(sample(x, y, p.style()));
            for (int line = 0; line < p.lines().size(); line++) {
                out.append(
                        text(x + FigureKey.SAMPLE, y + line * KEY_ROW, p.lines().get(line), "#222222"));
            }
        }
        // An inner drawing without a size of its own would be stretched over the whole.
        out.append(plot.replaceFirst(
                "<svg ",
                String.format(
                        Locale.ROOT, "<svg x=\"0\" y=\"%d\" width=\"%d\" height=\"%d\" ", top, WIDTH, PLOT_HEIGHT)));
        return out.append("\n</svg>\n").toString();
    }

    private static String plot(PeakFitResult result, List<FigureKey.Entry> keys) {
        double[] energies = result.energies();
        CombinedDomainXYPlot both =
                new CombinedDomainXYPlot(Plots.energyAxis(energies[0], energies[energies.length - 1]));
        both.setGap(10);
        both.setInsets(new RectangleInsets(Plots.TOP, 0, 0, Plots.RIGHT));
        AxisSpace bottom = new AxisSpace();
        bottom.setBottom(Plots.BOTTOM);
        both.setFixedDomainAxisSpace(bottom);
        both.add(part(curves(result, energies, keys)), 3);
        both.add(part(residuals(result, energies)), 1);
        return Plots.svg(both, "fit", WIDTH, PLOT_HEIGHT);
    }

    /** A part leaves the energy axis and the outer margins to the whole. */
    private static XYPlot part(XYPlot plot) {
        plot.setFixedDomainAxisSpace(null);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return plot;
    }

    private static XYPlot curves(PeakFitResult result, double[] energies, List<FigureKey.Entry> keys) {
        double[] measured = result.counts();
        double most = Arrays.stream(measured).max().orElse(1);
        String what = result.counted() ? "Counts" : "Intensity, file's unit";
        IntensityScale scale = IntensityScale.upTo(most, what);
        double[] counts = scale.of(measured);
        double[] background = scale.of(result.background());
        DefaultXYDataset data = new DefaultXYDataset();
        List<CurveStyle> styles = new ArrayList<>();
        keys.add(new FigureKey.Entry(result.counted() ? "measured counts" : "measured intensity", CurveStyle.POINTS));
        keys.add(new FigureKey.Entry("fitted sum", CurveStyle.SUM));
        int own = -1;
        for (int k = 0; k < result.components().size(); k++) {
            FittedComponent component = result.components().get(k);
            if (component.partnerOf().isEmpty()) own++;
            CurveStyle style = CurveStyle.component(own);
            double[] curve = scale.of(component.curve());
            for (int i = 0; i < curve.length; i++) curve[i] += background[i];
            Plots.add(data, "component " + k, energies, curve);
            styles.add(style);
            keys.add(new FigureKey.Entry(Shown.label(component.name()) + ", " + position(component), style));
        }
        Plots.add(data, "background", energies, background);
        styles.add(CurveStyle.BACKGROUND);
        keys.add(
                new FigureKey.Entry("background: " + result.model().background().describe(), CurveStyle.BACKGROUND));
        Plots.add(data, "sum", energies, scale.of(result.sum()));
        styles.add(CurveStyle.SUM);
        Plots.add(data, "measured", energies, counts);
        XYLineAndShapeRenderer renderer = Plots.lines(styles.toArray(CurveStyle[]::new));
        int dots = styles.size();
        renderer.setSeriesLinesVisible(dots, false);
        renderer.setSeriesShapesVisible(dots, true);
        renderer.setSeriesShape(dots, new Rectangle2D.Double(-1.1, -1.1, 2.2, 2.2));
        renderer.setSeriesPaint(dots, CurveStyle.POINTS.color());
        NumberAxis range = Plots.axis(scale.label());
        double low = Math.min(
                Arrays.stream(counts).min().orElse(0),
                Arrays.stream(background).min().orElse(0));
        double high = Arrays.stream(counts).max().orElse(1);
        double span = high > low ? high - low : Math.max(1, Math.abs(high));
        range.setRange(low - 0.05 * span, high + 0.08 * span);
        return Plots.plot(data, new NumberAxis(), range, renderer);
    }

    /** In standard deviations of the fitted sum where the data are counts. */
    private static XYPlot residuals(PeakFitResult result, double[] energies) {
        double[] rest = result.residuals();
        double largest = Arrays.stream(rest).map(Math::abs).max().orElse(0);
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "residual", energies, rest);
        NumberAxis range = Plots.axis(result.counted() ? "Residual / \u03c3" : "Residual");
        double reach = Math.max(result.counted() ? 3.5 : 1e-12, 1.1 * largest);
        range.setRange(-reach, reach);
        XYPlot plot = Plots.plot(data, new NumberAxis(), range, Plots.lines(CurveStyle.MEASURED));
        plot.addRangeMarker(new ValueMarker(0, CurveStyle.WINDOW.color(), CurveStyle.WINDOW.stroke()));
        return plot;
    }

    private static String position(FittedComponent c) {
        return DisplayNumber.of(c.position().value(), c.position().standardUncertainty(), 2)
                        .text() + " eV";
    }

    private static String statistics(PeakFitResult result) {
        OptionalDouble chi = result.statistics().reducedChiSquare();
        return chi.isPresent() ? ", reduced chi-square " + DisplayNumber.fixed(chi.getAsDouble(), 2) : "";
    }

    private static String description(PeakFitResult result) {
        StringBuilder text =
                new StringBuilder("Measured intensity against binding energy as measured, from high to low,"
                        + " with background, component peaks and fitted sum; residuals beneath. Components: ");
        for (int k = 0; k < result.components().size(); k++) {
            FittedComponent c = result.components().get(k);
            if (k > 0) text.append("; ");
            text.append(Shown.label(c.name())).append(" at ").append(position(c));
        }
        return text.append('.').toString();
    }

    /** How a curve is drawn. */
    private static String sample(int x, int y, CurveStyle style) {
        if (style == CurveStyle.POINTS) {
            return String.format(
                    Locale.ROOT,
                    "<path d=\"M%d %d h2.2 m5 0 h2.2 m5 0 h2.2\" stroke=\"%s\" stroke-width=\"2.2\"/>",
                    x + 3,
                    y - 4,
                    style.hex());
        }
        return String.format(
                Locale.ROOT,
                "<path d=\"M%d %d h24\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>",
                x,
                y - 4,
                style.hex(),
                style.strokeWidth(),
                style.dashArray().isEmpty() ? "" : " stroke-dasharray=\"" + style.dashArray() + "\"");
    }

    private static String text(int x, int y, String text, String fill) {
        return String.format(Locale.ROOT, "<text x=\"%d\" y=\"%d\" fill=\"%s\">%s</text>%n", x, y, fill, escaped(text));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
