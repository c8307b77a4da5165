package spotline.holder;

/** How a sample conducts. */
public enum Conductivity implements Word {
    CONDUCTOR,
    SEMICONDUCTOR,
    INSULATOR,
    MIXED,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
