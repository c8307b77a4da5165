package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.AnalysisFootprint;
import spotline.holder.HolderPlan;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Spot;
import spotline.holder.check.Layout.Kept;
import spotline.holder.check.Layout.Part;
import spotline.holder.check.Layout.Piece;

/**
 * Room around a spot's analysis area: distance to the nearest edge, clip, neighbour or keep-out area, less half the
 * area's width in that direction and some standard uncertainties of the position. Source: geometry.
 */
final class ClearanceChecks {
    /** The nearest thing so far and the gap to it, mm; below 0 the area reaches so far over it. */
    private record Nearest(double gap, String thing) {
        Nearest or(double otherGap, String otherThing) {
            return otherGap < gap - Reach.ROUNDING_MM ? new Nearest(otherGap, otherThing) : this;
        }
    }

    private final Layout layout;
    private final PlanCheckSettings settings;

    private ClearanceChecks(Layout layout, PlanCheckSettings settings) {
        this.layout = layout;
        this.settings = settings;
    }

    static List<Finding> findings(Layout layout, PlanCheckSettings settings) {
        ClearanceChecks checks = new ClearanceChecks(layout, settings);
        List<Finding> findings = new ArrayList<>();
        for (Spot spot : layout.plan().spots()) {
            Optional<AnalysisFootprint> area = AnalysisFootprint.of(layout.plan(), spot);
            if (area.isEmpty() || checks.toldElsewhere(spot)) continue;
            Optional<Finding> finding = checks.finding(spot, area.get());
            if (finding.isPresent()) findings.add(finding.get());
        }
        return findings;
    }

    /** A spot beside its specimen, or beside the holder, is told as that. */
    private boolean toldElsewhere(Spot spot) {
        Optional<Polygon> ground = layout.footprint(spot.specimen()).or(layout::outline);
        if (ground.isEmpty()) return false;
        PointMm at = spot.position().orElseThrow();
        return Polygons.toArea(new Coordinate(at.x(), at.y()), ground.get()) > Reach.ROUNDING_MM;
    }

    private Optional<Finding> finding(Spot spot, AnalysisFootprint area) {
        PlanCheckSettings.Clearance limits = settings.clearance();
        double kept = limits.uncertaintyFactor() * uncertaintyMm(layout.plan(), spot, limits);
        Nearest nearest = nearest(spot, area, limits.cautionMm() + kept);
        double clear = nearest.gap() - kept;
        if (clear >= limits.cautionMm() - Reach.ROUNDING_MM) return Optional.empty();
        String end = ", with " + Decimal.significant(kept, 2) + " mm kept free for the position" + inclined(area) + ".";
        if (clear < limits.stopMm() - Reach.ROUNDING_MM) {
            String text = clear < 0
                    ? "The analysis area of spot " + spot.id() + " may reach " + Reach.millimetres(-clear) + " over "
                            + nearest.thing()
                    : "Only " + Reach.millimetres(clear) + " left between the analysis area of spot " + spot.id()
                            + " and " + nearest.thing();
            return Optional.of(Named.finding(spot, PlanRule.NO_CLEARANCE, text + end));
        }
        return Optional.of(Named.finding(
                spot,
                PlanRule.SMALL_CLEARANCE,
                "Spot " + spot.id() + " has " + Reach.millimetres(Math.max(0, clear))
                        + " left between the analysis area and " + nearest.thing() + end + " "
                        + Decimal.significant(limits.cautionMm(), 2) + " mm are asked for."));
    }

    private static double uncertaintyMm(HolderPlan plan, Spot spot, PlanCheckSettings.Clearance limits) {
        if (spot.positionUncertaintyMm().isPresent())
            return spot.positionUncertaintyMm().getAsDouble();
        return plan.file().instrument().positionUncertaintyMm().orElse(limits.positionUncertaintyMm());
    }

    private static String inclined(AnalysisFootprint area) {
        if (area.inclinationDeg() < 0.05) return "";
        return " and the area " + Decimal.significant(area.widthMm(), 3) + " x "
                + Decimal.significant(area.heightMm(), 3) + " mm wide at "
                + Decimal.significant(area.inclinationDeg(), 3) + " degrees";
    }

