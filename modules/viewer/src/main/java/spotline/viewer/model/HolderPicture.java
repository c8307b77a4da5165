package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import spotline.holder.AnalysisFootprint;
import spotline.holder.Clip;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;

/**
 * The holder as seen from the analyser, to scale.
 *
 * @param lowX,lowY,highX,highY what has to be shown, mm
 * @param outline of the holder; empty when its template is not known
 * @param keepOuts areas that stay free
 * @param pieces specimens, tape patches and clips, from the lowest to the uppermost
 * @param spots in the order of the holder run; those without a position are set in a row below the holder
 */
public record HolderPicture(
        double lowX,
        double lowY,
        double highX,
        double highY,
        Optional<Shape> outline,
        List<Shape> keepOuts,
        List<Piece> pieces,
        List<SpotPlace> spots) {
    private static final double MARGIN_MM = 1.5;
    private static final double ROW_MM = 4;

    /** Something that lies on the holder. */
    public record Piece(Kind kind, Shape shape, String name) {
        /** Drawn unlike each other. */
        public enum Kind {
            TAPE,
            SPECIMEN,
            CLIP
        }
    }

    /**
     * @param footprint what the analysis area covers; empty when it is not known
     * @param placed whether the record says where the spot lies
     */
    public record SpotPlace(String id, String sample, PointMm at, Optional<Shape> footprint, boolean placed) {}

    public HolderPicture {
        keepOuts = List.copyOf(keepOuts);
        pieces = List.copyOf(pieces);
        spots = List.copyOf(spots);
    }

    public static HolderPicture of(HolderPlan plan, Optional<HolderTemplate> template, Words words) {
        Envelope extent = new Envelope();
        Optional<Shape> outline = template.map(t -> new Shape(t.outline()));
        outline.ifPresent(o -> expand(extent, o));
        List<Shape> keepOuts = new ArrayList<>();
        template.ifPresent(t -> t.keepOuts().forEach(k -> keepOuts.add(new Shape(k.outline()))));
        List<Piece> pieces = new ArrayList<>();
        for (Specimen specimen : plan.specimens()) {
            Shapes.tapePatch(specimen)
                    .ifPresent(p -> pieces.add(
                            new Piece(Piece.Kind.TAPE, Shape.of(p), words.of("holder.tape", specimen.label()))));
        }
        for (Specimen specimen : plan.specimens()) {
            Shapes.footprint(specimen)
                    .ifPresent(p -> pieces.add(new Piece(Piece.Kind.SPECIMEN, Shape.of(p), specimen.label())));
        }
        for (Specimen specimen : plan.specimens()) {
            for (Clip clip : specimen.mount().clips()) {
                Shapes.clip(clip).ifPresent(p -> pieces.add(new Piece(Piece.Kind.CLIP, Shape.of(p), clip.label())));
            }
        }
        pieces.forEach(p -> expand(extent, p.shape()));
        for (Spot spot : plan.spots()) {
            spot.position().ifPresent(p -> extent.expandToInclude(p.x(), p.y()));
        }
        if (extent.isNull()) extent.expandToInclude(0, 0);
        List<SpotPlace> spots = spots(plan, extent);
        extent.expandBy(MARGIN_MM);
        return new HolderPicture(
                extent.getMinX(),
                extent.getMinY(),
                extent.getMaxX(),
                extent.getMaxY(),
                outline,
                keepOuts,
                pieces,
                spots);
    }

    private static List<SpotPlace> spots(HolderPlan plan, Envelope extent) {
        List<SpotPlace> places = new ArrayList<>();
        double rowY = extent.getMinY() - ROW_MM;
        double rowX = extent.getMinX() + ROW_MM;
        for (Spot spot : plan.spots()) {
            boolean placed = spot.position().isPresent();
            PointMm at = placed ? spot.position().get() : new PointMm(rowX, rowY);
            if (!placed) {
                rowX += 3 * ROW_MM;
                extent.expandToInclude(at.x() + ROW_MM, at.y() - ROW_MM);
            }
            places.add(new SpotPlace(
                    spot.id(),
                    spot.sampleName(),
                    at,
                    AnalysisFootprint.of(plan, spot).map(f -> new Shape(f.corners())),
                    placed));
        }
        return places;
    }

    private static void expand(Envelope extent, Shape shape) {
        for (PointMm corner : shape.corners()) extent.expandToInclude(corner.x(), corner.y());
    }

    public double widthMm() {
        return highX - lowX;
    }

    public double heightMm() {
        return highY - lowY;
    }

    /** Nearest spot in a direction: dx and dy are -1, 0 or 1, y upwards; the spot itself where there is none. */
    public String neighbour(String spot, int dx, int dy) {
        SpotPlace from =
                spots.stream().filter(s -> s.id().equals(spot)).findFirst().orElse(spots.get(0));
        double best = Double.POSITIVE_INFINITY;
        String found = from.id();
        for (SpotPlace s : spots) {
            double along =
                    (s.at().x() - from.at().x()) * dx + (s.at().y() - from.at().y()) * dy;
            if (s == from || !(along > 1e-9)) continue;
            double across = Math.abs((s.at().x() - from.at().x()) * dy)
                    + Math.abs((s.at().y() - from.at().y()) * dx);
            double distance = along + 2 * across;
            if (distance < best) {
                best = distance;
                found = s.id();
            }
        }
        return found;
    }
}
