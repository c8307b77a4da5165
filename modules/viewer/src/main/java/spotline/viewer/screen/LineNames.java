package spotline.viewer.screen;

import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import spotline.viewer.model.BenchData;

/** Names of lines above the measured curve, where the one before leaves room. */
final class LineNames {
    private static final double LETTER = 14;
    private static final double LETTER_WIDTH = 6.5;
    private static final double AXES = 46;
    private static final double MOST = 2;

    /** The upper plot's share of what two plots have. */
    private static final double UPPER = 0.72;

    private LineNames() {}

    /** What of a scan is shown, measured eV, and how its values are placed. */
    record Section(double lowEv, double highEv, double pixels, double movedEv, double factor) {}

    /** Share of the values' span that the longest name needs above the highest value. */
    static double room(BenchData d, double pixels, boolean stacked, double fontScale) {
        int letters = d.lines().stream().mapToInt(l -> l.line().length()).max().orElse(0);
        double name = (LETTER_WIDTH * letters + 12) * fontScale;
        double plot = (stacked ? UPPER : 1) * (pixels - AXES * fontScale);
        return name / Math.max(name / MOST, plot - name);
    }

    static void on(XYPlot plot, BenchData d, Section section, NumberAxis values, Palette palette, double fontScale) {
        double pitch = LETTER * fontScale * (section.highEv() - section.lowEv()) / Math.max(200, section.pixels());
        List<Double> taken = new ArrayList<>();
        double rise = 0.02 * values.getRange().getLength();
        for (BenchData.LineMark mark : d.lines()) {
            double at = mark.energyEv();
            boolean outside = at < section.lowEv() || at > section.highEv();
            if (outside || taken.stream().anyMatch(t -> Math.abs(t - at) < pitch)) continue;
            taken.add(at);
            java.awt.Color color = Palette.awt(mark.sure() ? palette.ink() : palette.quiet());
            double top = section.factor() * highestNear(d, at, pitch);
            plot.addAnnotation(Plot.upright(
                    mark.line() + (mark.sure() ? "" : "?"), at + section.movedEv(), top + rise, color, fontScale));
        }
    }

    private static double highestNear(BenchData d, double at, double reach) {
        double high = d.measuredAt(at);
        for (int i = 0; i < d.measured().channels(); i++) {
            if (Math.abs(d.measured().energy(i) - at) < reach)
                high = Math.max(high, d.measured().value(i));
        }
        return high;
    }
}
