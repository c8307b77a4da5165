package spotline.reference;

/**
 * A characteristic X-ray line that excites a spectrum.
 *
 * @param name "Al Ka"
 * @param monochromated whether the values are those behind a monochromator
 * @param photonEnergyEv eV
 * @param naturalWidthEv FWHM, eV; behind a monochromator typical and instrument dependent
 */
public record XraySource(
        String name, boolean monochromated, double photonEnergyEv, double naturalWidthEv, String note, String source) {}
