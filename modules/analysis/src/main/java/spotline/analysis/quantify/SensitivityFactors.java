package spotline.analysis.quantify;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.reference.Line;

/** Relative sensitivity factors of lines. Atomic fractions go as intensity over factor; only ratios of factors count. */
public sealed interface SensitivityFactors permits TheoreticalFactors, ListedFactors {
    FactorSet set();

    /**
     * The factor of a whole line or of one member of a doublet; empty where the set has none.
     *
     * @param photonEnergyEv eV
     * @param kineticEv kinetic energy of the line, eV
     * @param gammaDeg angle between source and analyser, degree; empty takes the set's own
     */
    Optional<Estimate> factor(Line line, double photonEnergyEv, double kineticEv, OptionalDouble gammaDeg);
}
