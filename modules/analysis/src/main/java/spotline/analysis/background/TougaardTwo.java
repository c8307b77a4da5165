package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Background from the two-parameter universal loss cross section {@code K(T) = B T / (C + T^2)^2}, T the energy lost.
 *
 * <p>What lies above the level of the low end is taken to have lost energy: {@code B(E) = low + sum of K(T) (y(E - T) -
 * low) dT}. The window should begin before the line and reach tens of eV behind it. Source: S. Tougaard, Surf. Interface
 * Anal. 11 (1988) 453.
 *
 * @param b parameter B, eV^2; empty: adjusted so that nothing is left at the high end
 * @param c parameter C, eV^2
 */
public record TougaardTwo(int endpointChannels, EndpointPlacement placement, OptionalDouble b, double c)
        implements Background {
    /** eV^2; Tougaard 1988, quoted from memory. */
    private static final double UNIVERSAL_C = 1643;

    public TougaardTwo {
        requireNonNull(placement, "placement");
        requireNonNull(b, "b");
        Problems.throwIfAny(check(endpointChannels, b, c));
    }

    /** The universal cross section, its B adjusted to the data. */
    public static TougaardTwo universal(int endpointChannels) {
        return new TougaardTwo(endpointChannels, EndpointPlacement.INSIDE, OptionalDouble.empty(), UNIVERSAL_C);
    }

    public static List<Problem> check(int endpointChannels, OptionalDouble b, double c) {
        List<Problem> problems = Endpoints.check(endpointChannels);
        LossBackground.checkAboveZero("b", b.orElse(1), problems);
        LossBackground.checkAboveZero("c", c, problems);
        return problems;
    }

    /** Cross section for an energy loss, per eV. */
    public static double crossSection(double b, double c, double lossEv) {
        if (lossEv <= 0) return 0;
        double denominator = c + lossEv * lossEv;
        return b * lossEv / (denominator * denominator);
    }

    /**
     * What a primary spectrum becomes when its electrons lose energy any number of times.
     *
     * <p>Shape: n channels in, n out. Units: those of {@code primary}. Errors: {@link IllegalArgumentException} unless
     * there is a value an energy.
     *
     * @param energy binding energy, rising, eV
     */
    public static double[] spectrumOf(double[] energy, double[] primary, double b, double c) {
        return LossBackground.scatter(energy, primary, loss -> crossSection(b, c, loss));
    }

    @Override
    public String describe() {
        return Endpoints.describe("two-parameter Tougaard" + LossBackground.words(b), endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        LossConvolution perB = FittedLosses.convolution(energy, loss -> crossSection(1, c, loss));
        // An integral of 1: each electron loses energy about once a mean free path.
        return Optional.of(new FittedLosses(perB, b, 2 * c, endpointChannels));
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(
                this,
                scan,
                window,
                key,
                3,
                region -> LossBackground.subtract(region, loss -> crossSection(1, c, loss), b, work));
    }
}
