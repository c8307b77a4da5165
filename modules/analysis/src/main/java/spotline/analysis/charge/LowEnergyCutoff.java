package spotline.analysis.charge;

import java.util.Optional;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.fit.Weighting;
import spotline.spectra.BindingScan;

/**
 * The work function from the low-energy cutoff of the secondary electrons: {@code phi = photon energy - cutoff}, the cutoff
 * on the binding-energy scale where the leading edge, made straight, meets the dark level.
 *
 * <p>Source: closed form; the extrapolation of the straight part of the edge is common practice, no source. A bias between
 * sample and spectrometer must have been taken out of the axis.
 */
final class LowEnergyCutoff {
    /** Work functions of surfaces, eV. */
    private static final double LOWEST = 2;

    private static final double HIGHEST = 8;

    private LowEnergyCutoff() {}

    /** Errors: empty when the scan does not hold a cutoff of a possible work function. */
    static Optional<Estimate> workFunction(BindingScan scan, Work work) {
        double hv = scan.photonEnergyEv();
        int from = scan.firstAtOrAbove(hv - HIGHEST);
        int to = scan.lastAtOrBelow(hv - LOWEST);
        if (to - from < 8) return Optional.empty();
        int top = from;
        for (int i = from; i <= to; i++) if (scan.counts(i) > scan.counts(top)) top = i;
        double dark = 0;
        int n = 0;
        for (int i = Math.max(top + 1, scan.channels() - 5); i < scan.channels(); i++, n++) dark += scan.counts(i);
        if (n == 0) return Optional.empty();
        dark /= n;
        double height = scan.counts(top) - dark;
        if (!(height > 10 * Math.sqrt(Math.max(1, scan.counts(top))))) return Optional.empty();
        int begin = top;
        while (begin < to && scan.counts(begin) - dark > 0.8 * height) begin++;
        int end = begin;
        while (end < to && scan.counts(end) - dark > 0.2 * height) end++;
        if (end - begin < 2) {
            begin = Math.max(from, begin - 1);
            end = Math.min(scan.channels() - 1, end + 1);
        }
        if (end - begin < 2) return Optional.empty();
        return straight(scan, begin, end, dark, work)
                .map(cutoff -> cutoff.times(-1).plus(hv));
    }

    private static Optional<Estimate> straight(BindingScan scan, int begin, int end, double dark, Work work) {
        double origin = scan.energy(begin);
        double[] x = java.util.Arrays.copyOfRange(scan.energies(), begin, end + 1);
        double[] y = java.util.Arrays.copyOfRange(scan.counts(), begin, end + 1);
        PeakModel model = PeakModel.on(x).polynomialBackground(1, origin);
        Weighting weighting = scan.countsKnown() ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        FitResult fit = Fit.solve(
                FitProblem.of(
                        model,
                        y,
                        weighting,
                        java.util.List.of(Parameter.free("background.0", y[0]), Parameter.free("background.1", -1))),
                FitSettings.DEFAULT,
                work);
        if (!fit.converged() || !(fit.value(1) < 0)) return Optional.empty();
        Estimate crossing = fit.estimate(p -> (dark - p[0]) / p[1], "cutoff " + scan.label());
        return Optional.of(crossing.plus(origin));
    }
}
