package spotline.holder.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import spotline.core.Place;
import spotline.core.ReadException;

/** Turns what a schema does not allow into sentences for people; the validator's own wording is never shown. */
final class SchemaSentences {
    /** A longer list of words is described, not listed. */
    private static final int LONGEST_LIST = 20;

    private final JsonNode schema;

    SchemaSentences(JsonNode schema) {
        this.schema = schema;
    }

    List<ReadException> faults(String file, JsonNode root, List<Error> errors) {
        List<ReadException> faults = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (Error error : errors) {
            if (beyondDouble(root.at(error.getInstanceLocation().toString()))) continue;
            ReadException fault = fault(file, root, error);
            boolean type = error.getKeyword().equals("type");
            // Two branches of a schema may both say that a value has the wrong type: the first, outer one says it best.
            String key = type ? "type " + fault.place() : String.valueOf(fault.getMessage());
            if (seen.add(key)) faults.add(fault);
        }
        return faults;
    }

    /** A number too large to hold is told as such before any schema sees it. */
    private static boolean beyondDouble(JsonNode value) {
        return value.isDouble() && Double.isInfinite(value.asDouble());
    }

    private ReadException fault(String file, JsonNode root, Error error) {
        String pointer = error.getInstanceLocation().toString();
        JsonNode value = root.at(pointer);
        String keywordAt = error.getSchemaLocation().getFragment().toString();
        JsonNode rule = schema.at(keywordAt);
        JsonNode owner = schema.at(keywordAt.substring(0, Math.max(0, keywordAt.lastIndexOf('/'))));
        return switch (error.getKeyword()) {
            case "additionalProperties" -> unknownField(file, pointer, error.getProperty(), owner);
            case "required" ->
                new ReadException(
                        Place.pointer(file, pointer),
                        "no field " + Shown.text(error.getProperty()),
                        Shown.text(error.getProperty()) + " to be given here");
            default ->
                new ReadException(
                        Place.pointer(file, pointer),
                        found(pointer, value, error.getKeyword()),
                        expected(error.getKeyword(), rule, owner, value));
        };
    }

    private static ReadException unknownField(String file, String pointer, String name, JsonNode owner) {
        List<String> known = new ArrayList<>();
        owner.path("properties").fieldNames().forEachRemaining(known::add);
        Place place =
                Place.pointer(file, pointer + "/" + name.replace("~", "~0").replace("/", "~1"));
        String meant = meant(name, known);
        return new ReadException(place, "unknown field " + Shown.text(name), oneOf(known) + meant);
    }

    private static String found(String pointer, JsonNode value, String keyword) {
        String[] path = pointer.split("/", -1);
        if (path.length < 2) return Shown.value(value);
        String last = path[path.length - 1].replace("~1", "/").replace("~0", "~");
        String twice = keyword.equals("uniqueItems") ? " with an entry given twice" : "";
        boolean entry = path.length > 2 && last.chars().allMatch(c -> c >= '0' && c <= '9');
        return (entry ? Shown.value(value) + " in " + Shown.text(path[path.length - 2]) : Shown.field(last, value))
                + twice;
    }

    private static String expected(String keyword, JsonNode rule, JsonNode owner, JsonNode value) {
        return switch (keyword) {
            case "type" -> owner.has("title") ? owner.path("title").asText() : type(rule);
            case "enum" -> words(rule, owner, value);
            case "const" -> Shown.value(rule);
            case "minimum" -> "a number of " + rule.asText() + " or more";
            case "exclusiveMinimum" -> "a number above " + rule.asText();
            case "maximum" -> "a number of " + rule.asText() + " or less";
            case "exclusiveMaximum" -> "a number below " + rule.asText();
            case "minItems" -> "a list of at least " + rule.asText() + (rule.asInt() == 1 ? " entry" : " entries");
            case "maxItems" -> "a list of at most " + rule.asText() + " entries";
            case "uniqueItems" -> "each entry once";
            case "format" -> "a date of the calendar, such as 2026-05-12";
            default -> owner.path("title").asText("what the schema describes");
        };
    }

    private static String words(JsonNode rule, JsonNode owner, JsonNode value) {
        List<String> words = StreamSupport.stream(rule.spliterator(), false)
                .map(JsonNode::asText)
                .toList();
        String wanted = words.size() > LONGEST_LIST ? owner.path("title").asText("a known word") : oneOf(words);
        return wanted + (value.isTextual() ? meant(value.asText(), words) : "");
    }

    private static String oneOf(List<String> words) {
        if (words.isEmpty()) return "no field";
        return words.size() == 1 ? words.get(0) : "one of " + words.stream().collect(Collectors.joining(", "));
    }

    private static String meant(String word, List<String> words) {
        if (words.size() < 2) return "";
        Optional<String> nearest = Nearest.of(word, words);
        return nearest.map(near -> "; did you mean " + Shown.text(near) + "?").orElse("");
    }

    private static String type(JsonNode rule) {
        return switch (rule.asText()) {
            case "string" -> "a text in double quotes";
            case "number" -> "a number";
            case "integer" -> "a whole number";
            case "boolean" -> "true or false";
            case "array" -> "a list [ ... ]";
            case "object" -> "an object { ... }";
            default -> "another type of value";
        };
    }
}
