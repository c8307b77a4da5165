package spotline.report.figure;

import java.awt.geom.Ellipse2D;
import java.util.List;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.statistics.DefaultStatisticalCategoryDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.SampleValue;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/** Compositions and energy references for print: bars over samples, a depth profile, shifts of the spots. */
public final class PrintComposition {
    private PrintComposition() {}

    /** A group of bars an element, a bar a sample, whiskers one standard uncertainty. */
    public static PrintFigure bars(RunResult result, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        DefaultStatisticalCategoryDataset data = new DefaultStatisticalCategoryDataset();
        List<String> elements = List.copyOf(ElementOrder.ofSamples(result));
        for (int s = 0; s < result.samples().size(); s++) {
            SampleComposition sample = result.samples().get(s);
            String name = (s + 1) + ". " + Shown.label(sample.sample());
            for (String element : elements) {
                if (SampleValue.of(result, sample, element) instanceof SampleValue.Mean mean) {
                    data.add(mean.atomicPercent(), mean.standardUncertainty().orElse(Double.NaN), name, element);
                } else {
                    data.add(Double.NaN, Double.NaN, name, element);
                }
            }
        }
        WhiskerBars renderer = new WhiskerBars();
        for (int s = 0; s < result.samples().size(); s++) renderer.setSeriesPaint(s, PrintPalette.colour(s));
        CategoryAxis names = new CategoryAxis();
        plots.dress(names);
        names.setCategoryMargin(0.22);
        names.setLowerMargin(0.02);
        names.setUpperMargin(0.02);
        NumberAxis percent = plots.axis("Atomic percent");
        percent.setAutoRangeIncludesZero(true);
        CategoryPlot plot = new CategoryPlot(data, names, percent, renderer);
        plot.setBackgroundPaint(null);
        plot.setRangeGridlinePaint(PrintPalette.FAINT);
        plot.setRangeGridlineStroke(PrintPlots.line(0.4));
        plot.setOutlinePaint(PrintPalette.AXIS);
        plot.setOutlineStroke(PrintPlots.line(PrintPlots.FRAME_PT));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        return new PrintFigure(
                plot, true, style, "Atomic percent of each element, a bar a sample, whiskers one standard uncertainty");
    }

    /** Atomic percent against depth or etch time, whiskers one standard uncertainty. */
    public static PrintFigure depth(DepthTable table, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        for (DepthTable.Profile profile : table.profiles()) {
            YIntervalSeries series = new YIntervalSeries(profile.element());
            for (int i = 0; i < table.depths().size(); i++) {
                double value = profile.atomicPercent().get(i);
                if (Double.isNaN(value)) continue;
                double u = Double.isNaN(profile.uncertainty().get(i))
                        ? 0
                        : profile.uncertainty().get(i);
                series.add(table.depths().get(i), value, value - u, value + u);
            }
            data.addSeries(series);
        }
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(false);
        renderer.setDefaultLinesVisible(true);
        renderer.setDefaultShapesVisible(true);
        renderer.setErrorStroke(PrintPlots.line(0.5));
        renderer.setCapLength(2);
        for (int i = 0; i < data.getSeriesCount(); i++) {
            renderer.setSeriesPaint(i, PrintPalette.colour(i));
            renderer.setSeriesStroke(i, PrintPalette.stroke(i, PrintPlots.CURVE_PT));
            renderer.setSeriesShape(i, new Ellipse2D.Double(-1.3, -1.3, 2.6, 2.6));
        }
        NumberAxis percent = plots.axis("Atomic percent");
        percent.setAutoRangeIncludesZero(true);
        NumberAxis depths = plots.axis(Shown.label(table.axis()));
        // The surface stands at nought: its marks are not to be cut by the frame.
        depths.setAutoRangeStickyZero(false);
        XYPlot plot = plots.plot(data, depths, percent, renderer);
        return new PrintFigure(plot, true, style, "Atomic percent against " + Shown.label(table.axis()));
    }

    /** The largest of 1, 2, 5 times a power of ten that is no more. */
    private static double tick(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        return most / power >= 5 ? 5 * power : most / power >= 2 ? 2 * power : power;
    }

    /** What is added to the measured energies of each spot, with its standard uncertainty. */
    public static PrintFigure charge(RunResult result, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        List<SpotResult> spots = result.spots();
        String[] names = new String[spots.size()];
        XYIntervalSeries shifts = new XYIntervalSeries("shift");
        for (int i = 0; i < spots.size(); i++) {
            SpotResult spot = spots.get(i);
            boolean failed = spot.charge().shiftEv().isEmpty();
            names[i] = PrintScan.name(spot) + (failed ? " (no reference)" : "");
            if (failed) continue;
            double shift = spot.charge().shiftEv().getAsDouble();
            double u = spot.charge().standardUncertainty().orElse(0);
            shifts.add(shift, shift - u, shift + u, i, i, i);
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(shifts);
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawYError(false);
        renderer.setSeriesPaint(0, PrintPalette.colour(0));
        renderer.setSeriesShape(0, new Ellipse2D.Double(-2, -2, 4, 4));
        renderer.setErrorStroke(PrintPlots.line(0.7));
        renderer.setCapLength(3);
        SymbolAxis spotAxis = new SymbolAxis(null, names);
        plots.dress(spotAxis);
        spotAxis.setGridBandsVisible(false);
        spotAxis.setInverted(true);
        spotAxis.setRange(-0.6, Math.max(0.6, spots.size() - 0.4));
        NumberAxis shiftAxis = plots.axis("Shift added to energies (eV)");
        shiftAxis.setAutoRangeIncludesZero(true);
        shiftAxis.setAutoRangeStickyZero(false);
        shiftAxis.setLowerMargin(0.12);
        shiftAxis.setUpperMargin(0.12);
        XYPlot plot = plots.plot(data, shiftAxis, spotAxis, renderer);
        shiftAxis.setTickUnit(new NumberTickUnit(tick(shiftAxis.getRange().getLength() / 3)));
        plot.addDomainMarker(new ValueMarker(0, PrintPalette.FAINT, PrintPlots.line(0.6)));
        return new PrintFigure(
                plot, false, style, "Shift of the energy scale of each spot, with its standard uncertainty");
    }
}
