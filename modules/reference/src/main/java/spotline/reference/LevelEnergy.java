package spotline.reference;

/**
 * A binding energy from a table.
 *
 * @param valueEv referred to the Fermi level of the solid, eV
 * @param spreadEv how far it may be trusted, eV: the half range over which laboratories report the value, or how far the
 *     tables of solid-state levels lie apart; no standard uncertainty
 * @param source where the value comes from, one line
 */
public record LevelEnergy(double valueEv, double spreadEv, String source) {}
