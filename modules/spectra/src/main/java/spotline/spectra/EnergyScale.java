package spotline.spectra;

/** What the values of an axis are. */
public enum EnergyScale {
    BINDING,
    KINETIC,
    /** Not an electron energy: time, pixel, mass, or not said. */
    OTHER
}
