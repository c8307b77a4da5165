package spotline.formats.iso14976;

/** A choice that the standard spells out. */
interface Word {
    /** The standard's spelling. */
    String word();
}
