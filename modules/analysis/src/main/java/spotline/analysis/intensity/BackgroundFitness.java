package spotline.analysis.intensity;

import java.util.Optional;
import spotline.analysis.background.Background;
import spotline.analysis.background.DataCappedShirley;
import spotline.analysis.background.Shirley;
import spotline.analysis.background.Subtraction;
import spotline.core.Outcome;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Whether a chosen background serves under one line.
 *
 * <p>It does not where it does not exist, where it runs clearly above the data, where the area above it is lost in its
 * uncertainty; and a Shirley background not where the step between its ends is for the most part the slope that was there
 * before the line: its shape is that of a step under the line, which a slope is not. A slope that moves the area by less than
 * a hundredth is no reason to part from the chosen background, so that noise does not choose.
 *
 * <p>Errors: none. Source: derived; D.A. Shirley, Phys. Rev. B 5, 4709 (1972) takes the background before the line as
 * constant.
 */
final class BackgroundFitness {
    /** An area of fewer standard uncertainties is lost. */
    private static final double DROWNED = 3;

    /** A background above the data by more than this many deviations is not the line's. */
    private static final double OVERSHOT = 4.5;

    /** A slope of fewer standard uncertainties is none. */
    private static final double SLOPE_CLEAR = 3;

    private static final double SLOPE_SHARE = 0.5;

    /** A background that changes an area by less, relative, does not matter. Common practice, no source. */
    private static final double MATTERS = 0.01;

    private static final double SLOPE_REACH_EV = 5;
    private static final int SLOPE_CHANNELS = 8;

    private BackgroundFitness() {}

    /**
     * One sentence why the background does not serve; empty where it does.
     *
     * @param other what the treatment's other background leaves in the same window
     */
    static Optional<String> objection(
            BindingScan scan,
            Window window,
            Background background,
            Outcome<Subtraction> taken,
            Outcome<Subtraction> other) {
        if (taken instanceof Outcome.Untreated<Subtraction> refused) {
            return Optional.of(refused.finding().message());
        }
        Subtraction subtraction = taken.result().orElseThrow();
        if (aboveData(subtraction) > OVERSHOT) return Optional.of("The chosen background runs above the data.");
        if (drowned(subtraction)) {
            return Optional.of(
                    "The area above the chosen background is under " + (int) DROWNED + " times its uncertainty.");
        }
        boolean step = background instanceof Shirley || background instanceof DataCappedShirley;
        return step && matters(subtraction, other) && slopeShare(scan, window, subtraction) > SLOPE_SHARE
                ? Optional.of("The counts rise as fast before the line as across it.")
                : Optional.empty();
    }

    private static boolean matters(Subtraction taken, Outcome<Subtraction> other) {
        double area = taken.netArea().value();
        return other.result()
                .map(o -> Math.abs(o.netArea().value() - area) > MATTERS * Math.abs(area))
                .orElse(true);
    }

    static boolean drowned(Subtraction subtraction) {
        double u = subtraction.netArea().standardUncertainty().orElse(0);
        return subtraction.netArea().value() < DROWNED * u;
    }

    /** The clearest run of channels in which the background lies above the data, in standard deviations of counting. */
    private static double aboveData(Subtraction subtraction) {
        double worst = 0;
        for (int from = subtraction.from(); from < subtraction.to(); from++) {
            double excess = 0;
            double variance = 0;
            for (int i = from; i < subtraction.to(); i++) {
                excess -= subtraction.net(i);
                variance += Math.max(1, subtraction.net(i) + subtraction.background(i));
                if (excess <= 0) break;
                worst = Math.max(worst, excess / Math.sqrt(variance));
            }
        }
        return worst;
    }

    /** Share of the step between the ends that the slope before the window explains; 0 where there is no clear slope. */
    private static double slopeShare(BindingScan scan, Window window, Subtraction subtraction) {
        int to = subtraction.from();
        int from = Math.max(0, scan.firstAtOrAbove(window.lowEv() - SLOPE_REACH_EV));
        int n = to - from;
        if (n < SLOPE_CHANNELS) return 0;
        double middle = 0;
        for (int i = from; i < to; i++) middle += scan.energy(i) / n;
        double sxx = 0;
        double sxy = 0;
        double variance = 0;
        for (int i = from; i < to; i++) {
            double x = scan.energy(i) - middle;
            sxx += x * x;
            sxy += x * scan.counts(i);
            variance += x * x * Math.max(1, scan.counts(i));
        }
        double slope = sxy / sxx;
        if (Math.abs(slope) < SLOPE_CLEAR * Math.sqrt(variance) / sxx) return 0;
        double step = subtraction.background(subtraction.to() - 1) - subtraction.background(subtraction.from());
        return step > 0 ? slope * window.widthEv() / step : 0;
    }
}
