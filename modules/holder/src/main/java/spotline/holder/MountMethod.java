package spotline.holder;

/** How a specimen is fixed to the holder. */
public enum MountMethod implements Word {
    METAL_CLIP,
    CARBON_TAPE,
    ADHESIVE_TAPE,
    POWDER_ON_TAPE,
    COVER_SLIP,
    PRESSED_IN_FOIL,
    PELLET,
    STUB,
    SCREWED,
    OTHER,
    /** Not known: left out of the record, or said to be unknown. */
    UNKNOWN
}
