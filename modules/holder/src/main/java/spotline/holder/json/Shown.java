package spotline.holder.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;

/** Values from a file as an error shows them: short, on one line, control characters escaped. */
final class Shown {
    private static final int LONGEST = 60;

    private Shown() {}

    /** {@code "name": value}. */
    static String field(String name, JsonNode value) {
        return text(name) + ": " + value(value);
    }

    static String value(JsonNode value) {
        if (value.isObject()) return value.isEmpty() ? "{ }" : "{ ... }";
        if (value.isArray()) return value.isEmpty() ? "[ ]" : "[ ... ]";
        return value.isTextual() ? text(value.asText()) : cut(value.toString());
    }

    static String text(String text) {
        return TextNode.valueOf(cut(text)).toString();
    }

    static String cut(String text) {
        if (text.length() <= LONGEST) return text;
        int end = Character.isHighSurrogate(text.charAt(LONGEST - 1)) ? LONGEST - 1 : LONGEST;
        return text.substring(0, end) + "...";
    }

    static String kind(JsonNode value) {
        return switch (value.getNodeType()) {
            case OBJECT -> "an object";
            case ARRAY -> "a list";
            case STRING -> "a text";
            case NUMBER -> "a number";
            case BOOLEAN -> "true or false";
            default -> "null";
        };
    }
}
