package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import spotline.reference.Line;

/** Fit models in a treatment: where they stand, and what becomes of one on another spot. */
final class FitModels {
    static final String SECTION = "/peakFit/models";

    private FitModels() {}

    static String pointer(Line line) {
        return SECTION + "/" + Places.segment(line.toString());
    }

    /**
     * The model for a spot whose lines are measured elsewhere: window and absolute positions are moved, starts of free
     * parameters are left out so that they are estimated on the spot's own data; ties, fixed values and bounds are kept.
     *
     * @param movedEv how much higher the binding energies are measured there
     */
    static ObjectNode carried(ObjectNode model, double movedEv) {
        ObjectNode carried = model.deepCopy();
        move(carried.path("window"), movedEv, "lowEv", "highEv");
        for (JsonNode component : carried.path("components")) {
            for (Map.Entry<String, JsonNode> field : component.properties()) {
                if (!(field.getValue() instanceof ObjectNode rule)) continue;
                boolean tied = rule.has("equalTo") || rule.has("ratioTo") || rule.has("offsetFrom");
                if (tied || field.getKey().equals("doublet")) continue;
                rule.remove("start");
                if (field.getKey().equals("position")) move(rule, movedEv, "fixed", "min", "max");
            }
        }
        return carried;
    }

    private static void move(JsonNode node, double byEv, String... fields) {
        for (String field : fields) {
            if (node instanceof ObjectNode object && object.path(field).isNumber()) {
                object.put(field, object.path(field).doubleValue() + byEv);
            }
        }
    }
}
