package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.HeightWindow;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.holder.check.Layout.Kept;
import spotline.holder.check.Layout.Part;
import spotline.holder.check.Layout.Piece;

/** Checks of where things lie. What has no known outline or position takes part in none of them. */
final class PlacementChecks {
    private final Layout layout;
    private final PlanCheckSettings.Placement settings;
    private final List<Finding> findings = new ArrayList<>();

    private PlacementChecks(Layout layout, PlanCheckSettings.Placement settings) {
        this.layout = layout;
        this.settings = settings;
    }

    static List<Finding> findings(Layout layout, PlanCheckSettings settings) {
        PlacementChecks checks = new PlacementChecks(layout, settings.placement());
        if (layout.holder().isPresent()) {
            HolderTemplate holder = layout.holder().get();
            Polygon outline = layout.outline().orElseThrow();
            checks.edges(holder, outline);
            checks.keepOuts();
            checks.thickness(holder);
            checks.heights(holder);
        }
        checks.spots();
        checks.overlaps();
        checks.clipsOnNeighbours();
        return checks.findings;
    }

    /**
     * A specimen over the edge is beyond the usable area as well; only the graver of the two is told. One within the
     * usable area is within the outline too, since a template's usable area lies on its holder.
     */
    private void edges(HolderTemplate holder, Polygon outline) {
        Polygon usable = holder.usable().isEmpty() ? outline : Shapes.polygon(holder.usable());
        for (Piece piece : layout.pieces()) {
            if (Polygons.covers(usable, piece.shape())) continue;
            Specimen specimen = piece.specimen();
            List<Reach> reaches = Reach.beyond(piece.shape(), outline, settings.overhangLimitMm());
            if (!reaches.isEmpty()) {
                add(specimen, PlanRule.HOLDER_OVERHANG, Named.capital(specimen) + overhangs(reaches));
            } else {
                List<Reach> outside = Reach.beyond(piece.shape(), usable, settings.usableLimitMm());
                if (!outside.isEmpty() && usable != outline) {
                    add(
                            specimen,
                            PlanRule.OUTSIDE_USABLE_AREA,
                            Named.capital(specimen) + " reaches beyond the usable area " + Reach.text(outside) + ".");
                }
            }
        }
        for (Part part : layout.parts()) {
            if (Polygons.covers(usable, part.shape())) continue;
            List<Reach> reaches = Reach.beyond(part.shape(), outline, settings.overhangLimitMm());
            if (!reaches.isEmpty()) {
                add(
                        part.specimen(),
                        PlanRule.HOLDER_OVERHANG,
                        "The " + part.label() + " of " + part.specimen().label() + overhangs(reaches));
            }
        }
    }

    private String overhangs(List<Reach> reaches) {
        String limit = settings.overhangLimitMm() > 0
                ? " The limit is " + Reach.millimetres(settings.overhangLimitMm()) + "."
                : "";
        return " overhangs the holder " + Reach.text(reaches) + "." + limit;
    }

    private void keepOuts() {
        for (Piece piece : layout.pieces()) {
            for (Kept area : layout.kept()) {
                double shared = Polygons.shared(piece.shape(), area.shape());
                if (shared <= settings.overlapLimitMm2() + Polygons.ROUNDING_MM2) continue;
                add(
                        piece.specimen(),
                        PlanRule.KEEP_OUT,
                        Named.capital(piece.specimen()) + " covers " + squareMillimetres(shared)
                                + " of the area kept free for the " + area.name() + ".");
            }
        }
    }

    private void thickness(HolderTemplate holder) {
        if (holder.maxThicknessMm().isEmpty()) return;
        double limit = holder.maxThicknessMm().getAsDouble();
        for (Specimen specimen : layout.plan().specimens()) {
            double thickness = specimen.thicknessMm().orElse(0);
            if (thickness <= limit + Reach.ROUNDING_MM) continue;
            add(
                    specimen,
                    PlanRule.SPECIMEN_THICKNESS,
                    Named.capital(specimen) + " is " + Decimal.significant(thickness, 3)
                            + " mm thick; the holder allows " + Decimal.significant(limit, 3) + " mm.");
        }
    }

