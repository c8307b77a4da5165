package spotline.run.document;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * JSON trees as values: a changed tree shares with the old one all that did not change, and no tree is altered once it is
 * made.
 */
final class Trees {
    private Trees() {}

    static Optional<JsonNode> at(JsonNode tree, JsonPointer pointer) {
        JsonNode found = tree.at(pointer);
        return found.isMissingNode() ? Optional.empty() : Optional.of(found);
    }

    /**
     * The tree with another value at a pointer, or without one there.
     *
     * <p>Errors: {@link IllegalArgumentException} when what should hold the value is not there.
     */
    static JsonNode with(JsonNode tree, JsonPointer pointer, Optional<JsonNode> value) {
        if (pointer.matches()) {
            return value.orElseThrow(() -> new IllegalArgumentException("the whole document cannot be taken away"));
        }
        JsonPointer rest = pointer.tail();
        if (tree instanceof ObjectNode object) {
            String field = pointer.getMatchingProperty();
            ObjectNode changed = JsonNodeFactory.instance.objectNode();
            changed.setAll(object);
            if (rest.matches() && value.isEmpty()) changed.remove(field);
            else if (rest.matches()) changed.set(field, value.orElseThrow());
            else changed.set(field, with(child(object.get(field), pointer), rest, value));
            return changed;
        }
        if (tree instanceof ArrayNode array) {
            int index = pointer.getMatchingIndex();
            ArrayNode changed = JsonNodeFactory.instance.arrayNode(array.size());
            changed.addAll(array);
            if (rest.matches() && value.isEmpty()) {
                throw new IllegalArgumentException("an entry of a list is changed with its list, not taken away");
            }
            changed.set(
                    index, rest.matches() ? value.orElseThrow() : with(child(array.get(index), pointer), rest, value));
            return changed;
        }
        throw new IllegalArgumentException("nothing holds " + pointer);
    }

    private static JsonNode child(@org.jspecify.annotations.Nullable JsonNode node, JsonPointer pointer) {
        if (node == null) throw new IllegalArgumentException("nothing holds " + pointer);
        return node;
    }

    /** Whether two trees say the same: the order of fields does not count, nor does 280 against 280.0. */
    static boolean same(JsonNode a, JsonNode b) {
        return a == b || canonical(a).equals(canonical(b));
    }

    static boolean same(Optional<JsonNode> a, Optional<JsonNode> b) {
        if (a.isEmpty() || b.isEmpty()) return a.isEmpty() && b.isEmpty();
        return same(a.get(), b.get());
    }

    static String canonical(JsonNode tree) {
        StringBuilder text = new StringBuilder();
        append(tree, text);
        return text.toString();
    }

    static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static void append(JsonNode node, StringBuilder to) {
        if (node.isObject()) {
            List<String> names = new ArrayList<>();
            node.fieldNames().forEachRemaining(names::add);
            Collections.sort(names);
            char before = '{';
            for (String name : names) {
                to.append(before);
                quoted(name, to);
                to.append(':');
                append(node.path(name), to);
                before = ',';
            }
            to.append(names.isEmpty() ? "{}" : "}");
        } else if (node.isArray()) {
            char before = '[';
            for (JsonNode entry : node) {
                to.append(before);
                append(entry, to);
                before = ',';
            }
            to.append(node.isEmpty() ? "[]" : "]");
        } else if (node.isNumber()) {
            BigDecimal value = node.decimalValue();
            to.append(value.signum() == 0 ? "0" : value.stripTrailingZeros().toString());
        } else if (node.isTextual()) {
            quoted(node.textValue(), to);
        } else {
            to.append(node.asText());
        }
    }

    private static void quoted(String text, StringBuilder to) {
        to.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') to.append('\\').append(c);
            else if (c < ' ')
                to.append("\\u00").append(Character.forDigit(c >> 4, 16)).append(Character.forDigit(c & 15, 16));
            else to.append(c);
        }
        to.append('"');
    }
}
