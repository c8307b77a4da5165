package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.holder.HolderTemplate.HeightWindow;
import spotline.holder.HolderTemplate.KeepOut;
import spotline.holder.HolderTemplate.OrientationMark;
import spotline.holder.HolderTemplate.StubSeat;
import spotline.holder.HolderTemplate.TemperatureRange;

/** Makes a holder template out of a JSON object that the schema and the template checks have accepted. */
final class TemplateBinding {
    private TemplateBinding() {}

    static HolderTemplate bind(ObjectNode root) {
        Fields file = new Fields(root);
        return new HolderTemplate(
                file.mustText("name"),
                file.text("title"),
                file.text("origin"),
                points(root.path("outlineMm")),
                points(root.path("usableMm")),
                keepOuts(file),
                file.number("referenceHeightMm"),
                window(file),
                file.number("maxThicknessMm"),
                temperature(file),
                file.point("rotationAxisMm"),
                mark(file),
                seats(file),
                file.integer("electricalContacts"),
                file.truth("biasPossible"));
    }

    static List<PointMm> points(JsonNode list) {
        List<PointMm> points = new ArrayList<>();
        for (JsonNode node : list) points.add(new Fields(node).point());
        return points;
    }

    private static List<KeepOut> keepOuts(Fields file) {
        List<KeepOut> areas = new ArrayList<>();
        for (Fields fields : file.entries("keepOuts")) {
            areas.add(new KeepOut(
                    fields.mustText("name"),
                    fields.word("kind", KeepOut.Kind.OTHER),
                    points(fields.node().path("outlineMm"))));
        }
        return areas;
    }

    private static Optional<HeightWindow> window(Fields file) {
        if (!file.has("heightWindowMm")) return Optional.empty();
        Fields fields = file.must("heightWindowMm");
        return Optional.of(new HeightWindow(fields.mustNumber("low"), fields.mustNumber("high")));
    }

    private static Optional<TemperatureRange> temperature(Fields file) {
        if (!file.has("temperatureC")) return Optional.empty();
        Fields fields = file.must("temperatureC");
        return Optional.of(
                new TemperatureRange(fields.mustNumber("min"), fields.mustNumber("max"), fields.text("record")));
    }

    private static Optional<OrientationMark> mark(Fields file) {
        if (!file.has("orientationMark")) return Optional.empty();
        Fields fields = file.must("orientationMark");
        return Optional.of(
                new OrientationMark(fields.mustText("name"), fields.must("atMm").point()));
    }

    private static List<StubSeat> seats(Fields file) {
        List<StubSeat> seats = new ArrayList<>();
        for (Fields fields : file.entries("stubSeats")) {
            seats.add(new StubSeat(
                    fields.mustText("id"), fields.must("centreMm").point(), fields.mustNumber("diameterMm")));
        }
        return seats;
    }
}
