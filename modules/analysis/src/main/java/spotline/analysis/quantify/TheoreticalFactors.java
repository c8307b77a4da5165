package spotline.analysis.quantify;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.FactorSet.BackgroundFamily;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.Material;
import spotline.reference.ReferenceData;

/**
 * Relative sensitivity factors from theory: S = sigma L(gamma, a beta) lambda(E), for any photon energy that has cross
 * sections.
 *
 * <p>Theoretical: lambda is the material's own model, normalised to 1 at 1000 eV; made for the whole zero-loss area of a
 * line, shake-up included, above an iterative Shirley background in a narrow window. This is the default pair of background
 * and factors.
 *
 * <p>Average matrix: every element is taken as if it sat in one matrix of average properties, so that S^Av = sigma
 * L(gamma, a(41) beta) lambda_Av(E), with lambda_Av by TPP-2M of the average matrix (density 6.767 g/cm3, molar mass 137.51
 * g/mol, 4.684 valence electrons, no band gap, Z = 41) and X_i = (I_i / S_i^Av) / sum (I_j / S_j^Av). The atomic density of
 * the average matrix is the same for every line and cancels; the elastic-scattering factor Q, alike within a few per cent
 * for all lines, is taken as 1. Made for Tougaard areas of an intensity-calibrated instrument: with another background the
 * intrinsic losses are counted otherwise than the factor does.
 *
 * <p>Units: relative to a cross section of 1 (C 1s at the same photon energy) at 1000 eV kinetic energy; the transmission
 * is divided out of the intensity beforehand and is not in the factor. Its uncertainty is carried here all the same, as a
 * power of kinetic energy.
 *
 * <p>Errors: empty where no cross section is tabulated.
 *
 * <p>Source: ISO 18118, theoretical and average-matrix relative sensitivity factors; cross sections EPDL2017; average
 * matrix M.P. Seah, I.S. Gilmore, S.J. Spencer, J. Electron Spectrosc. Relat. Phenom. 120 (2001) 93, its numbers from
 * memory.
 */
public final class TheoreticalFactors implements SensitivityFactors {
    /** The set that the documented defaults make. */
    public static final String NAME =
            "theoretical: EPDL2017 cross section x angular factor x mean free path as a power of kinetic energy";

    /** Source: Seah, Gilmore, Spencer 2001, from memory. */
    static final Material AVERAGE_MATRIX = new Material("the average matrix", 6.767, 137.51, 4.684, 0);

    static final double AVERAGE_ATOMIC_NUMBER = 41;

    private final ReferenceData reference;
    private final FactorSettings settings;
    private final MeanFreePathModel meanFreePath;
    private final Anisotropy anisotropy;

    public TheoreticalFactors(ReferenceData reference, FactorSettings settings) {
        this.reference = reference;
        this.settings = settings;
        boolean average = settings.kind() == FactorKind.AVERAGE_MATRIX;
        this.meanFreePath = average ? new MeanFreePathModel.Tpp2m(AVERAGE_MATRIX) : settings.meanFreePath();
        this.anisotropy = average
                ? new Anisotropy(
                        settings.anisotropy().kind(),
                        AVERAGE_ATOMIC_NUMBER,
                        settings.anisotropy().reductionU())
                : settings.anisotropy();
    }

    @Override
    public FactorSet set() {
        boolean average = settings.kind() == FactorKind.AVERAGE_MATRIX;
        return new FactorSet(
                (average ? "average matrix" : "theoretical") + ": EPDL2017 cross section x angular factor ("
                        + anisotropy.kind().word() + ") x mean free path",
                "ISO 18118; EPDL2017",
                settings.kind(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                FactorSet.Transmission.DIVIDED_OUT,
                meanFreePath.describe(),
                average
                        ? List.of(BackgroundFamily.TOUGAARD)
                        : List.of(BackgroundFamily.SHIRLEY, BackgroundFamily.STRAIGHT, BackgroundFamily.TOUGAARD),
                true,
                "every line with a cross section, whole or by one member");
    }

    @Override
    public Optional<Estimate> factor(Line line, double photonEnergyEv, double kineticEv, OptionalDouble gammaDeg) {
        OptionalDouble sigma = reference.crossSection(line, photonEnergyEv);
        if (sigma.isEmpty() || !(kineticEv > 0)) return Optional.empty();
        double gamma = gammaDeg.orElse(settings.sourceAnalyserAngleDeg());
        OptionalDouble beta = reference.asymmetry(line, photonEnergyEv);
        Estimate angular = beta.isPresent() ? anisotropy.factor(beta.getAsDouble(), gamma) : Estimate.exact(1);
        Estimate factor = angular.times(sigma.getAsDouble() * meanFreePath.relative(kineticEv));
        double value = factor.value();
        double logEnergy = Math.log(kineticEv / MeanFreePathModel.REFERENCE_EV);
        return Optional.of(factor.with("factor/cross section " + line, value * settings.crossSectionRelativeU())
                .with("factor/mean free path exponent", value * logEnergy * settings.meanFreePathExponentU())
                .with("factor/transmission exponent", value * logEnergy * settings.transmissionExponentU()));
    }
}
