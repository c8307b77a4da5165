package spotline.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import spotline.holder.AnalysisFootprint;
import spotline.holder.Clip;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.KeepOut;
import spotline.holder.HolderTemplate.StubSeat;
import spotline.holder.Outline;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.report.print.Canvas;
import spotline.report.print.Ink;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/** The holder as seen from the analyser, with everything that has a place on it. */
final class HolderFigure {
    /** What hangs over the holder is drawn so far beyond its extent and no farther, mm. */
    private static final double BEYOND_MM = 8;

    private static final int MOST_ROWS = 6;

    private static final double SIDE_MM = 9;
    private static final double ROW_MM = 5.2;
    private static final double LEADER_MM = 4;
    private static final double LABEL_MM = 2.7;
    private static final double NAME_MM = 2.1;
    private static final double CROSS_MM = 0.9;

    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final Envelope extent;
    private final List<Spot> placed = new ArrayList<>();

    HolderFigure(HolderPlan plan, Optional<HolderTemplate> holder) {
        this.plan = plan;
        this.holder = holder;
        for (Spot spot : plan.spots()) {
            if (spot.position().isPresent()) placed.add(spot);
        }
        extent = extent();
    }

    private Envelope extent() {
        Envelope all = new Envelope();
        for (Specimen specimen : plan.specimens()) {
            Shapes.footprint(specimen).ifPresent(shape -> all.expandToInclude(shape.getEnvelopeInternal()));
        }
        for (Spot spot : placed) {
            PointMm at = spot.position().orElseThrow();
            all.expandToInclude(at.x(), at.y());
        }
        if (holder.isEmpty()) return all.isNull() ? new Envelope(0, 1, 0, 1) : all;
        Envelope own = Shapes.polygon(holder.get().outline()).getEnvelopeInternal();
        Envelope most = new Envelope(own);
        most.expandBy(BEYOND_MM);
        Envelope drawn = all.isNull() ? new Envelope(own) : all.intersection(most);
        drawn.expandToInclude(own);
        return drawn;
    }

    /** Room the drawing takes at full size, mm. */
    double widthMm() {
        return extent.getWidth() + SIDE_MM;
    }

    double holderHeightMm() {
        return extent.getHeight();
    }

    /** Where a drawing stands and how large it is. */
    private final class Drawing {
        private final Canvas canvas;
        private final double scale;
        private final double left;
        private final double top;

        private Drawing(Canvas canvas, double left, double top, double scale) {
            this.canvas = canvas;
            this.left = left;
            this.top = top;
            this.scale = scale;
        }

        private PointMm at(double x, double y) {
            return new PointMm(left + (x - extent.getMinX()) * scale, top + (extent.getMaxY() - y) * scale);
        }

        private PointMm at(PointMm point) {
            return at(point.x(), point.y());
        }

        private List<PointMm> at(Polygon shape) {
            Coordinate[] ring = shape.getExteriorRing().getCoordinates();
            List<PointMm> corners = new ArrayList<>();
            for (int i = 0; i + 1 < ring.length; i++) corners.add(at(ring[i].x, ring[i].y));
            return corners;
        }

        /** The parts of a shape that lie within what is drawn. */
        private List<List<PointMm>> visible(Polygon shape) {
            if (extent.covers(shape.getEnvelopeInternal())) return List.of(at(shape));
            Geometry part = shape.intersection(new GeometryFactory().toGeometry(extent));
            List<List<PointMm>> parts = new ArrayList<>();
            for (int i = 0; i < part.getNumGeometries(); i++) {
                if (part.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) parts.add(at(polygon));
            }
            return parts;
        }
    }

    /** Height of the drawing with its labels, mm. */
    double heightMm(Typeface typeface, double widthMm, double scale) {
        int above = rows(typeface, half(true), widthMm);
        int below = rows(typeface, half(false), widthMm);
        return side(above) + extent.getHeight() * scale + 5 + side(below);
    }

    private static double side(int rows) {
        return rows == 0 ? 1 : rows * ROW_MM + LEADER_MM;
    }

    /** So many rows of labels at most: with more, spots are named on the holder itself. */
    private static int rows(Typeface typeface, List<Spot> spots, double widthMm) {
        if (spots.isEmpty()) return 0;
        List<Callouts.Wish> wishes = new ArrayList<>();
        for (Spot spot : spots) wishes.add(new Callouts.Wish(0, labelWidth(typeface, spot)));
        int rows = Callouts.rows(wishes, 0, widthMm);
        return rows > MOST_ROWS ? 0 : rows;
    }

