package spotline.holder;

/** Whether a specimen as a whole has a conduction path to the holder. */
public enum ElectricalState implements Word {
    GROUNDED,
    ISOLATED,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
