package spotline.holder;

/** What a sample is physically. */
public enum SampleForm implements Word {
    POWDER,
    SOLID,
    FOIL,
    FILM,
    WAFER,
    FIBRE,
    LIQUID_RESIDUE,
    OTHER,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