    private static String label(Typeface typeface, Spot spot) {
        return typeface.cut(spot.id(), 30, LABEL_MM, Weight.BOLD);
    }

    private static double labelWidth(Typeface typeface, Spot spot) {
        return typeface.widthMm(label(typeface, spot), LABEL_MM, Weight.BOLD) + 3.2;
    }

    /** Spots are named on the side they are nearer to. */
    private List<Spot> half(boolean upper) {
        double middle = holder.isPresent()
                ? Shapes.polygon(holder.get().outline()).getEnvelopeInternal().centre().y
                : extent.centre().y;
        return placed.stream()
                .filter(spot -> (spot.yMm().orElseThrow() >= middle) == upper)
                .sorted(Comparator.comparingDouble(spot -> spot.xMm().orElseThrow()))
                .toList();
    }

    void draw(Canvas canvas, double top, double widthMm, double scale) {
        double drawnWidth = extent.getWidth() * scale;
        double left = Math.max(SIDE_MM, (widthMm - drawnWidth) / 2);
        Typeface typeface = canvas.typeface();
        int above = rows(typeface, half(true), widthMm);
        Drawing drawing = new Drawing(canvas, left, top + side(above), scale);
        if (holder.isPresent()) ground(drawing, holder.get());
        for (Specimen specimen : plan.specimens()) specimen(drawing, specimen);
        callouts(drawing, half(true), above, top, widthMm, true);
        double bottom = top + side(above) + extent.getHeight() * scale + 5;
        int below = rows(typeface, half(false), widthMm);
        callouts(drawing, half(false), below, bottom + LEADER_MM, widthMm, false);
        // Once more, so that no leader cuts the edge.
        holder.ifPresent(
                h -> canvas.outline("", drawing.at(Shapes.polygon(h.outline())), Ink.BLACK, Canvas.THICK_MM, 0));
        axes(drawing);
        for (Spot spot : placed) spot(drawing, spot);
        if (above == 0) names(drawing, half(true));
        if (below == 0) names(drawing, half(false));
        for (Specimen specimen : plan.specimens()) name(drawing, specimen);
    }

    private static void ground(Drawing drawing, HolderTemplate holder) {
        Canvas canvas = drawing.canvas;
        canvas.area(
                "holder outline", drawing.at(Shapes.polygon(holder.outline())), Ink.PAPER, Ink.BLACK, Canvas.THICK_MM);
        if (!holder.usable().isEmpty()) {
            canvas.outline("usable area", drawing.at(Shapes.polygon(holder.usable())), Ink.MIDDLE, Canvas.THIN_MM, 1.2);
        }
        for (StubSeat seat : holder.stubSeats()) {
            Outline round = new Outline.Ellipse(seat.diameterMm(), seat.diameterMm());
            canvas.outline(
                    "stub seat", drawing.at(Shapes.placed(round, seat.centre(), 0)), Ink.DARK, Canvas.THIN_MM, 0);
            PointMm low = drawing.at(seat.centre().x(), seat.centre().y() - seat.diameterMm() / 2);
            canvas.wordsCentred(low.x(), low.y() - 0.8, NAME_MM, Weight.REGULAR, Ink.DARK, "seat " + seat.id());
        }
        for (KeepOut area : holder.keepOuts()) {
            List<PointMm> corners = drawing.at(Shapes.polygon(area.outline()));
            canvas.area("keep-out area", corners, Ink.PAPER, Ink.DARK, Canvas.THIN_MM);
            canvas.hatch(corners, 1.6, Ink.DARK);
        }
        holder.rotationAxis().ifPresent(axis -> {
            PointMm at = drawing.at(axis);
            for (double arm : new double[] {-3, 3}) {
                canvas.line("rotation axis", at.x(), at.y(), at.x() + arm, at.y(), Ink.DARK, Canvas.HAIR_MM);
                canvas.line("rotation axis", at.x(), at.y(), at.x(), at.y() + arm, Ink.DARK, Canvas.HAIR_MM);
            }
        });
        holder.orientationMark().ifPresent(mark -> {
            PointMm at = drawing.at(mark.at());
            canvas.area(
                    "orientation mark",
                    List.of(
                            new PointMm(at.x(), at.y() - 1.1),
                            new PointMm(at.x() + 1, at.y() + 0.7),
                            new PointMm(at.x() - 1, at.y() + 0.7)),
                    Ink.BLACK,
                    Ink.BLACK,
                    0);
        });
    }

