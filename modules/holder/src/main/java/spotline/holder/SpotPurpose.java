package spotline.holder;

/** What a spot is measured for. */
public enum SpotPurpose implements Word {
    /** The sample itself. */
    SAMPLE,
    /** The mount alone: tape, slip, foil or the bare holder. */
    BLANK,
    /** A material of known surface that comes along. */
    CONTROL
}
