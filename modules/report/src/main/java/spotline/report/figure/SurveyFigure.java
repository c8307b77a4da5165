package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Font;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.SurveyModel;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.spectra.BindingScan;

/** A survey spectrum with its lines named. */
public final class SurveyFigure {
    private static final int WIDTH = 880;
    private static final int HEIGHT = 330;
    private static final int DATA_WIDTH = WIDTH - Plots.LEFT - Plots.RIGHT;
    /** Where a page has to do with less. */
    private static final int LOW = 225;

    /** Room above the highest point for a leader and an upright label, pixels. */
    private static final int LABEL_ROOM = 76;

    private static final int LEADER = 10;
    private static final Font FONT = Plots.LABEL;
    private static final BasicStroke THIN = new BasicStroke(0.6f);

    private SurveyFigure() {}

    public static Figure of(LinkedSpectrum spectrum, Identification identification, String name) {
        return of(spectrum, identification, name, HEIGHT);
    }

    /** The same, less high. */
    public static Figure low(LinkedSpectrum spectrum, Identification identification, String name) {
        return of(spectrum, identification, name, LOW);
    }

    private static Figure of(LinkedSpectrum spectrum, Identification identification, String name, int height) {
        XYPlot plot = plot(spectrum.scan(), identification, height);
        return new Figure(Plots.svg(plot, name, WIDTH, height), describe(spectrum.scan(), identification), List.of());
    }

    /** The survey with the fitted model drawn over it and the residual beneath, as a file of its own. */
    public static String withModel(BindingScan scan, Identification identification, String title) {
        XYPlot survey = plot(scan, identification, HEIGHT);
        Optional<SurveyModel> model = identification.detail().map(Identification.Detail::model);
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(survey.getDomainAxis());
        both.setGap(10);
        both.setInsets(new RectangleInsets(Plots.TOP + 6, 0, 0, Plots.RIGHT));
        AxisSpace bottom = new AxisSpace();
        bottom.setBottom(Plots.BOTTOM);
        both.setFixedDomainAxisSpace(bottom);
        model.ifPresent(m -> addModel(survey, m, IntensityScale.of(scan)));
        both.add(part(survey), 5);
        model.ifPresent(m -> both.add(part(residual(m)), 1));
        XYTextAnnotation heading = new XYTextAnnotation(
                title,
                scan.range().highEv() - 0.01 * scan.range().widthEv(),
                survey.getRangeAxis().getUpperBound() * 0.97);
        heading.setFont(FONT);
        heading.setTextAnchor(TextAnchor.CENTER_LEFT);
        survey.addAnnotation(heading);
        String svg = Plots.svg(both, "survey", WIDTH, HEIGHT + 110);
        return svg.replaceFirst("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ")
                .replaceFirst("(<svg [^>]*?)xmlns='http://www.w3.org/2000/svg'", "$1");
    }

    private static XYPlot part(XYPlot plot) {
        plot.setFixedDomainAxisSpace(null);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return plot;
    }

    private static void addModel(XYPlot survey, SurveyModel model, IntensityScale scale) {
        DefaultXYDataset curves = new DefaultXYDataset();
        Plots.add(curves, "background", model.energies(), scale.of(model.background()));
        Plots.add(curves, "fitted sum", model.energies(), scale.of(model.fittedSum()));
        survey.setDataset(1, curves);
        survey.setRenderer(1, Plots.lines(CurveStyle.BACKGROUND, CurveStyle.SUM));
    }

    /** In standard deviations of counting and of what the model may be wrong by. */
    private static XYPlot residual(SurveyModel model) {
        double[] rest = model.residual();
        double[] deviation = model.standardDeviation();
        double[] sizes = new double[rest.length];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = deviation[i] > 0 ? rest[i] / deviation[i] : 0;
            sizes[i] = Math.abs(rest[i]);
        }
        Arrays.sort(sizes);
        // A few channels beside a steep edge must not flatten all the others: they run out of the frame instead.
        double reach = Math.max(4, 1.3 * sizes[(int) (0.99 * (sizes.length - 1))]);
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "residual", model.energies(), rest);
        NumberAxis range = Plots.axis("Residual / \u03c3");
        range.setRange(-reach, reach);
        return Plots.plot(data, new NumberAxis(), range, Plots.lines(CurveStyle.MEASURED));
    }

    private static XYPlot plot(BindingScan scan, Identification identification, int height) {
        int dataHeight = height - Plots.BOTTOM - Plots.TOP;
        IntensityScale scale = IntensityScale.of(scan);
        double[] energies = scan.energies();
        double[] counts = scale.of(scan.counts());
        double highest = Arrays.stream(counts).max().orElse(1);
        double high = highest > 0 ? highest : 1;
        double top = high * dataHeight / (dataHeight - LABEL_ROOM);
        double lowEv = energies[0];
        double highEv = energies[energies.length - 1];
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "measured", energies, counts);
        NumberAxis range = Plots.axis(scale.label());
        range.setRange(0, top);
        XYPlot plot = Plots.plot(data, Plots.energyAxis(lowEv, highEv), range, Plots.lines(CurveStyle.MEASURED));
        double evPerPixel = (highEv - lowEv) / DATA_WIDTH;
        double countsPerPixel = top / dataHeight;
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
        return plot;
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
