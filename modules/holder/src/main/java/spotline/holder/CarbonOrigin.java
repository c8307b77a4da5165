package spotline.holder;

/** Whether the carbon on a sample came from the air or is what it is made of. */
public enum CarbonOrigin implements Word {
    ADVENTITIOUS,
    OWN,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
