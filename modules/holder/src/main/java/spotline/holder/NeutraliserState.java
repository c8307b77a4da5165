package spotline.holder;

/** Whether the charge neutraliser was on. */
public enum NeutraliserState implements Word {
    ON,
    OFF,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
