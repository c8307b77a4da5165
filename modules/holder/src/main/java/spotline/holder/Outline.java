package spotline.holder;

import java.util.List;

/** The outline of a specimen or of a part of its mount about its centre, before it is rotated. */
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

    /** @param corners in order around the area, mm from the centre */
    record Polygon(List<PointMm> corners) implements Outline {
        public Polygon {
            corners = List.copyOf(corners);
            if (corners.size() < 3) {
                throw new IllegalArgumentException("a polygon needs 3 corners or more, had " + corners.size());
            }
        }

        @Override
        public double width() {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (PointMm corner : corners) {
                low = Math.min(low, corner.x());
                high = Math.max(high, corner.x());
            }
            return high - low;
        }

        @Override
        public double height() {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (PointMm corner : corners) {
                low = Math.min(low, corner.y());
                high = Math.max(high, corner.y());
            }
            return high - low;
        }
    }

    private static void checkSize(double width, double height) {
        if (!(width > 0) || !(height > 0) || Double.isInfinite(width) || Double.isInfinite(height)) {
            throw new IllegalArgumentException("an outline must be above 0 mm, was " + width + " x " + height);
        }
    }
}
