package spotline.holder.check;

import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.RayCrossingCounter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Questions about polygons without holes, answered by looking first at what is cheap: most things on a holder are far
 * from each other, and the whole of the overlay machinery takes long to start.
 */
final class Polygons {
    /** Shared area below this is rounding, mm2. */
    static final double ROUNDING_MM2 = 1e-6;

    private Polygons() {}

    static boolean covers(Polygon area, Coordinate point) {
        if (!area.getEnvelopeInternal().covers(point)) return false;
        return RayCrossingCounter.locatePointInRing(point, ring(area)) != Location.EXTERIOR;
    }

    static boolean covers(Polygon area, Polygon shape) {
        Envelope extent = area.getEnvelopeInternal();
        if (!extent.covers(shape.getEnvelopeInternal())) return false;
        return area.isRectangle() || area.covers(shape);
    }

    /** Area that two polygons share, mm2. */
    static double shared(Polygon a, Polygon b) {
        if (!a.getEnvelopeInternal().intersects(b.getEnvelopeInternal())) return 0;
        return OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION).getArea();
    }

    /** Distance of a point from a polygon's boundary, inside or outside, mm. */
    static double toEdge(Coordinate point, Polygon area) {
        return Distance.pointToSegmentString(point, ring(area));
    }

    /** Distance of a point from what a polygon covers, mm; 0 on it. */
    static double toArea(Coordinate point, Polygon area) {
        return covers(area, point) ? 0 : toEdge(point, area);
    }

    /** Whether a point is farther than this from what a polygon covers, mm. */
    static boolean farther(Coordinate point, Polygon area, double reach) {
        Envelope near = new Envelope(area.getEnvelopeInternal());
        near.expandBy(reach);
        return !near.covers(point) || toArea(point, area) > reach;
    }

    /** Least distance between two polygons, mm; 0 where they touch or overlap. */
    static double gap(Polygon a, Polygon b) {
        return a.distance(b);
    }

    static Coordinate[] ring(Polygon area) {
        return area.getExteriorRing().getCoordinates();
    }
}