    private static void specimen(Drawing drawing, Specimen specimen) {
        Canvas canvas = drawing.canvas;
        Shapes.tapePatch(specimen)
                .ifPresent(patch -> drawing.visible(patch)
                        .forEach(corners -> canvas.outline("tape patch", corners, Ink.DARK, Canvas.THIN_MM, 0.5)));
        Shapes.footprint(specimen)
                .ifPresent(shape -> drawing.visible(shape)
                        .forEach(corners -> canvas.area("specimen", corners, Ink.PALE, Ink.BLACK, 0.25)));
        for (Clip clip : specimen.mount().clips()) {
            Shapes.clip(clip)
                    .ifPresent(shape -> drawing.visible(shape)
                            .forEach(corners -> canvas.area("clip", corners, Ink.MIDDLE, Ink.BLACK, Canvas.THIN_MM)));
        }
    }

    /** Scales along the two edges: they say where things are, and prove the print both ways. */
    private void axes(Drawing drawing) {
        Canvas canvas = drawing.canvas;
        PointMm corner = drawing.at(extent.getMinX(), extent.getMinY());
        int step = drawing.scale < 0.5 ? 20 : 10;
        for (int x = (int) Math.ceil(extent.getMinX()); x <= extent.getMaxX() + 1e-9; x++) {
            boolean named = x % step == 0;
            if (!named && x % 5 != 0 && drawing.scale < 1) continue;
            PointMm at = drawing.at(x, extent.getMinY());
            double length = named ? 1.6 : x % 5 == 0 ? 1.1 : 0.6;
            canvas.line("x scale", at.x(), at.y() + 0.6, at.x(), at.y() + 0.6 + length, Ink.DARK, Canvas.HAIR_MM);
            if (!named) continue;
            canvas.area("", Canvas.box(at.x() - 2.3, at.y() + 2.5, 4.6, 2.3), Ink.PAPER, Ink.PAPER, 0);
            canvas.wordsCentred(at.x(), at.y() + 4.4, NAME_MM, Weight.REGULAR, Ink.DARK, "" + x);
        }
        for (int y = (int) Math.ceil(extent.getMinY()); y <= extent.getMaxY() + 1e-9; y++) {
            boolean named = y % step == 0;
            if (!named && y % 5 != 0 && drawing.scale < 1) continue;
            PointMm at = drawing.at(extent.getMinX(), y);
            double length = named ? 1.6 : y % 5 == 0 ? 1.1 : 0.6;
            canvas.line("y scale", at.x() - 0.6, at.y(), at.x() - 0.6 - length, at.y(), Ink.DARK, Canvas.HAIR_MM);
            if (named) canvas.wordsRight(at.x() - 2.6, at.y() + 0.75, NAME_MM, Weight.REGULAR, Ink.DARK, "" + y);
        }
        PointMm end = drawing.at(extent.getMaxX(), extent.getMinY());
        canvas.words(end.x() + 2.2, corner.y() + 2.6, NAME_MM, Weight.REGULAR, Ink.DARK, "x, mm");
        PointMm head = drawing.at(extent.getMinX(), extent.getMaxY());
        canvas.wordsRight(head.x() - 2.6, head.y() - 1.6, NAME_MM, Weight.REGULAR, Ink.DARK, "y, mm");
    }

