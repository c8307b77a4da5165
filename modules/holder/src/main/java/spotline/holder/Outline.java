package spotline.holder;

/** The outline of a specimen about its centre, before it is rotated. */
public sealed interface Outline {
    /** Full extent along x, mm. */
    double width();

    /** Full extent along y, mm. */
    double height();

    record Rectangle(double width, double height) implements Outline {
        public Rectangle {
            checkSize(width, height);
        }
    }

    record Ellipse(double width, double height) implements Outline {
        public Ellipse {
            checkSize(width, height);
        }
    }

    private static void checkSize(double width, double height) {
        if (!(width > 0) || !(height > 0) || Double.isInfinite(width) || Double.isInfinite(height)) {
            throw new IllegalArgumentException("an outline must be above 0 mm, was " + width + " x " + height);
        }
    }
}
