package spotline.analysis.quantify;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.reference.Angular;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Relative sensitivity factors from theory: cross section x angular factor x mean free path.
 *
 * <p>Units: relative to a cross section of 1 (C 1s at the same photon energy) at 1000 eV kinetic energy. Made for the
 * whole zero-loss area of a line, shake-up included, above an iterative Shirley background in a narrow window; the
 * transmission is divided out of the intensity beforehand and is not in the factor. The default pair of background and
 * factors is this one.
 *
 * <p>Errors: empty where no cross section is tabulated.
 *
 * <p>Source: ISO 18118, theoretical relative sensitivity factors; cross sections EPDL2017; angular factor Reilman,
 * Msezane and Manson (1976); mean free path as a power of the kinetic energy, common practice.
 */
public final class TheoreticalFactors {
    public static final String NAME =
            "theoretical: EPDL2017 cross section x angular factor x mean free path as a power of kinetic energy";

    private final ReferenceData reference;
    private final FactorSettings settings;

    public TheoreticalFactors(ReferenceData reference, FactorSettings settings) {
        this.reference = reference;
        this.settings = settings;
    }

    /**
     * @param photonEnergyEv eV
     * @param kineticEv kinetic energy of the line, eV
     * @param gammaDeg angle between source and analyser, degree; empty takes the settings' own
     */
    public Optional<Estimate> factor(Line line, double photonEnergyEv, double kineticEv, OptionalDouble gammaDeg) {
        OptionalDouble sigma = reference.crossSection(line, photonEnergyEv);
        if (sigma.isEmpty() || !(kineticEv > 0)) return Optional.empty();
        double gamma = gammaDeg.orElse(settings.sourceAnalyserAngleDeg());
        OptionalDouble beta = reference.asymmetry(line, photonEnergyEv);
        double angular = beta.isPresent() ? Angular.factor(beta.getAsDouble(), gamma) : 1;
        double relativeEnergy = kineticEv / 1000;
        double value = sigma.getAsDouble() * angular * Math.pow(relativeEnergy, settings.meanFreePathExponent());
        double logEnergy = Math.log(relativeEnergy);
        return Optional.of(Estimate.exact(value)
                .with("factor/cross section " + line, value * settings.crossSectionRelativeU())
                .with("factor/mean free path exponent", value * logEnergy * settings.meanFreePathExponentU())
                .with("factor/transmission exponent", value * logEnergy * settings.transmissionExponentU()));
    }
}
