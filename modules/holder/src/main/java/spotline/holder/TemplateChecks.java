package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import spotline.core.Decimal;
import spotline.core.Place;
import spotline.core.ReadException;

/** What a schema cannot say of a holder template: its areas must be simple and lie on the holder. */
final class TemplateChecks {
    /** Far below what anybody measures on a holder, far above the rounding of a double. */
    private static final double TOLERANCE_MM = 1e-6;

    private final String file;
    private final List<ReadException> faults = new ArrayList<>();

    private TemplateChecks(String file) {
        this.file = file;
    }

    /** @param root valid against the schema */
    static List<ReadException> faults(String file, ObjectNode root) {
        TemplateChecks checks = new TemplateChecks(file);
        checks.order(root.path("heightWindowMm"), "/heightWindowMm", "low", "high");
        checks.order(root.path("temperatureC"), "/temperatureC", "min", "max");
        if (checks.simple(root.path("outlineMm"), "/outlineMm")) checks.areas(root);
        return checks.faults;
    }

    private void areas(ObjectNode root) {
        Polygon outline = Shapes.polygon(TemplateBinding.points(root.path("outlineMm")));
        Envelope extent = outline.getEnvelopeInternal();
        if (Math.abs(extent.getMinX()) > TOLERANCE_MM || Math.abs(extent.getMinY()) > TOLERANCE_MM) {
            String corner = Decimal.text(extent.getMinX()) + ", " + Decimal.text(extent.getMinY());
            fault("/outlineMm", "an outline whose lower left corner is at " + corner + " mm", "0, 0");
        }
        Geometry holder = outline.buffer(TOLERANCE_MM);
        area(root.path("usableMm"), "/usableMm", holder);
        JsonNode keepOuts = root.path("keepOuts");
        for (int i = 0; i < keepOuts.size(); i++) {
            area(keepOuts.path(i).path("outlineMm"), "/keepOuts/" + i + "/outlineMm", holder);
        }
        position(root.path("rotationAxisMm"), "/rotationAxisMm", holder);
        position(root.path("orientationMark").path("atMm"), "/orientationMark/atMm", holder);
        JsonNode seats = root.path("stubSeats");
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < seats.size(); i++) {
            String id = seats.path(i).path("id").asText();
            if (!ids.add(id)) {
                fault("/stubSeats/" + i + "/id", "a second seat " + id, "an id of its own for each seat");
            }
            position(seats.path(i).path("centreMm"), "/stubSeats/" + i + "/centreMm", holder);
        }
    }

    private void area(JsonNode corners, String pointer, Geometry holder) {
        if (corners.isMissingNode() || !simple(corners, pointer)) return;
        if (!holder.covers(Shapes.polygon(TemplateBinding.points(corners)))) {
            fault(pointer, "an area that reaches beyond the holder's outline", "an area on the holder");
        }
    }

    private void position(JsonNode point, String pointer, Geometry holder) {
        if (point.isMissingNode()) return;
        PointMm position =
                new PointMm(point.path("x").asDouble(), point.path("y").asDouble());
        if (!holder.covers(Shapes.point(position))) {
            fault(pointer, "a position off the holder's outline", "a position on the holder");
        }
    }

    private boolean simple(JsonNode corners, String pointer) {
        boolean simple = Shapes.polygon(TemplateBinding.points(corners)).isValid();
        if (!simple) fault(pointer, "corners whose sides cross or touch", "corners in order around the area");
        return simple;
    }

    private void order(JsonNode range, String pointer, String low, String high) {
        if (range.isMissingNode()) return;
        double from = range.path(low).asDouble();
        double to = range.path(high).asDouble();
        if (from > to) {
            fault(
                    pointer,
                    "\"" + low + "\": " + Decimal.text(from) + " above \"" + high + "\": " + Decimal.text(to),
                    low + " at or below " + high);
        }
    }

    private void fault(String pointer, String found, String expected) {
        faults.add(new ReadException(Place.pointer(file, pointer), found, expected));
    }
}
