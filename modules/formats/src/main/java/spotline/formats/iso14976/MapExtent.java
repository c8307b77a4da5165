package spotline.formats.iso14976;

/** Item 10 of the header: number of analysis positions, and of discrete coordinates in the full map. */
public record MapExtent(Real analysisPositions, Real xCoordinates, Real yCoordinates) {
    static final MapExtent UNKNOWN = new MapExtent(Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);
}
