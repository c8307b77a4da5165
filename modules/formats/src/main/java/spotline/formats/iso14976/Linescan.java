package spotline.formats.iso14976;

/** Item 18: where the first linescan of a map starts and ends, and where the last one ends. */
public record Linescan(
        Real firstStartX, Real firstStartY, Real firstFinishX, Real firstFinishY, Real lastFinishX, Real lastFinishY) {
    static final Linescan UNKNOWN =
            new Linescan(Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);
}