    /** @param enough what lies farther away than this from the area is not looked at, mm */
    private Nearest nearest(Spot spot, AnalysisFootprint area, double enough) {
        Coordinate[] corners = Polygons.ring(Shapes.polygon(area.corners()));
        Coordinate centre = new Coordinate(area.centre().x(), area.centre().y());
        double reach = enough + Math.max(area.widthMm(), area.heightMm());
        Nearest nearest = new Nearest(Double.POSITIVE_INFINITY, "");
        Optional<Polygon> own = layout.footprint(spot.specimen());
        if (own.isPresent()) {
            nearest = inside(
                    nearest,
                    corners,
                    centre,
                    own.get(),
                    "the edge of " + spot.specimen().label(),
                    reach);
        } else if (layout.outline().isPresent()) {
            nearest = inside(nearest, corners, centre, layout.outline().get(), "the edge of the holder", reach);
        }
        for (Part part : layout.parts()) {
            boolean onOwn = part.specimen().id().equals(spot.specimen().id());
            if (part.onTop()) {
                String whose = onOwn ? "" : " of " + part.specimen().label();
                nearest = beside(nearest, corners, centre, part.shape(), "the " + part.label() + whose, reach);
            } else if (onOwn && Powders.onTape(spot.specimen())) {
                nearest = inside(nearest, corners, centre, part.shape(), "the edge of the tape patch", reach);
            } else if (!onOwn && own.isEmpty()) {
                String tape = "the tape patch of " + part.specimen().label();
                nearest = beside(nearest, corners, centre, part.shape(), tape, reach);
            }
        }
        for (Piece piece : layout.pieces()) {
            if (piece.specimen().id().equals(spot.specimen().id())) continue;
            // Two pieces that overlap are told as that, and may be one piece declared twice.
            if (own.isPresent() && Polygons.shared(own.get(), piece.shape()) > Polygons.ROUNDING_MM2) continue;
            nearest = beside(
                    nearest, corners, centre, piece.shape(), piece.specimen().label(), reach);
        }
        for (Kept free : layout.kept()) {
            nearest = beside(nearest, corners, centre, free.shape(), "the " + free.name(), reach);
        }
        return nearest;
    }

    /** The area must stay on what the shape covers. */
    private static Nearest inside(
            Nearest nearest, Coordinate[] area, Coordinate centre, Polygon shape, String thing, double reach) {
        boolean on = Polygons.covers(shape, centre);
        if (on && Polygons.toEdge(centre, shape) > reach) return nearest;
        Coordinate[] ring = Polygons.ring(shape);
        double over = 0;
        for (Coordinate corner : area) {
            if (!Polygons.covers(shape, corner)) over = Math.max(over, Distance.pointToSegmentString(corner, ring));
        }
        return nearest.or(over > 0 ? -over : between(area, ring), thing);
    }

    /** The area must stay off what the shape covers. */
    private static Nearest beside(
            Nearest nearest, Coordinate[] area, Coordinate centre, Polygon shape, String thing, double reach) {
        if (Polygons.farther(centre, shape, reach)) return nearest;
        Coordinate[] ring = Polygons.ring(shape);
        double over = 0;
        for (Coordinate corner : area) {
            if (Polygons.covers(shape, corner)) over = Math.max(over, Distance.pointToSegmentString(corner, ring));
        }
        Polygon whole = shape.getFactory().createPolygon(area);
        for (Coordinate corner : ring) {
            if (Polygons.covers(whole, corner)) over = Math.max(over, Distance.pointToSegmentString(corner, area));
        }
        return nearest.or(over > 0 ? -over : between(area, ring), thing);
    }

    /** Two rings that do not cross are nearest at a corner of one of them. */
    private static double between(Coordinate[] a, Coordinate[] b) {
        double least = Double.POSITIVE_INFINITY;
        for (Coordinate corner : a) least = Math.min(least, Distance.pointToSegmentString(corner, b));
        for (Coordinate corner : b) least = Math.min(least, Distance.pointToSegmentString(corner, a));
        return least;
    }
}
