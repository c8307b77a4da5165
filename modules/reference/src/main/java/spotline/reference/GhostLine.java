package spotline.reference;

/**
 * A stray X-ray line that repeats strong peaks elsewhere on the binding-energy scale.
 *
 * @param contaminant emission line: "O Ka"
 * @param photonEnergyEv of the stray line, eV
 * @param apparentShiftEv towards higher apparent binding energy, eV: photon energy in use less the stray one
 * @param cause what makes it
 */
public record GhostLine(String contaminant, double photonEnergyEv, double apparentShiftEv, String cause) {}
