package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Font;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.identify.Identification;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.spectra.BindingScan;

/** A survey spectrum with its lines named. */
public final class SurveyFigure {
    private static final int WIDTH = 880;
    private static final int HEIGHT = 330;
    private static final int DATA_WIDTH = WIDTH - Plots.LEFT - Plots.RIGHT;
    private static final int DATA_HEIGHT = HEIGHT - Plots.BOTTOM - Plots.TOP;
    /** Room above the highest point for a leader and an upright label, pixels. */
    private static final int LABEL_ROOM = 76;

    private static final int LEADER = 10;
    private static final Font FONT = Plots.LABEL;
    private static final BasicStroke THIN = new BasicStroke(0.6f);

    private SurveyFigure() {}

    public static Figure of(LinkedSpectrum spectrum, Identification identification, String name) {
        BindingScan scan = spectrum.scan();
        IntensityScale scale = IntensityScale.of(scan);
        double[] energies = scan.energies();
        double[] counts = scale.of(scan.counts());
        double highest = Arrays.stream(counts).max().orElse(1);
        double high = highest > 0 ? highest : 1;
        double top = high * DATA_HEIGHT / (DATA_HEIGHT - LABEL_ROOM);
        double lowEv = energies[0];
        double highEv = energies[energies.length - 1];
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "measured", energies, counts);
        NumberAxis range = Plots.axis(scale.label());
        range.setRange(0, top);
        XYPlot plot = Plots.plot(data, Plots.energyAxis(lowEv, highEv), range, Plots.lines(CurveStyle.MEASURED));
        double evPerPixel = (highEv - lowEv) / DATA_WIDTH;
        double countsPerPixel = top / DATA_HEIGHT;
        List<LineLabels.Label> labels = LineLabels.of(identification, lowEv, highEv, evPerPixel);
        for (LineLabels.Label label : labels) {
            double apex = highest(scan, counts, label.energyEv(), 4 * evPerPixel);
            if (label.text().isEmpty()) {
                mark(plot, label.energyEv(), apex, label.energyEv(), apex + 4 * countsPerPixel, countsPerPixel);
                continue;
            }
            double foot =
                    Math.max(apex, highest(scan, counts, label.placedEv(), 7 * evPerPixel)) + LEADER * countsPerPixel;
            mark(plot, label.energyEv(), apex, label.placedEv(), foot, countsPerPixel);
            XYTextAnnotation text = new XYTextAnnotation(label.text(), label.placedEv(), foot + 2 * countsPerPixel);
            text.setFont(FONT);
            text.setTextAnchor(TextAnchor.CENTER_LEFT);
            text.setRotationAnchor(TextAnchor.CENTER_LEFT);
            text.setRotationAngle(-Math.PI / 2);
            plot.addAnnotation(text);
        }
        return new Figure(Plots.svg(plot, name, WIDTH, HEIGHT), describe(scan, identification), List.of());
    }

    private static void mark(XYPlot plot, double fromEv, double apex, double toEv, double foot, double countsPerPixel) {
        plot.addAnnotation(
                new XYLineAnnotation(fromEv, apex + 2 * countsPerPixel, toEv, foot, THIN, CurveStyle.SUM.color()));
    }

    private static double highest(BindingScan scan, double[] counts, double energyEv, double reachEv) {
        int from = Math.max(0, scan.firstAtOrAbove(energyEv - reachEv));
        int to = Math.min(counts.length - 1, scan.lastAtOrBelow(energyEv + reachEv));
        double best = 0;
        for (int i = from; i <= to; i++) best = Math.max(best, counts[i]);
        return best;
    }

    private static String describe(BindingScan scan, Identification identification) {
        String elements = identification.elements().stream()
                .map(e -> e.element() + " (" + e.verdict().word() + ")")
                .collect(Collectors.joining(", "));
        String measured = String.format(
                Locale.ROOT,
                "Survey spectrum from %.0f to %.0f eV binding energy as measured; elements: ",
                scan.range().highEv(),
                scan.range().lowEv());
        return Shown.text(measured + (elements.isEmpty() ? "none" : elements));
    }
}
