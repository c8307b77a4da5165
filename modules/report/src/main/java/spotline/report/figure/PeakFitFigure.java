package spotline.report.figure;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;

/** A peak fit: data, background, components, fitted sum, and the residuals beneath on the same energy axis. */
public final class PeakFitFigure {
    private static final int WIDTH = 430;
    private static final int HEIGHT = 340;

    private PeakFitFigure() {}

    /** @param name unique on the page */
    public static Figure of(PeakFitResult result, String name) {
        List<Figure.Key> keys = new ArrayList<>();
        CombinedDomainXYPlot plot = plot(result, keys);
        return new Figure(Plots.svg(plot, name, WIDTH, HEIGHT), description(result), keys);
    }

    /** @param keys filled with what each line stands for */
    public static CombinedDomainXYPlot plot(PeakFitResult result, List<Figure.Key> keys) {
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
        return both;
    }

    /** A part leaves the energy axis and the outer margins to the whole. */
    private static XYPlot part(XYPlot plot) {
        plot.setFixedDomainAxisSpace(null);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return plot;
    }

    private static XYPlot curves(PeakFitResult result, double[] energies, List<Figure.Key> keys) {
        double[] measured = result.counts();
        double most = Arrays.stream(measured).max().orElse(1);
        String what = result.counted() ? "Counts" : "Intensity, file's unit";
        IntensityScale scale = IntensityScale.upTo(most, what);
        double[] counts = scale.of(measured);
        double[] background = scale.of(result.background());
        DefaultXYDataset data = new DefaultXYDataset();
        List<CurveStyle> styles = new ArrayList<>();
        keys.add(new Figure.Key(result.counted() ? "measured counts" : "measured intensity", CurveStyle.POINTS));
        keys.add(new Figure.Key("fitted sum", CurveStyle.SUM));
        int own = -1;
        for (int k = 0; k < result.components().size(); k++) {
            FittedComponent component = result.components().get(k);
            if (component.partnerOf().isEmpty()) own++;
            CurveStyle style = CurveStyle.component(own);
            double[] curve = scale.of(component.curve());
            for (int i = 0; i < curve.length; i++) curve[i] += background[i];
            Plots.add(data, "component " + k, energies, curve);
            styles.add(style);
            keys.add(new Figure.Key(Shown.label(component.name()) + ", " + position(component), style));
        }
        Plots.add(data, "background", energies, background);
        styles.add(CurveStyle.BACKGROUND);
        keys.add(new Figure.Key("background: " + result.model().background().describe(), CurveStyle.BACKGROUND));
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

    /** In words, for those who cannot see it. */
    public static String description(PeakFitResult result) {
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
}
