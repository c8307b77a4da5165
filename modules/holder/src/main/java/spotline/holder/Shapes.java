package spotline.holder;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Outlines as geometry in the holder's coordinates, mm. */
public final class Shapes {
    /** Corners of the polygon that stands for an ellipse: it is inside by at most 0.0003 of the half axis. */
    private static final int ELLIPSE_CORNERS = 128;

    private Shapes() {}

    /** Errors: {@link IllegalArgumentException} with fewer than 3 corners. */
    public static Polygon polygon(List<PointMm> corners) {
        if (corners.size() < 3) {
            throw new IllegalArgumentException("a polygon needs 3 corners or more, had " + corners.size());
        }
        return ring(corners.stream().map(Shapes::coordinate).toList());
    }

    public static Point point(PointMm point) {
        return new GeometryFactory().createPoint(coordinate(point));
    }

    /** What a specimen covers of the holder; empty when its outline or its centre is not known. */
    public static Optional<Polygon> footprint(Specimen specimen) {
        if (specimen.outline().isEmpty() || specimen.centre().isEmpty()) return Optional.empty();
        PointMm centre = specimen.centre().get();
        Polygon about0 = aboutOrigin(specimen.outline().get());
        AffineTransformation place = AffineTransformation.rotationInstance(Math.toRadians(specimen.rotationDeg()))
                .translate(centre.x(), centre.y());
        return Optional.of((Polygon) place.transform(about0));
    }

    private static Polygon aboutOrigin(Outline outline) {
        double a = outline.width() / 2;
        double b = outline.height() / 2;
        if (outline instanceof Outline.Rectangle) {
            return ring(List.of(
                    new Coordinate(-a, -b), new Coordinate(a, -b), new Coordinate(a, b), new Coordinate(-a, b)));
        }
        return ring(Stream.iterate(0, i -> i < ELLIPSE_CORNERS, i -> i + 1)
                .map(i -> 2 * Math.PI * i / ELLIPSE_CORNERS)
                .map(angle -> new Coordinate(a * Math.cos(angle), b * Math.sin(angle)))
                .toList());
    }

    private static Polygon ring(List<Coordinate> corners) {
        Coordinate[] closed = Stream.concat(
                        corners.stream(), Stream.of(corners.get(0).copy()))
                .toArray(Coordinate[]::new);
        return new GeometryFactory().createPolygon(closed);
    }

    private static Coordinate coordinate(PointMm point) {
        return new Coordinate(point.x(), point.y());
    }
}
