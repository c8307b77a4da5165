package spotline.holder;

/** What a spectrum was measured for. */
public enum SpectrumRole implements Word {
    MAIN,
    REPEAT,
    LAST,
    BLANK,
    ETCH,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
