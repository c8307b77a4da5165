package spotline.demo;

/**
 * How the analyser is set, and what that does to a spectrum.
 *
 * <p>Counts per second and channel are {@code scale * T(KE) * (j + secondary)}, with j the emitted intensity per eV in
 * units of {@code cross section x mean free path x atoms} (relative to C 1s, nm, per nm3).
 *
 * @param passEnergyEv constant pass energy
 * @param gaussianFwhmEv analyser and source together, full width
 * @param transmissionAt1000 T at 1000 eV kinetic energy, relative
 * @param transmissionPower T is proportional to KE to this power
 */
public record AnalyserMode(
        double passEnergyEv, double gaussianFwhmEv, double transmissionAt1000, double transmissionPower) {
    public AnalyserMode {
        if (!(gaussianFwhmEv >= 0.3)) {
            throw new IllegalArgumentException("a width below 0.3 eV is not resolved, was " + gaussianFwhmEv);
        }
        if (!(passEnergyEv > 0) || !(transmissionAt1000 > 0) || !Double.isFinite(transmissionPower)) {
            throw new IllegalArgumentException("pass energy and transmission must be above 0");
        }
    }

    public double transmission(double kineticEv) {
        return transmissionAt1000 * StrictMath.pow(kineticEv / 1000, transmissionPower);
    }
}
