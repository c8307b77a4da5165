package spotline.report.figure;

import java.awt.geom.Ellipse2D;
import java.util.Arrays;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.report.text.Shown;

/** A peak fit for print: data, components, background, fitted sum, and the residual on the same energy axis. */
public final class PrintFit {
    private PrintFit() {}

    /**
     * @param shiftEv added to measured energies
     * @param referenced whether that makes them referenced
     */
    public static PrintFigure of(PeakFitResult fit, String name, double shiftEv, boolean referenced, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        double[] energies = fit.energies();
        for (int i = 0; i < energies.length; i++) energies[i] += shiftEv;
        NumberAxis energy =
                plots.energy(energies[0], energies[energies.length - 1], PrintSpectra.energyLabel(referenced));
        CombinedDomainXYPlot both =
                plots.stacked(energy, curves(fit, energies, plots), 5, residual(fit, energies, plots), 2);
        return new PrintFigure(
                both, true, style, "Peak fit of " + Shown.label(name) + " with its components and residual");
    }

    private static XYPlot curves(PeakFitResult fit, double[] energies, PrintPlots plots) {
        DefaultXYDataset data = new DefaultXYDataset();
        double[] background = fit.background();
        XYLineAndShapeRenderer renderer = plots.curves(fit.components().size());
        int series = 0;
        int own = -1;
        for (FittedComponent component : fit.components()) {
            boolean partner = component.partnerOf().isPresent();
            if (!partner) own++;
            double[] curve = component.curve();
            for (int i = 0; i < curve.length; i++) curve[i] += background[i];
            Plots.add(data, series + " " + component.name(), energies, curve);
            renderer.setSeriesPaint(series, PrintPalette.colour(own));
            renderer.setSeriesStroke(series, PrintPalette.stroke(own, PrintPlots.CURVE_PT));
            renderer.setSeriesVisibleInLegend(series, !partner);
            series++;
        }
        Plots.add(data, "background", energies, background);
        renderer.setSeriesPaint(series, PrintPalette.FAINT.darker());
        renderer.setSeriesStroke(series++, PrintPlots.line(0.7));
        Plots.add(data, "fitted sum", energies, fit.sum());
        renderer.setSeriesPaint(series, PrintPalette.MEASURED);
        renderer.setSeriesStroke(series++, PrintPlots.line(0.8));
        Plots.add(data, "measured", energies, fit.counts());
        renderer.setSeriesPaint(series, PrintPalette.AXIS);
        renderer.setSeriesLinesVisible(series, false);
        renderer.setSeriesShapesVisible(series, true);
        renderer.setSeriesShapesFilled(series, false);
        renderer.setSeriesShape(series, new Ellipse2D.Double(-1.1, -1.1, 2.2, 2.2));
        renderer.setSeriesOutlineStroke(series, PrintPlots.line(0.4));
        renderer.setSeriesStroke(series, PrintPlots.line(0.4));
        renderer.setLegendItemLabelGenerator(
                (set, index) -> Shown.label(label(String.valueOf(set.getSeriesKey(index)))));
        NumberAxis intensity = plots.arbitrary("Intensity");
        double low = Math.min(
                Arrays.stream(fit.counts()).min().orElse(0),
                Arrays.stream(background).min().orElse(0));
        double high = Arrays.stream(fit.counts()).max().orElse(1);
        double span = high > low ? high - low : 1;
        intensity.setRange(low - 0.05 * span, high + 0.06 * span);
        return plots.plot(data, new NumberAxis(), intensity, renderer);
    }

    /** A tick on either side of nought. */
    private static double step(double reach) {
        double power = Math.pow(10, Math.floor(Math.log10(reach)));
        return reach / power > 5 ? 5 * power : reach / power > 2 ? 2 * power : power;
    }

    /** Keys of components begin with their number: two may be called alike. */
    private static String label(String key) {
        return key.matches("\\d+ .*") ? key.substring(key.indexOf(' ') + 1) : key;
    }

    private static XYPlot residual(PeakFitResult fit, double[] energies, PrintPlots plots) {
        double[] rest = fit.residuals();
        double reach = Math.max(
                fit.counted() ? 3.5 : 1e-12,
                1.1 * Arrays.stream(rest).map(Math::abs).max().orElse(0));
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "residual", energies, rest);
        NumberAxis axis = plots.axis(fit.counted() ? "Residual / \u03c3" : "Residual");
        axis.setLabelFont(plots.small());
        axis.setRange(-reach, reach);
        if (fit.counted()) axis.setTickUnit(new NumberTickUnit(reach < 5 ? 2 : reach < 12 ? 5 : step(reach)));
        XYLineAndShapeRenderer renderer = plots.curves(1);
        renderer.setSeriesPaint(0, PrintPalette.MEASURED);
        renderer.setSeriesStroke(0, PrintPlots.line(0.6));
        renderer.setSeriesVisibleInLegend(0, false);
        XYPlot plot = plots.plot(data, new NumberAxis(), axis, renderer);
        plot.addRangeMarker(new ValueMarker(0, PrintPalette.FAINT, PrintPlots.line(0.5)));
        return plot;
    }
}
