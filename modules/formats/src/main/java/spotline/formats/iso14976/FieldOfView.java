package spotline.formats.iso14976;

/** Item 17: field of view, micrometre. */
public record FieldOfView(Real x, Real y) {
    static final FieldOfView UNKNOWN = new FieldOfView(Real.UNKNOWN, Real.UNKNOWN);
}
