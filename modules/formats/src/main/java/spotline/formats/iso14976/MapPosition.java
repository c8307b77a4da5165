package spotline.formats.iso14976;

/** Item 10: discrete coordinates of the block in the full map, counted from 1. */
public record MapPosition(Real x, Real y) {
    static final MapPosition UNKNOWN = new MapPosition(Real.UNKNOWN, Real.UNKNOWN);
}
