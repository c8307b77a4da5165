package spotline.numerics.shape;

/**
 * One parameter of a line shape.
 *
 * @param name as in a fit model
 * @param unit {@code eV}, {@code counts eV} (ordinate times abscissa) or {@code 1}
 * @param lowest smallest value the shape is defined for
 * @param highest largest value the shape is defined for
 */
public record ShapeParameter(String name, String unit, double lowest, double highest) {
    static final double UNBOUNDED = Double.POSITIVE_INFINITY;

    static ShapeParameter position() {
        return new ShapeParameter("position", "eV", -UNBOUNDED, UNBOUNDED);
    }

    static ShapeParameter area() {
        return new ShapeParameter("area", "counts eV", -UNBOUNDED, UNBOUNDED);
    }

    static ShapeParameter width(String name) {
        return new ShapeParameter(name, "eV", 0, UNBOUNDED);
    }

    static ShapeParameter share(String name, double highest) {
        return new ShapeParameter(name, "1", 0, highest);
    }
}
