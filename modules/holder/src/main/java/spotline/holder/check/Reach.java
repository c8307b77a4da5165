package spotline.holder.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import spotline.core.Decimal;

/**
 * How far one part of a shape reaches beyond an area, and to which side.
 *
 * @param distanceMm greatest distance of the part from the area, mm
 * @param side {@code +x}, {@code -x}, {@code +y} or {@code -y}
 */
record Reach(double distanceMm, String side) {
    /** Edges are looked at this often, since beyond a dented area the farthest place need not be a corner. */
    private static final double STEP_MM = 0.25;

    /** So many steps around a part at most, however large it is. */
    private static final int MOST_STEPS = 400;

    /** Below this it is rounding, not overhang. */
    static final double ROUNDING_MM = 1e-6;

    /** The parts of a shape beyond an area by more than a limit, the farthest first. */
    static List<Reach> beyond(Geometry shape, Geometry area, double limitMm) {
        if (area.covers(shape)) return List.of();
        Geometry rest = OverlayNGRobust.overlay(shape, area, OverlayNG.DIFFERENCE);
        List<Reach> parts = new ArrayList<>();
        for (int i = 0; i < rest.getNumGeometries(); i++) {
            Reach part = farthest(rest.getGeometryN(i), area);
            if (part.distanceMm() > limitMm + ROUNDING_MM) parts.add(part);
        }
        // Two parts that reach equally far but for rounding stand in the order of their sides.
        parts.sort(Comparator.comparingDouble((Reach part) -> -Math.rint(part.distanceMm() / ROUNDING_MM))
                .thenComparing(Reach::side));
        return parts;
    }

    private static Reach farthest(Geometry part, Geometry area) {
        GeometryFactory factory = part.getFactory();
        Reach best = new Reach(0, "+x");
        double step = Math.max(STEP_MM, part.getLength() / MOST_STEPS);
        for (Coordinate corner : Densifier.densify(part, step).getCoordinates()) {
            DistanceOp distance = new DistanceOp(area, factory.createPoint(corner));
            if (distance.distance() > best.distanceMm()) {
                Coordinate from = distance.nearestPoints()[0];
                best = new Reach(distance.distance(), sideOf(corner.x - from.x, corner.y - from.y));
            }
        }
        return best;
    }

    private static String sideOf(double dx, double dy) {
        if (Math.abs(dx) >= Math.abs(dy)) return dx >= 0 ? "+x" : "-x";
        return dy >= 0 ? "+y" : "-y";
    }

    static String text(List<Reach> parts) {
        return parts.stream()
                .map(part -> "by " + millimetres(part.distanceMm()) + " on the " + part.side() + " side")
                .collect(Collectors.joining(" and "));
    }

    /** One decimal, or one digit where that would be 0. */
    static String millimetres(double value) {
        boolean small = value != 0 && Math.abs(value) < 0.05;
        return (small ? Decimal.significant(value, 1) : Decimal.fixed(value, 1)) + " mm";
    }
}
