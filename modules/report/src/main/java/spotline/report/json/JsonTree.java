package spotline.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import spotline.core.Decimal;

/** Values as JSON nodes: numbers with ten significant digits, null for what is not known. */
final class JsonTree {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonTree() {}

    static ObjectNode object() {
        return NODES.objectNode();
    }

    static JsonNode number(double value) {
        String text = Decimal.text(value);
        return text.isEmpty() ? NullNode.getInstance() : DecimalNode.valueOf(new BigDecimal(text));
    }

    static JsonNode number(OptionalDouble value) {
        return number(value.orElse(Double.NaN));
    }

    /** An empty text is one that is not known. */
    static JsonNode text(String text) {
        return text.isEmpty() ? NullNode.getInstance() : NODES.textNode(text);
    }

    static JsonNode text(Optional<String> text) {
        return text(text.orElse(""));
    }

    static <T> ArrayNode list(Collection<T> values, Function<T, JsonNode> each) {
        ArrayNode array = NODES.arrayNode(values.size());
        for (T value : values) array.add(each.apply(value));
        return array;
    }

    /** The same tree with every fraction through {@link Decimal}, so that settings read like results. */
    static JsonNode settings(JsonNode tree) {
        if (tree.isObject()) {
            ObjectNode copy = object();
            for (Map.Entry<String, JsonNode> field : tree.properties()) {
                copy.set(field.getKey(), settings(field.getValue()));
            }
            return copy;
        }
        if (tree.isArray()) {
            ArrayNode copy = NODES.arrayNode(tree.size());
            tree.forEach(element -> copy.add(settings(element)));
            return copy;
        }
        return tree.isFloatingPointNumber() ? number(tree.doubleValue()) : tree;
    }
}
