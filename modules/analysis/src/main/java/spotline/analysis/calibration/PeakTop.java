package spotline.analysis.calibration;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.fit.Weighting;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * The maximum of a peak by a polynomial of the fourth degree fitted to its upper part: what reference energies of lines refer to, whatever the
 * line's asymmetry.
 *
 * <p>Source: the energies of ISO 15472 are of peak maxima; the degree, in place of its parabola, follows a lopsided top
 * and one that is no parabola as far down as half the height.
 *
 * @param spectrum it was found in
 * @param positionEv of the maximum, measured binding energy, eV
 * @param fwhmEv full width at half of the height above a straight line between both sides of the peak, eV; empty where a
 *     side does not fall that far
 * @param height of the maximum above that line, in the scan's unit
 */
public record PeakTop(String spectrum, Estimate positionEv, OptionalDouble fwhmEv, double height) {
    private static final double SMOOTHED_EV = 0.3;
    /** Share of the half width, to either side of the maximum, that the polynomial is fitted over. */
    private static final double FITTED = 1.0;

    private static final int DEGREE = 4;
    private static final int FEWEST_CHANNELS = 7;
    private static final double BESIDE_EV = 4;
    private static final double AROUND_EV = 0.5;
    private static final double MINIMUM_SIGNIFICANCE = 5;

    /** Errors: empty when the window holds no maximum, or none that stands out of its surroundings. */
    public static Optional<PeakTop> find(BindingScan scan, Window window, Work work) {
        int from = scan.firstAtOrAbove(window.lowEv());
        int to = scan.lastAtOrBelow(window.highEv());
        if (to - from < FEWEST_CHANNELS) return Optional.empty();
        double[] smooth = smoothed(scan);
        int top = -1;
        for (int i = from; i <= to; i++) {
            if ((top < 0 || smooth[i] > smooth[top]) && highestAround(scan, smooth, i)) top = i;
        }
        if (top < 0) return Optional.empty();
        Sides sides = sides(scan, smooth, top);
        double height = smooth[top] - sides.under(scan.energy(top));
        double noise = Math.sqrt(Math.max(1, smooth[top]));
        if (!(height > 0) || (scan.countsKnown() && height < MINIMUM_SIGNIFICANCE * noise)) return Optional.empty();
        OptionalDouble fwhm = fwhm(scan, smooth, top, sides, height);
        Optional<Estimate> position = polynomial(scan, top, fwhm.orElse(1), work);
        return position.map(p -> new PeakTop(scan.label(), p, fwhm, height));
    }

    /** Not on the flank of a higher peak beyond the window. */
    private static boolean highestAround(BindingScan scan, double[] smooth, int channel) {
        int reach = Math.max(2, (int) Math.round(AROUND_EV / scan.stepEv()));
        if (channel < reach || channel + reach >= smooth.length) return false;
        for (int i = channel - reach; i <= channel + reach; i++) if (smooth[i] > smooth[channel]) return false;
        return true;
    }

    private record Sides(double lowEv, double lowCounts, double highEv, double highCounts) {
        double under(double energyEv) {
            double share = (energyEv - lowEv) / (highEv - lowEv);
            return lowCounts + share * (highCounts - lowCounts);
        }
    }

    /** The lowest place within reach on either side of the maximum. */
    private static Sides sides(BindingScan scan, double[] smooth, int top) {
        int low = top;
        int high = top;
        for (int i = top; i >= 0 && scan.energy(i) >= scan.energy(top) - BESIDE_EV; i--) {
            if (smooth[i] < smooth[low]) low = i;
        }
        for (int i = top; i < smooth.length && scan.energy(i) <= scan.energy(top) + BESIDE_EV; i++) {
            if (smooth[i] < smooth[high]) high = i;
        }
        return new Sides(scan.energy(low), smooth[low], scan.energy(high), smooth[high]);
    }

    private static double[] smoothed(BindingScan scan) {
        int half = (int) Math.floor(0.5 * SMOOTHED_EV / scan.stepEv());
        double[] smooth = new double[scan.channels()];
        for (int i = 0; i < smooth.length; i++) {
            int low = Math.max(0, i - half);
            int high = Math.min(smooth.length - 1, i + half);
            double sum = 0;
            for (int k = low; k <= high; k++) sum += scan.counts(k);
            smooth[i] = sum / (high - low + 1);
        }
        return smooth;
    }

    private static OptionalDouble fwhm(BindingScan scan, double[] smooth, int top, Sides sides, double height) {
        OptionalDouble low = half(scan, smooth, top, -1, sides, height);
        OptionalDouble high = half(scan, smooth, top, 1, sides, height);
        return low.isPresent() && high.isPresent()
                ? OptionalDouble.of(high.getAsDouble() - low.getAsDouble())
                : OptionalDouble.empty();
    }

    private static OptionalDouble half(
            BindingScan scan, double[] smooth, int top, int direction, Sides sides, double height) {
        double before = height;
        for (int i = top + direction; i >= 0 && i < smooth.length; i += direction) {
            double net = smooth[i] - sides.under(scan.energy(i));
            if (net <= 0.5 * height) {
                double share = (before - 0.5 * height) / (before - net);
                double last = scan.energy(i - direction);
                return OptionalDouble.of(last + share * (scan.energy(i) - last));
            }
            before = net;
        }
        return OptionalDouble.empty();
    }

    private static Optional<Estimate> polynomial(BindingScan scan, int top, double fwhm, Work work) {
        int reach = Math.max((FEWEST_CHANNELS - 1) / 2, (int) Math.round(0.5 * FITTED * fwhm / scan.stepEv()));
        int from = Math.max(0, top - reach);
        int to = Math.min(scan.channels(), top + reach + 1);
        if (to - from < FEWEST_CHANNELS) return Optional.empty();
        double origin = scan.energy(top);
        double[] y = Arrays.copyOfRange(scan.counts(), from, to);
        PeakModel model =
                PeakModel.on(Arrays.copyOfRange(scan.energies(), from, to)).polynomialBackground(DEGREE, origin);
        Weighting weighting = scan.countsKnown() ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        FitResult fit = Fit.solve(
                FitProblem.of(
                        model,
                        y,
                        weighting,
                        model.parameters(Arrays.stream(y).max().orElse(1), 0, -1, 0, 0)),
                FitSettings.DEFAULT,
                work);
        double at = maximum(fit.values());
        if (!fit.converged() || !(Math.abs(at) <= reach * scan.stepEv())) return Optional.empty();
        return Optional.of(fit.estimate(PeakTop::maximum, "top " + scan.label()).plus(origin));
    }

    /** Where the polynomial has its maximum next to its origin, by Newton's iteration; not finite where it has none. */
    private static double maximum(double[] p) {
        double at = 0;
        for (int i = 0; i < 30; i++) {
            double slope = p[1] + at * (2 * p[2] + at * (3 * p[3] + at * 4 * p[4]));
            double bend = 2 * p[2] + at * (6 * p[3] + at * 12 * p[4]);
            if (!(bend < 0)) return Double.NaN;
            double step = slope / bend;
            at -= step;
            if (Math.abs(step) < 1e-12) break;
        }
        return at;
    }
}
