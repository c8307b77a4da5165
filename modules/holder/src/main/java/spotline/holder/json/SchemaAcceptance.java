package spotline.holder.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Whether a value is certainly valid against a schema, found without the schema library, whose start costs several times
 * what the rest of a check does.
 *
 * <p>Shape: a schema and a value in, a yes or a "not certain" out. A yes means that the library finds nothing either; a
 * keyword, a number or a form that is not known here is never accepted, and the library then decides and words the
 * faults. Source: JSON Schema, draft 2020-12, the keywords that the shipped schemas use.
 */
final class SchemaAcceptance {
    private final JsonNode root;

    SchemaAcceptance(JsonNode schema) {
        this.root = schema;
    }

    boolean accepts(JsonNode value) {
        return accepts(root, value);
    }

    private boolean accepts(JsonNode schema, JsonNode value) {
        if (!schema.isObject()) return schema.isBoolean() && schema.booleanValue();
        for (Map.Entry<String, JsonNode> keyword : schema.properties()) {
            if (!accepts(keyword.getKey(), keyword.getValue(), schema, value)) return false;
        }
        return true;
    }

    private boolean accepts(String keyword, JsonNode rule, JsonNode schema, JsonNode value) {
        return switch (keyword) {
            case "$schema", "$id", "$defs", "title", "description", "then", "else" -> true;
            case "$ref" -> referred(rule.asText(), value);
            case "type" -> type(rule, value);
            case "enum" -> any(rule, value);
            case "const" -> value.isTextual() && rule.equals(value);
            case "if" -> accepts(accepts(rule, value) ? schema.path("then") : schema.path("else"), rule, value);
            case "pattern", "format" -> !value.isTextual() || text(keyword, rule.asText(), value.asText());
            case "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum" ->
                !value.isNumber() || bound(keyword, rule.asDouble(), value);
            case "minItems", "maxItems", "uniqueItems", "items" -> !value.isArray() || list(keyword, rule, value);
            case "properties", "additionalProperties", "required", "minProperties", "maxProperties" ->
                !value.isObject() || object(keyword, rule, schema, value);
            default -> false;
        };
    }

    /** A branch is only taken when its condition was decided for certain either way. */
    private boolean accepts(JsonNode branch, JsonNode condition, JsonNode value) {
        return decidable(condition, value) && !branch.isMissingNode() && accepts(branch, value);
    }

    /** Conditions here ask for a type or for a word; anything else is left to the library. */
    private static boolean decidable(JsonNode condition, JsonNode value) {
        boolean asksType = condition.size() == 1 && condition.path("type").isTextual();
        JsonNode shape = condition.path("properties").path("shape");
        boolean asksShape = condition.size() == 2
                && condition.path("required").size() == 1
                && condition.path("properties").size() == 1
                && shape.size() == 1
                && shape.path("const").isTextual()
                && value.isObject();
        return asksType || asksShape;
    }

    private boolean referred(String reference, JsonNode value) {
        return reference.startsWith("#/") && accepts(root.at(reference.substring(1)), value);
    }

    private static boolean type(JsonNode rule, JsonNode value) {
        if (!rule.isArray()) return isType(rule.asText(), value);
        for (JsonNode choice : rule) {
            if (isType(choice.asText(), value)) return true;
        }
        return false;
    }

    private static boolean isType(String type, JsonNode value) {
        return switch (type) {
            case "object" -> value.isObject();
            case "array" -> value.isArray();
            case "string" -> value.isTextual();
            case "boolean" -> value.isBoolean();
            case "integer" -> value.isInt() || value.isLong();
            case "number" -> value.isInt() || value.isLong() || value.isDouble();
            default -> false;
        };
    }

    private static boolean any(JsonNode words, JsonNode value) {
        for (JsonNode word : words) {
            if (word.isTextual() && word.equals(value)) return true;
        }
        return false;
    }

    private static boolean text(String keyword, String rule, String text) {
        if (keyword.equals("pattern"))
            return Pattern.compile(rule).matcher(text).find();
        return rule.equals("date") && CalendarDate.of(text).isPresent();
    }

    private static boolean bound(String keyword, double limit, JsonNode value) {
        double number = value.doubleValue();
        return switch (keyword) {
            case "minimum" -> number >= limit;
            case "maximum" -> number <= limit;
            case "exclusiveMinimum" -> number > limit;
            default -> number < limit;
        };
    }

    private boolean list(String keyword, JsonNode rule, JsonNode value) {
        return switch (keyword) {
            case "minItems" -> value.size() >= rule.asInt();
            case "maxItems" -> value.size() <= rule.asInt();
            case "uniqueItems" -> !rule.asBoolean() || unique(value);
            default -> each(rule, value);
        };
    }

    private boolean each(JsonNode rule, JsonNode values) {
        for (JsonNode value : values) {
            if (!accepts(rule, value)) return false;
        }
        return true;
    }

    /** 1 and 1.0 are one number to a schema: only texts and whole numbers are told apart here. */
    private static boolean unique(JsonNode values) {
        Set<JsonNode> seen = new HashSet<>();
        for (JsonNode value : values) {
            boolean plain = value.isTextual() || value.isInt();
            if (!plain || !seen.add(value)) return false;
        }
        return true;
    }

    private boolean object(String keyword, JsonNode rule, JsonNode schema, JsonNode value) {
        return switch (keyword) {
            case "properties" -> declared(rule, value);
            case "additionalProperties" -> undeclared(rule, schema.path("properties"), value);
            case "required" -> required(rule, value);
            case "minProperties" -> value.size() >= rule.asInt();
            default -> value.size() <= rule.asInt();
        };
    }

    private boolean declared(JsonNode properties, JsonNode value) {
        for (Map.Entry<String, JsonNode> field : value.properties()) {
            Optional<JsonNode> rule = properties.optional(field.getKey());
            if (rule.isPresent() && !accepts(rule.get(), field.getValue())) return false;
        }
        return true;
    }

    private boolean undeclared(JsonNode rule, JsonNode properties, JsonNode value) {
        for (Map.Entry<String, JsonNode> field : value.properties()) {
            if (!properties.has(field.getKey()) && !accepts(rule, field.getValue())) return false;
        }
        return true;
    }

    private static boolean required(JsonNode names, JsonNode value) {
        for (JsonNode name : names) {
            if (!value.has(name.asText())) return false;
        }
        return true;
    }
}
