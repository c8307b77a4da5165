package spotline.report.figure;

import java.awt.Color;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import spotline.analysis.background.Subtraction;
import spotline.analysis.intensity.Intensity;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.spectra.BindingScan;

/** A narrow scan with what was subtracted from it and the windows its intensities were taken from. */
public final class NarrowScanFigure {
    private static final int WIDTH = 340;
    private static final int HEIGHT = 236;
    private static final Color NET_AREA = new Color(0x56, 0xB4, 0xE9, 70);
    private static final double HEADROOM = 0.16;

    private NarrowScanFigure() {}

    /** @param intensities taken from this spectrum */
    public static Figure of(LinkedSpectrum spectrum, List<Intensity> intensities, String name) {
        BindingScan scan = spectrum.scan();
        IntensityScale scale = IntensityScale.of(scan);
        double[] energies = scan.energies();
        double[] counts = scale.of(scan.counts());
        DefaultXYDataset data = new DefaultXYDataset();
        Plots.add(data, "measured", energies, counts);
        double low = Arrays.stream(counts).min().orElse(0);
        double high = Arrays.stream(counts).max().orElse(1);
        CurveStyle[] styles = new CurveStyle[1 + intensities.size()];
        Arrays.fill(styles, CurveStyle.BACKGROUND);
        styles[0] = CurveStyle.MEASURED;
        for (int k = 0; k < intensities.size(); k++) {
            Subtraction subtraction = intensities.get(k).subtraction();
            double[] background = scale.of(subtraction.backgrounds());
            Plots.add(
                    data,
                    "background " + k,
                    Arrays.copyOfRange(energies, subtraction.from(), subtraction.to()),
                    background);
            low = Math.min(low, Arrays.stream(background).min().orElse(low));
            high = Math.max(high, Arrays.stream(background).max().orElse(high));
        }
        NumberAxis range = Plots.axis(scale.label());
        double span = high > low ? high - low : Math.max(1, Math.abs(high));
        range.setRange(low - 0.05 * span, high + HEADROOM * span);
        XYPlot plot = Plots.plot(
                data, Plots.energyAxis(energies[0], energies[energies.length - 1]), range, Plots.lines(styles));
        for (Intensity intensity : intensities)
            annotate(plot, intensity, energies, counts, scale, high + 0.5 * HEADROOM * span);
        return new Figure(
                Plots.svg(plot, name, WIDTH, HEIGHT),
                describe(spectrum, intensities),
                List.of(
                        new Figure.Key("measured", CurveStyle.MEASURED),
                        new Figure.Key("background subtracted", CurveStyle.BACKGROUND),
                        new Figure.Key("ends of the window", CurveStyle.WINDOW)));
    }

    private static void annotate(
            XYPlot plot, Intensity intensity, double[] energies, double[] counts, IntensityScale scale, double top) {
        plot.getRenderer()
                .addAnnotation(
                        netArea(intensity.subtraction(), energies, counts, scale), org.jfree.chart.ui.Layer.BACKGROUND);
        for (double end :
                new double[] {intensity.window().lowEv(), intensity.window().highEv()}) {
            ValueMarker marker = new ValueMarker(end, CurveStyle.WINDOW.color(), CurveStyle.WINDOW.stroke());
            plot.addDomainMarker(marker);
        }
        XYTextAnnotation label = new XYTextAnnotation(
                Shown.label(intensity.line().toString()), intensity.window().centreEv(), top);
        label.setFont(Plots.LABEL);
        label.setTextAnchor(TextAnchor.CENTER);
        plot.addAnnotation(label);
    }

    private static XYPolygonAnnotation netArea(
            Subtraction subtraction, double[] energies, double[] counts, IntensityScale scale) {
        double[] background = scale.of(subtraction.backgrounds());
        int n = background.length;
        double[] corners = new double[4 * n];
        for (int i = 0; i < n; i++) {
            int channel = subtraction.from() + i;
            corners[2 * i] = energies[channel];
            corners[2 * i + 1] = counts[channel];
            int back = 4 * n - 2 - 2 * i;
            corners[back] = energies[channel];
            corners[back + 1] = background[i];
        }
        return new XYPolygonAnnotation(corners, null, null, NET_AREA);
    }

    private static String describe(LinkedSpectrum spectrum, List<Intensity> intensities) {
        BindingScan scan = spectrum.scan();
        String measured = String.format(
                Locale.ROOT,
                "Narrow scan %s from %.1f to %.1f eV binding energy as measured",
                spectrum.region(),
                scan.range().highEv(),
                scan.range().lowEv());
        String lines = intensities.stream()
                .map(i -> String.format(
                        Locale.ROOT,
                        "%s in a window from %.1f to %.1f eV",
                        i.line(),
                        i.window().highEv(),
                        i.window().lowEv()))
                .collect(Collectors.joining("; "));
        return Shown.text(lines.isEmpty() ? measured + "; no intensity was taken" : measured + "; " + lines);
    }
}
