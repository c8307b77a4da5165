package spotline.report.figure;

import java.awt.Color;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.identify.Identification;
import spotline.core.Decimal;

/** Spectra for print: a survey with its lines named, scans above one another, the difference of two. */
public final class PrintSpectra {
    private static final String ARBITRARY = "Intensity (arb. units)";
    /** Names of lines are placed for type of this size, pixels. */
    private static final double LABEL_PIXELS = 11;

    private PrintSpectra() {}

    static String energyLabel(boolean referenced) {
        return referenced ? "Binding energy (eV)" : "Binding energy (eV), as measured";
    }

    /** @param shiftEv what turns the identification's measured energies into those of the scan */
    public static PrintFigure survey(PrintScan scan, Identification identification, double shiftEv, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        double[] values = scan.values();
        double highest = Arrays.stream(values).max().orElse(1);
        double lowest = Math.min(0, Arrays.stream(values).min().orElse(0));
        double labelPt = 5.5 * style.typePt();
        double plotPt = style.heightPt() - 3.4 * style.typePt();
        double span = (highest - lowest) * plotPt / Math.max(0.4 * plotPt, plotPt - labelPt);
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "measured", scan.energies(), values);
        XYLineAndShapeRenderer renderer = plots.curves(1);
        renderer.setSeriesPaint(0, PrintPalette.MEASURED);
        renderer.setSeriesStroke(0, PrintPlots.line(0.7));
        NumberAxis intensity = plots.arbitrary(ARBITRARY);
        intensity.setRange(lowest, lowest + span);
        XYPlot plot = plots.plot(
                data, plots.energy(scan.low(), scan.high(), energyLabel(scan.referenced())), intensity, renderer);
        double evPerPt = (scan.high() - scan.low()) / (style.widthPt() - 2.5 * style.typePt());
        double evPerPixel = evPerPt * style.typePt() / LABEL_PIXELS;
        double perPt = span / plotPt;
        List<LineLabels.Label> labels =
                LineLabels.of(identification, scan.low() - shiftEv, scan.high() - shiftEv, evPerPixel);
        for (LineLabels.Label label : labels) {
            if (label.text().isEmpty()) continue;
            double line = label.energyEv() + shiftEv;
            double placed = label.placedEv() + shiftEv;
            double apex = highest(scan, line, 3 * evPerPt);
            double foot = Math.max(apex, highest(scan, placed, 4 * evPerPt)) + 6 * perPt;
            plot.addAnnotation(
                    new XYLineAnnotation(line, apex + perPt, placed, foot, PrintPlots.line(0.5), PrintPalette.AXIS));
            XYTextAnnotation text = new XYTextAnnotation(label.text(), placed, foot + 1.5 * perPt);
            text.setFont(plots.small());
            text.setTextAnchor(TextAnchor.CENTER_LEFT);
            text.setRotationAnchor(TextAnchor.CENTER_LEFT);
            text.setRotationAngle(-Math.PI / 2);
            plot.addAnnotation(text);
        }
        return new PrintFigure(plot, false, style, "Survey spectrum of " + scan.name() + " with its lines named");
    }

    private static double highest(PrintScan scan, double energyEv, double reachEv) {
        double[] energies = scan.energies();
        double[] values = scan.values();
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < energies.length; i++) {
            if (Math.abs(energies[i] - energyEv) <= reachEv) best = Math.max(best, values[i]);
        }
        return Double.isInfinite(best) ? 0 : best;
    }

    /**
     * Scans above one another, the first lowest.
     *
     * @param offset from one to the next, as a share of the largest height
     */
    public static PrintFigure stack(List<PrintScan> scans, PrintScan.Normalise by, double offset, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        DefaultXYDataset data = new DefaultXYDataset();
        double tallest = 0;
        for (PrintScan scan : scans) {
            double[] values = scan.normalised(by).values();
            tallest = Math.max(
                    tallest,
                    Arrays.stream(values).max().orElse(1)
                            - Arrays.stream(values).min().orElse(0));
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < scans.size(); i++) {
            PrintScan scan = scans.get(i).normalised(by).raised(i * offset * tallest);
            Plots.add(data, i + " " + scan.name(), scan.energies(), scan.values());
            low = Math.min(low, scan.low());
            high = Math.max(high, scan.high());
            bottom = Math.min(bottom, Arrays.stream(scan.values()).min().orElse(0));
            top = Math.max(top, Arrays.stream(scan.values()).max().orElse(1));
        }
        NumberAxis intensity = plots.arbitrary(by == PrintScan.Normalise.NONE ? ARBITRARY : "Intensity, normalised");
        intensity.setRange(bottom - 0.04 * (top - bottom), top + 0.12 * (top - bottom));
        boolean referenced = scans.stream().allMatch(PrintScan::referenced);
        XYPlot plot = plots.plot(
                data, plots.energy(low, high, energyLabel(referenced)), intensity, plots.curves(scans.size()));
        for (int i = 0; i < scans.size(); i++) {
            PrintScan scan = scans.get(i).normalised(by).raised(i * offset * tallest);
            double[] values = scan.values();
            // Beside the curve's end of high energy, above it.
            double y = Arrays.stream(values)
                    .skip(Math.max(0, values.length - values.length / 6))
                    .max()
                    .orElse(0);
            XYTextAnnotation name =
                    new XYTextAnnotation(scan.name(), high - 0.015 * (high - low), y + 0.03 * (top - bottom));
            name.setFont(plots.small());
            name.setPaint(ink(i));
            name.setTextAnchor(TextAnchor.BOTTOM_LEFT);
            plot.addAnnotation(name);
        }
        String names = scans.stream().map(PrintScan::name).collect(Collectors.joining("; "));
        return new PrintFigure(plot, false, style, "Narrow scans above one another, from the lowest: " + names);
    }

    /** Type in a pale colour could not be read. */
    private static Color ink(int index) {
        Color colour = PrintPalette.colour(index);
        double light = 0.2126 * colour.getRed() + 0.7152 * colour.getGreen() + 0.0722 * colour.getBlue();
        return light > 130 ? colour.darker().darker() : colour;
    }

    /** Both scans, and beneath the first less the second. */
    public static PrintFigure difference(PrintScan first, PrintScan second, PrintScan.Normalise by, PrintStyle style) {
        PrintPlots plots = new PrintPlots(style);
        PrintScan one = first.normalised(by);
        PrintScan other = second.normalised(by);
        PrintScan rest = one.minus(other);
        DefaultXYDataset both = new DefaultXYDataset();
        Plots.add(both, first.name(), one.energies(), one.values());
        Plots.add(both, second.name(), other.energies(), other.values());
        DefaultXYDataset less = new DefaultXYDataset();
        Plots.add(less, "first less second", rest.energies(), rest.values());
        NumberAxis energy = plots.energy(
                Math.min(one.low(), other.low()),
                Math.max(one.high(), other.high()),
                energyLabel(first.referenced() && second.referenced()));
        String label = by == PrintScan.Normalise.NONE ? ARBITRARY : "Normalised";
        NumberAxis above = plots.arbitrary(label);
        double[] range = range(one.values(), other.values());
        above.setRange(range[0], range[1]);
        XYPlot upper = plots.plot(both, new NumberAxis(), above, plots.curves(2));
        XYLineAndShapeRenderer black = plots.curves(1);
        black.setSeriesPaint(0, PrintPalette.MEASURED);
        // The same height a unit as above, or a round number of times it, which is said.
        double[] rests = range(rest.values(), new double[] {0});
        double magnified = magnified((range[1] - range[0]) / 3 / ((rests[1] - rests[0]) / 2));
        double needed = (range[1] - range[0]) / 3 * 2 / magnified;
        double middle = 0.5 * (rests[0] + rests[1]);
        NumberAxis difference =
                plots.arbitrary(magnified == 1 ? "Difference" : "Difference \u00d7 " + Decimal.text(magnified));
        difference.setLabelFont(plots.small());
        difference.setRange(middle - 0.5 * needed, middle + 0.5 * needed);
        XYPlot beneath = plots.plot(less, new NumberAxis(), difference, black);
        beneath.addRangeMarker(new ValueMarker(0, PrintPalette.FAINT, PrintPlots.line(0.5)));
        CombinedDomainXYPlot all = plots.stacked(energy, upper, 3, beneath, 2);
        return new PrintFigure(
                all,
                true,
                style,
                "Two narrow scans, " + first.name() + " and " + second.name() + ", and their difference");
    }

    private static double[] range(double[] one, double[] other) {
        double low = Math.min(
                Arrays.stream(one).min().orElse(0), Arrays.stream(other).min().orElse(0));
        double high = Math.max(
                Arrays.stream(one).max().orElse(1), Arrays.stream(other).max().orElse(1));
        double span = high > low ? high - low : 1;
        return new double[] {low - 0.06 * span, high + 0.06 * span};
    }

    /** The largest of 1, 2, 5, 10, 20 ... that is no more; 1 for what is less. */
    private static double magnified(double most) {
        double best = 1;
        for (double power = 1; power < 1e6; power *= 10) {
            for (double step : new double[] {1, 2, 5}) {
                if (step * power <= most) best = step * power;
            }
        }
        return best;
    }
}
