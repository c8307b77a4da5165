package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/** The settings of one spot as they suit another. */
final class CopiedSettings {
    private CopiedSettings() {}

    /** @param movedEv how much higher binding energies are measured at the other spot */
    static ObjectNode of(ObjectNode settings, double movedEv) {
        ObjectNode copied = settings.deepCopy();
        for (JsonNode line : copied.path("lines")) {
            if (line.path("window") instanceof ObjectNode window) {
                window.put("lowEv", window.path("lowEv").doubleValue() + movedEv);
                window.put("highEv", window.path("highEv").doubleValue() + movedEv);
            }
        }
        if (copied.at(FitModels.SECTION) instanceof ObjectNode models) {
            for (Map.Entry<String, JsonNode> model : models.properties()) {
                if (model.getValue() instanceof ObjectNode object) {
                    model.setValue(FitModels.carried(object, movedEv));
                }
            }
        }
        return copied;
    }
}
