package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/** JSON merge patch. Source: RFC 7396, section 2. */
public final class MergePatch {
    private MergePatch() {}

    /** One patch that does what the first and then the second would: what a patch takes away, it still takes away. */
    public static JsonNode over(JsonNode first, JsonNode second) {
        if (!first.isObject() || !second.isObject()) return second.deepCopy();
        ObjectNode result = ((ObjectNode) first).deepCopy();
        for (Map.Entry<String, JsonNode> field : second.properties()) {
            JsonNode old = result.get(field.getKey());
            result.set(field.getKey(), old == null ? field.getValue().deepCopy() : over(old, field.getValue()));
        }
        return result;
    }

    /** A new tree: the target with the patch laid over it. Neither input is changed. */
    static JsonNode apply(JsonNode target, JsonNode patch) {
        if (!patch.isObject()) return patch.deepCopy();
        ObjectNode result =
                target.isObject() ? ((ObjectNode) target).deepCopy() : JsonNodeFactory.instance.objectNode();
        for (Map.Entry<String, JsonNode> field : patch.properties()) {
            if (field.getValue().isNull()) {
                result.remove(field.getKey());
            } else {
                JsonNode old = result.path(field.getKey());
                result.set(field.getKey(), apply(old, field.getValue()));
            }
        }
        return result;
    }
}
