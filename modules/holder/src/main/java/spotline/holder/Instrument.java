package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the spectra of a holder were measured.
 *
 * @param name in the lab's own words
 * @param analysisArea widths at normal emission, mm
 * @param positionUncertaintyMm standard uncertainty of a spot's position, mm
 * @param emissionAngleDeg between surface normal and analyser axis, degrees
 * @param sourceAnalyserAngleDeg between X-ray direction and analyser axis, degrees
 * @param energyCalibration file of the calibration record that the energy scale is corrected by, relative to the holder-run
 *     file
 * @param conditions what else was set
 */
public record Instrument(
        Optional<String> name,
        DeclaredExcitation excitation,
        Optional<AreaMm> analysisArea,
        OptionalDouble positionUncertaintyMm,
        OptionalDouble emissionAngleDeg,
        OptionalDouble sourceAnalyserAngleDeg,
        NeutraliserState chargeNeutraliser,
        DeclaredTransmission transmission,
        Optional<String> energyCalibration,
        MeasuringConditions conditions) {
    public static final Instrument UNKNOWN = new Instrument(
            Optional.empty(),
            DeclaredExcitation.UNKNOWN,
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            NeutraliserState.UNKNOWN,
            new DeclaredTransmission.Unknown(),
            Optional.empty(),
            MeasuringConditions.UNKNOWN);

    public Instrument {
        requireNonNull(name, "name");
        requireNonNull(excitation, "excitation");
        requireNonNull(chargeNeutraliser, "chargeNeutraliser");
        requireNonNull(transmission, "transmission");
        requireNonNull(energyCalibration, "energyCalibration");
        requireNonNull(conditions, "conditions");
    }

    /**
     * What the record says excited the electrons.
     *
     * @param photonEnergyEv as declared, eV; where empty the source's own energy applies
     */
    public record DeclaredExcitation(
            ExcitationSource source, OptionalDouble photonEnergyEv, Optional<Boolean> monochromated) {
        public static final DeclaredExcitation UNKNOWN =
                new DeclaredExcitation(ExcitationSource.UNKNOWN, OptionalDouble.empty(), Optional.empty());

        public DeclaredExcitation {
            requireNonNull(source, "source");
            if (photonEnergyEv.isPresent() && !(photonEnergyEv.getAsDouble() > 0)) {
                throw new IllegalArgumentException(
                        "photon energy must be above 0 eV, was " + photonEnergyEv.getAsDouble());
            }
        }
    }
}
