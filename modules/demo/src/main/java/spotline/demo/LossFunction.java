package spotline.demo;

/**
 * Probability that an electron loses energy in one inelastic event: the inelastic mean free path times the differential
 * inelastic cross section, {@code lambda K(T)}, per eV of loss T.
 */
@FunctionalInterface
public interface LossFunction {
    /** @param lossEv energy loss T, eV, 0 or more */
    double at(double lossEv);

    /**
     * The universal two-parameter function {@code lambda K(T) = B T / (C + T^2)^2} with B = 2866 eV^2, C = 1643 eV^2.
     *
     * <p>Source: S. Tougaard, Surf. Interface Anal. 11 (1988) 453, from memory.
     */
    LossFunction UNIVERSAL = universal(2866, 1643);

    /** The two-parameter form with its parameters in eV^2. Its integral over all losses is B / (2 C). */
    static LossFunction universal(double b, double c) {
        return lossEv -> b * lossEv / ((c + lossEv * lossEv) * (c + lossEv * lossEv));
    }
}