    private static void callouts(
            Drawing drawing, List<Spot> spots, int rows, double top, double widthMm, boolean above) {
        Canvas canvas = drawing.canvas;
        for (int row = 0; row < rows; row++) {
            List<Spot> inRow = new ArrayList<>();
            for (int i = 0; i < spots.size(); i++) {
                if (i % rows == row) inRow.add(spots.get(i));
            }
            List<Callouts.Wish> wishes = new ArrayList<>();
            for (Spot spot : inRow) {
                double x = drawing.at(spot.position().orElseThrow()).x();
                wishes.add(new Callouts.Wish(x, labelWidth(canvas.typeface(), spot)));
            }
            double[] middles = Callouts.middles(wishes, 0, widthMm);
            double y = top + row * ROW_MM;
            for (int i = 0; i < inRow.size(); i++) {
                Spot spot = inRow.get(i);
                double width = wishes.get(i).widthMm() - 1;
                PointMm at = drawing.at(spot.position().orElseThrow());
                double edge = above ? y + ROW_MM - 1 : y;
                leader(canvas, middles[i], edge, at);
                canvas.area(
                        "spot label",
                        Canvas.box(middles[i] - width / 2, y, width, ROW_MM - 1),
                        Ink.PAPER,
                        Ink.DARK,
                        Canvas.THIN_MM);
                canvas.wordsCentred(
                        middles[i], y + 3, LABEL_MM, Weight.BOLD, Ink.BLACK, label(canvas.typeface(), spot));
            }
        }
    }

    private static void leader(Canvas canvas, double x, double y, PointMm to) {
        double length = Math.hypot(to.x() - x, to.y() - y);
        if (length <= CROSS_MM) return;
        double share = (length - CROSS_MM) / length;
        canvas.line("", x, y, x + share * (to.x() - x), y + share * (to.y() - y), Ink.MIDDLE, Canvas.THIN_MM);
    }

    private void spot(Drawing drawing, Spot spot) {
        Canvas canvas = drawing.canvas;
        PointMm at = drawing.at(spot.position().orElseThrow());
        AnalysisFootprint.of(plan, spot).ifPresent(area -> {
            List<PointMm> corners = area.corners().stream().map(drawing::at).toList();
            canvas.outline("analysis area", corners, Ink.BLACK, Canvas.THIN_MM, 0);
        });
        canvas.line("spot", at.x() - CROSS_MM, at.y(), at.x() + CROSS_MM, at.y(), Ink.BLACK, Canvas.THIN_MM);
        canvas.line("spot", at.x(), at.y() - CROSS_MM, at.x(), at.y() + CROSS_MM, Ink.BLACK, Canvas.THIN_MM);
    }

    private static void names(Drawing drawing, List<Spot> spots) {
        for (Spot spot : spots) {
            PointMm at = drawing.at(spot.position().orElseThrow());
            drawing.canvas.words(at.x() + 0.4, at.y() - 0.4, 1.4, Weight.BOLD, Ink.BLACK, spot.id());
        }
    }

    /** A declared specimen's id, in that corner of it which is farthest from every spot. */
    private void name(Drawing drawing, Specimen specimen) {
        Optional<Polygon> shape = Shapes.footprint(specimen);
        if (shape.isEmpty() || specimen.ownSpot().isPresent()) return;
        Canvas canvas = drawing.canvas;
        String text = canvas.typeface().cut(specimen.id(), 20, NAME_MM, Weight.REGULAR);
        double width = canvas.typeface().widthMm(text, NAME_MM, Weight.REGULAR);
        Envelope box = shape.get().getEnvelopeInternal();
        Coordinate centre = box.centre();
        double best = -1;
        PointMm where = drawing.at(centre.x, centre.y);
        for (double[] side : new double[][] {{-1, 1}, {1, 1}, {-1, -1}, {1, -1}, {0, 0}}) {
            double dx = Math.max(0, box.getWidth() / 2 * drawing.scale - width / 2 - 0.7);
            double dy = Math.max(0, box.getHeight() / 2 * drawing.scale - NAME_MM / 2 - 0.6);
            PointMm middle = drawing.at(centre.x, centre.y);
            PointMm at = new PointMm(middle.x() + side[0] * dx, middle.y() - side[1] * dy);
            double nearest = Double.POSITIVE_INFINITY;
            for (Spot spot : placed) {
                PointMm mark = drawing.at(spot.position().orElseThrow());
                nearest = Math.min(nearest, Math.hypot(mark.x() - at.x(), mark.y() - at.y()));
            }
            if (nearest > best + 1e-9) {
                best = nearest;
                where = at;
            }
        }
        canvas.area(
                "", Canvas.box(where.x() - width / 2 - 0.2, where.y() - 0.9, width + 0.4, 1.8), Ink.PALE, Ink.PALE, 0);
        canvas.wordsCentred(where.x(), where.y() + 0.75, NAME_MM, Weight.REGULAR, Ink.BLACK, text);
    }
}
