package spotline.holder;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/** Outlines as geometry in the holder's coordinates, mm. */
public final class Shapes {
    /** Corners of the polygon that stands for an ellipse: it is inside by at most 0.0003 of the half axis. */
    private static final int ELLIPSE_CORNERS = 128;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private Shapes() {}

    /** Errors: {@link IllegalArgumentException} with fewer than 3 corners. */
    public static Polygon polygon(List<PointMm> corners) {
        if (corners.size() < 3) {
            throw new IllegalArgumentException("a polygon needs 3 corners or more, had " + corners.size());
        }
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            PointMm corner = corners.get(i % corners.size());
            ring[i] = new Coordinate(corner.x(), corner.y());
        }
        return FACTORY.createPolygon(ring);
    }

    public static Point point(PointMm point) {
        return FACTORY.createPoint(new Coordinate(point.x(), point.y()));
    }

    /** What a specimen covers of the holder; empty when its outline or its centre is not known. */
    public static Optional<Polygon> footprint(Specimen specimen) {
        return placed(specimen.outline(), specimen.centre(), specimen.rotationDeg());
    }

    /** What the tape under a specimen covers of the holder; empty when it is not known. */
    public static Optional<Polygon> tapePatch(Specimen specimen) {
        return placed(specimen.mount().tapePatch(), specimen.centre(), specimen.rotationDeg());
    }

    /** What a part on a specimen covers of the holder; empty when its outline or its centre is not known. */
    public static Optional<Polygon> clip(Clip clip) {
        return placed(clip.outline(), clip.centre(), clip.rotationDeg());
    }

    private static Optional<Polygon> placed(Optional<Outline> outline, Optional<PointMm> centre, double rotationDeg) {
        if (outline.isEmpty() || centre.isEmpty()) return Optional.empty();
        return Optional.of(placed(outline.get(), centre.get(), rotationDeg));
    }

    /** An outline turned about its centre, counter-clockwise, and moved to where its centre lies. */
    public static Polygon placed(Outline outline, PointMm centre, double rotationDeg) {
        Coordinate[] ring = aboutOrigin(outline);
        double angle = Math.toRadians(rotationDeg);
        double cos = rotationDeg == 0 ? 1 : Math.cos(angle);
        double sin = rotationDeg == 0 ? 0 : Math.sin(angle);
        for (Coordinate corner : ring) {
            double x = centre.x() + corner.x * cos - corner.y * sin;
            corner.y = centre.y() + corner.x * sin + corner.y * cos;
            corner.x = x;
        }
        return FACTORY.createPolygon(ring);
    }

    /** A closed ring of corners that nobody else holds. */
    private static Coordinate[] aboutOrigin(Outline outline) {
        double a = outline.width() / 2;
        double b = outline.height() / 2;
        if (outline instanceof Outline.Polygon polygon) {
            return polygon(polygon.corners()).getCoordinates();
        }
        if (outline instanceof Outline.Rectangle) {
            return new Coordinate[] {
                new Coordinate(-a, -b),
                new Coordinate(a, -b),
                new Coordinate(a, b),
                new Coordinate(-a, b),
                new Coordinate(-a, -b)
            };
        }
        Coordinate[] ring = new Coordinate[ELLIPSE_CORNERS + 1];
        for (int i = 0; i <= ELLIPSE_CORNERS; i++) {
            double angle = 2 * Math.PI * (i % ELLIPSE_CORNERS) / ELLIPSE_CORNERS;
            ring[i] = new Coordinate(a * Math.cos(angle), b * Math.sin(angle));
        }
        return ring;
    }
}