    /** Where no height is measured, the surface lies as high as the specimen is thick. */
    private void heights(HolderTemplate holder) {
        if (holder.heightWindow().isEmpty()) return;
        HeightWindow window = holder.heightWindow().get();
        double thickest = holder.maxThicknessMm().orElse(Double.POSITIVE_INFINITY);
        for (Spot spot : layout.plan().spots()) {
            boolean measured = spot.zMm().isPresent();
            double thickness = spot.specimen().thicknessMm().orElse(Double.NaN);
            if (!measured && !(thickness <= thickest + Reach.ROUNDING_MM)) continue;
            double z = spot.zMm().orElse(thickness);
            boolean inside = z >= window.low() - Reach.ROUNDING_MM && z <= window.high() + Reach.ROUNDING_MM;
            if (inside) continue;
            String lies = measured ? " lies " : ", by the thickness of its specimen, lies ";
            findings.add(Named.finding(
                    spot,
                    PlanRule.SPOT_HEIGHT,
                    "Spot " + spot.id() + lies + Decimal.significant(z, 3)
                            + " mm from the reference height; the holder's window is "
                            + Decimal.significant(window.low(), 3) + " to " + Decimal.significant(window.high(), 3)
                            + " mm."));
        }
    }

    private void spots() {
        for (Spot spot : layout.plan().spots()) {
            if (spot.position().isEmpty()) continue;
            PointMm position = spot.position().get();
            Coordinate point = new Coordinate(position.x(), position.y());
            Specimen specimen = spot.specimen();
            if (layout.footprint(specimen).isPresent()) {
                double distance =
                        Polygons.toArea(point, layout.footprint(specimen).get());
                if (distance > settings.offSpecimenLimitMm() + Reach.ROUNDING_MM) {
                    beside(spot, PlanRule.SPOT_OFF_SPECIMEN, distance, specimen.label());
                }
            } else if (layout.outline().isPresent()) {
                double distance = Polygons.toArea(point, layout.outline().get());
                if (distance > Reach.ROUNDING_MM) {
                    beside(spot, PlanRule.SPOT_OFF_HOLDER, distance, "the holder");
                }
            }
        }
    }

    private void beside(Spot spot, PlanRule rule, double distance, String what) {
        findings.add(Named.finding(
                spot, rule, "Spot " + spot.id() + " lies " + Reach.millimetres(distance) + " beside " + what + "."));
    }

    private void overlaps() {
        List<Piece> pieces = layout.pieces();
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i + 1; j < pieces.size(); j++) {
                double shared =
                        Polygons.shared(pieces.get(i).shape(), pieces.get(j).shape());
                if (shared <= settings.overlapLimitMm2() + Polygons.ROUNDING_MM2) continue;
                Specimen first = Layout.first(pieces.get(i), pieces.get(j)).specimen();
                Specimen second = Layout.second(pieces.get(i), pieces.get(j)).specimen();
                add(
                        first,
                        PlanRule.SPECIMEN_OVERLAP,
                        Named.capital(first) + " and " + second.label() + " overlap over " + squareMillimetres(shared)
                                + "."
                                + (onePiece(first, second)
                                        ? " If they are one piece, declare it once and let both spots name it."
                                        : ""));
            }
        }
    }

    private static boolean onePiece(Specimen first, Specimen second) {
        return first.ownSpot().isPresent()
                && second.ownSpot().isPresent()
                && first.sample().isPresent()
                && first.sample().equals(second.sample());
    }

    private void clipsOnNeighbours() {
        for (Part part : layout.parts()) {
            if (!part.onTop()) continue;
            for (Piece piece : layout.pieces()) {
                if (piece.specimen().id().equals(part.specimen().id())) continue;
                double shared = Polygons.shared(part.shape(), piece.shape());
                if (shared <= settings.overlapLimitMm2() + Polygons.ROUNDING_MM2) continue;
                add(
                        piece.specimen(),
                        PlanRule.CLIP_ON_NEIGHBOUR,
                        "The " + part.label() + " of " + part.specimen().label() + " covers "
                                + squareMillimetres(shared) + " of "
                                + piece.specimen().label()
                                + ": move it, or declare it for both.");
            }
        }
    }

    private void add(Specimen specimen, PlanRule rule, String message) {
        findings.add(Named.finding(layout.plan(), specimen, rule, message));
    }

    private static String squareMillimetres(double area) {
        return (area < 0.05 ? Decimal.significant(area, 1) : Decimal.fixed(area, 1)) + " mm2";
    }
}
