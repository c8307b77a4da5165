package spotline.analysis.intensity;

import java.util.Arrays;
import java.util.OptionalDouble;
import spotline.analysis.background.Background;
import spotline.analysis.background.Linear;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * How much of a line's area a window loses to the line's own Lorentzian tails: what lies outside it, and what the
 * background takes away because its ends stand on them.
 *
 * <p>The line is taken as a Voigt line of its natural width, as wide as it was measured, with its doublet partner; a
 * straight background between the window's ends takes from it what the chosen one would. A C 1s line loses 1 %, a Ti 2p
 * doublet 8 % in a window of the same number of widths.
 *
 * <p>Shape: one factor, whole area over area in the window, 1 or more. Units: none. Errors: 1 exactly where the natural
 * width is not known.
 *
 * <p>Source: derived; width of a Voigt line after J.J. Olivero and R.L. Longbothum, J. Quant. Spectrosc. Radiat. Transfer
 * 17 (1977) 233. Uncertainty: natural widths of different tables differ by about 30 % (common practice, no source).
 */
final class LorentzianTails {
    private static final double RELATIVE_U = 0.3;
    private static final double COUNTS = 1e6;

    private LorentzianTails() {}

    static Estimate wholePerWindow(
            BindingScan scan, Window window, Background background, LineTarget target, double peakEv, double fwhmEv) {
        if (target.widths().isEmpty()) return Estimate.exact(1);
        LineTarget.Widths widths = target.widths().get();
        BindingScan model = model(scan, widths, target.splittingEv(), peakEv, fwhmEv);
        return new Linear(background.endpointChannels(), background.placement())
                .subtract(model, window, "model", Work.UNWATCHED)
                .result()
                .map(s -> COUNTS * (1 + widths.partnerRatio()) / s.netArea().value())
                .filter(factor -> factor >= 1 && factor < 2)
                .map(factor -> Estimate.of(factor, "tails/" + target.line(), RELATIVE_U * (factor - 1)))
                .orElse(Estimate.exact(1));
    }

    private static BindingScan model(
            BindingScan scan, LineTarget.Widths widths, double splittingEv, double peakEv, double fwhmEv) {
        double[] energy = scan.energies();
        double[] sum = voigt(energy, peakEv, COUNTS, widths.firstEv(), fwhmEv);
        if (widths.partnerRatio() > 0) {
            double broadened = fwhmEv + Math.max(0, widths.partnerEv() - widths.firstEv());
            double[] partner =
                    voigt(energy, peakEv + splittingEv, COUNTS * widths.partnerRatio(), widths.partnerEv(), broadened);
            Arrays.setAll(sum, i -> sum[i] + partner[i]);
        }
        return new BindingScan(
                "model", scan.photonEnergyEv(), energy, sum, true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static double[] voigt(double[] energy, double at, double area, double lorentzFwhm, double fwhmEv) {
        double lorentz = Math.min(lorentzFwhm, fwhmEv);
        double rest = fwhmEv - 0.5346 * lorentz;
        double gauss = Math.sqrt(Math.max(0, rest * rest - 0.2166 * lorentz * lorentz));
        double[] values = new double[energy.length];
        new Voigt().evaluate(energy, new double[] {at, area, gauss, lorentz}, values);
        return values;
    }
}
