package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Background from the three-parameter loss cross section {@code K(T) = B T / ((C - T^2)^2 + D T^2)} above a gap, for
 * materials with a narrow plasmon; otherwise as {@link TougaardTwo}. Source: S. Tougaard, Surf. Interface Anal. 25 (1997)
 * 137.
 *
 * @param b parameter B, eV^2; empty: adjusted so that nothing is left at the high end
 * @param c parameter C, eV^2, about the square of the plasmon energy
 * @param d parameter D, eV^2
 * @param gapEv smallest loss that happens, eV; 0 without a gap
 */
public record TougaardThree(
        int endpointChannels, EndpointPlacement placement, OptionalDouble b, double c, double d, double gapEv)
        implements Background {
    public TougaardThree {
        requireNonNull(placement, "placement");
        requireNonNull(b, "b");
        Problems.throwIfAny(check(endpointChannels, b, c, d, gapEv));
    }

    public static List<Problem> check(int endpointChannels, OptionalDouble b, double c, double d, double gapEv) {
        List<Problem> problems = Endpoints.check(endpointChannels);
        LossBackground.checkAboveZero("b", b.orElse(1), problems);
        LossBackground.checkAboveZero("c", c, problems);
        LossBackground.checkAboveZero("d", d, problems);
        if (!(gapEv >= 0 && Double.isFinite(gapEv))) {
            problems.add(new Problem("gapEv", gapEv + " eV", "0 eV or more"));
        }
        return problems;
    }

    /** Cross section for an energy loss, per eV. */
    public static double crossSection(double b, double c, double d, double gapEv, double lossEv) {
        if (lossEv <= gapEv) return 0;
        double square = lossEv * lossEv;
        return b * lossEv / ((c - square) * (c - square) + d * square);
    }

    /** As {@link TougaardTwo#spectrumOf}. */
    public static double[] spectrumOf(double[] energy, double[] primary, double b, double c, double d, double gapEv) {
        return LossBackground.scatter(energy, primary, loss -> crossSection(b, c, d, gapEv, loss));
    }

    @Override
    public String describe() {
        String gap = gapEv > 0 ? ", gap " + Decimal.significant(gapEv, 4) + " eV" : "";
        return Endpoints.describe(
                "three-parameter Tougaard" + LossBackground.words(b) + gap, endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        LossConvolution perB = FittedLosses.convolution(energy, loss -> crossSection(1, c, d, gapEv, loss));
        // About an integral of 1: each electron loses energy about once a mean free path.
        return Optional.of(new FittedLosses(perB, b, 2 * Math.sqrt(c * d) / Math.PI, endpointChannels));
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(
                this,
                scan,
                window,
                key,
                3,
                region -> LossBackground.subtract(region, loss -> crossSection(1, c, d, gapEv, loss), b, work));
    }
}
