package spotline.report.figure;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.report.text.Shown;
import spotline.spectra.BindingScan;

/** The fit that placed the reference line: data, background, components, fitted sum, and the residual beneath. */
public final class ReferenceFitFigure {
    private static final int WIDTH = 430;
    private static final int HEIGHT = 340;

    private ReferenceFitFigure() {}

    /** @param scan the spectrum that was fitted */
    public static Figure of(ReferenceLineFit fit, BindingScan scan, String name) {
        double[] energies = fit.energies().copy();
        double[] counts = new double[energies.length];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = scan.counts(Math.min(scan.channels() - 1, scan.firstAtOrAbove(energies[i])));
        }
        IntensityScale scale = IntensityScale.of(scan);
        NumberAxis energy = Plots.energyAxis(
                Arrays.stream(energies).min().orElse(0),
                Arrays.stream(energies).max().orElse(1));
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(energy);
        both.setGap(10);
        both.setInsets(new RectangleInsets(Plots.TOP, 0, 0, Plots.RIGHT));
        AxisSpace bottom = new AxisSpace();
        bottom.setBottom(Plots.BOTTOM);
        both.setFixedDomainAxisSpace(bottom);
        List<Figure.Key> keys = new ArrayList<>();
        keys.add(new Figure.Key("measured", CurveStyle.POINTS));
        both.add(part(curves(fit, energies, scale.of(counts), scale, keys)), 3);
        both.add(part(residual(fit, energies, counts, scan.countsKnown())), 1);
        return new Figure(Plots.svg(both, name, WIDTH, HEIGHT), describe(fit), keys);
    }

    /** A part leaves the energy axis and the outer margins to the whole. */
    private static XYPlot part(XYPlot plot) {
        plot.setFixedDomainAxisSpace(null);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return plot;
    }

    private static XYPlot curves(
            ReferenceLineFit fit, double[] energies, double[] counts, IntensityScale scale, List<Figure.Key> keys) {
        DefaultXYDataset data = new DefaultXYDataset();
        List<CurveStyle> styles = new ArrayList<>();
        double[] background = scale.of(fit.background().copy());
        for (int k = 0; k < fit.components().size(); k++) {
            ReferenceLineFit.Component component = fit.components().get(k);
            double[] curve = scale.of(component.curve().copy());
            for (int i = 0; i < curve.length; i++) curve[i] += background[i];
            Plots.add(data, "component " + k, energies, curve);
            styles.add(CurveStyle.component(k));
            keys.add(new Figure.Key(component.name(), CurveStyle.component(k)));
        }
        Plots.add(data, "background", energies, background);
        styles.add(CurveStyle.BACKGROUND);
        keys.add(new Figure.Key("background", CurveStyle.BACKGROUND));
        Plots.add(data, "sum", energies, scale.of(fit.sum().copy()));
        styles.add(CurveStyle.SUM);
        keys.add(new Figure.Key("fitted sum", CurveStyle.SUM));
        Plots.add(data, "measured", energies, counts);
        XYLineAndShapeRenderer renderer = Plots.lines(styles.toArray(CurveStyle[]::new));
        dots(renderer, styles.size());
        NumberAxis range = Plots.axis(scale.label());
        double low = Math.min(
                Arrays.stream(counts).min().orElse(0),
                Arrays.stream(background).min().orElse(0));
        double high = Arrays.stream(counts).max().orElse(1);
        double span = high > low ? high - low : Math.max(1, Math.abs(high));
        range.setRange(low - 0.05 * span, high + 0.08 * span);
        return Plots.plot(data, new NumberAxis(), range, renderer);
    }

    private static void dots(XYLineAndShapeRenderer renderer, int series) {
        renderer.setSeriesLinesVisible(series, false);
        renderer.setSeriesShapesVisible(series, true);
        renderer.setSeriesShape(series, new Rectangle2D.Double(-1.1, -1.1, 2.2, 2.2));
        renderer.setSeriesPaint(series, CurveStyle.POINTS.color());
    }

    /** In standard deviations of the fitted sum where counts are known. */
    private static XYPlot residual(ReferenceLineFit fit, double[] energies, double[] counts, boolean countsKnown) {
        double[] rest = new double[counts.length];
        double largest = 0;
        for (int i = 0; i < rest.length; i++) {
            double sum = fit.sum().value(i);
            rest[i] = (counts[i] - sum) / (countsKnown ? Math.sqrt(Math.max(1, sum)) : 1);
            largest = Math.max(largest, Math.abs(rest[i]));
        }
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "residual", energies, rest);
        NumberAxis range = Plots.axis(countsKnown ? "Residual / \u03c3" : "Residual");
        double reach = Math.max(countsKnown ? 3.5 : 1e-12, 1.1 * largest);
        range.setRange(-reach, reach);
        if (countsKnown && reach < 25) range.setTickUnit(new NumberTickUnit(reach < 5 ? 2 : reach < 12 ? 5 : 10));
        XYPlot plot = Plots.plot(data, new NumberAxis(), range, Plots.lines(CurveStyle.MEASURED));
        plot.addRangeMarker(new ValueMarker(0, CurveStyle.WINDOW.color(), CurveStyle.WINDOW.stroke()));
        return plot;
    }

    private static String describe(ReferenceLineFit fit) {
        return Shown.text(String.format(
                Locale.ROOT,
                "Fit of %s with %d component peaks; the reference at %.2f eV as measured; residual beneath",
                fit.line(),
                fit.components().size(),
                fit.reference().position().value()));
    }
}
