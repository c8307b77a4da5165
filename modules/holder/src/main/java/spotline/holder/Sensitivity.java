package spotline.holder;

/** What changes a sample before or while it is measured. */
public enum Sensitivity implements Word {
    AIR,
    MOISTURE,
    HEAT,
    LIGHT,
    VACUUM,
    X_RAYS,
    ELECTRONS,
    IONS
}
