package spotline.reference;

/**
 * A reference peak for the calibration of the energy scale.
 *
 * @param line "Au 4f7/2", or an Auger line on the binding-energy scale of the source: "Cu L3VV"
 * @param xraySource "Al Ka"
 * @param bindingEv eV
 * @param informationOnly no calibration value of the standard for this source
 * @param standardUncertaintyEv eV
 */
public record CalibrationEnergy(
        String line,
        String xraySource,
        boolean monochromated,
        double bindingEv,
        boolean informationOnly,
        double standardUncertaintyEv,
        String use,
        String source) {}
