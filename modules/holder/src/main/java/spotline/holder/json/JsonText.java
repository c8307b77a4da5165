package spotline.holder.json;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.util.ArrayList;
import java.util.List;
import spotline.core.Place;
import spotline.core.ReadException;

/** The text of one JSON file and what can be said of it before any schema: encoding, syntax, repeated fields. */
final class JsonText {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final String name;
    private final String text;
    private final JsonLimits limits;
    private final JsonFactory factory;

    private JsonText(String name, String text, JsonLimits limits) {
        this.name = name;
        this.text = text;
        this.limits = limits;
        StreamReadConstraints constraints = StreamReadConstraints.builder()
                .maxNestingDepth(limits.maxDepth())
                .maxNumberLength(limits.maxNumberLength())
                .maxNameLength(limits.maxBytes())
                .maxStringLength(limits.maxBytes())
                .build();
        this.factory = JsonFactory.builder().streamReadConstraints(constraints).build();
    }

    /** Errors: {@link ReadException} with the line of the first byte that is not UTF-8. */
    static JsonText decode(String name, byte[] bytes, JsonLimits limits) throws ReadException {
        CharsetDecoder decoder = UTF_8.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        CoderResult result = decoder.decode(in, out, true);
        out.flip();
        String text = out.toString();
        if (result.isError()) {
            int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
            throw new ReadException(Place.line(name, line), "a byte that is not UTF-8", "text in UTF-8");
        }
        return new JsonText(name, text.startsWith("\uFEFF") ? text.substring(1) : text, limits);
    }

    /** For our own resources, whose faults are ours. */
    static ObjectNode ownTree(String name, byte[] bytes) {
        try {
            if (decode(name, bytes, JsonLimits.DEFAULT).parse().tree() instanceof ObjectNode tree) return tree;
            throw new IllegalStateException("a resource of the program is no JSON object: " + name);
        } catch (ReadException e) {
            throw new IllegalStateException("a resource of the program is wrong: " + e.getMessage(), e);
        }
    }

    /**
     * The value a file holds.
     *
     * @param faults fields given twice in one object, and numbers beyond a double
     */
    record Parsed(JsonNode tree, List<ReadException> faults) {}

    /**
     * The tree is built here, token by token: a mapper would take longer to start than everything else together.
     *
     * <p>Errors: {@link ReadException} at the line where the text stops being JSON.
     */
    Parsed parse() throws ReadException {
        List<ReadException> faults = new ArrayList<>();
        try (JsonParser parser = factory.createParser(text)) {
            if (parser.nextToken() == null) {
                throw new ReadException(Place.file(name), "an empty file", "an object { ... }");
            }
            JsonNode tree = value(parser, faults);
            if (parser.nextToken() != null) throw afterTheEnd(parser);
            return new Parsed(tree, faults);
        } catch (JsonProcessingException e) {
            throw syntaxFault(e);
        } catch (CharacterCodingException e) {
            throw new ReadException(Place.file(name), "text that is not UTF-8", "text in UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private JsonNode value(JsonParser parser, List<ReadException> faults) throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(parser, faults);
            case START_ARRAY -> array(parser, faults);
            case VALUE_STRING -> NODES.textNode(parser.getText());
            case VALUE_NUMBER_INT -> whole(parser);
            case VALUE_NUMBER_FLOAT -> {
                double value = parser.getDoubleValue();
                if (Double.isInfinite(value)) faults.add(huge(parser));
                // The file is refused; until all its faults are found the schema library must not meet an infinity.
                yield NODES.numberNode(Math.max(-Double.MAX_VALUE, Math.min(Double.MAX_VALUE, value)));
            }
            case VALUE_TRUE -> NODES.booleanNode(true);
            case VALUE_FALSE -> NODES.booleanNode(false);
            default -> NODES.nullNode();
        };
    }

    private JsonNode object(JsonParser parser, List<ReadException> faults) throws IOException {
        ObjectNode object = NODES.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String field = parser.currentName();
            if (object.has(field)) faults.add(repeated(parser));
            parser.nextToken();
            object.set(field, value(parser, faults));
        }
        return object;
    }

    private JsonNode array(JsonParser parser, List<ReadException> faults) throws IOException {
        ArrayNode array = NODES.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY) array.add(value(parser, faults));
        return array;
    }

    private static JsonNode whole(JsonParser parser) throws IOException {
        return switch (parser.getNumberType()) {
            case INT -> NODES.numberNode(parser.getIntValue());
            case LONG -> NODES.numberNode(parser.getLongValue());
            default -> NODES.numberNode(parser.getBigIntegerValue());
        };
    }

    private ReadException afterTheEnd(JsonParser parser) {
        int line = parser.currentTokenLocation().getLineNr();
        return new ReadException(
                Place.line(name, line), "more text after the end of the JSON value", "one value a file");
    }

    private ReadException repeated(JsonParser parser) throws IOException {
        return new ReadException(
                place(parser),
                "field " + Shown.text(parser.currentName()) + " given a second time, in line "
                        + parser.currentTokenLocation().getLineNr(),
                "each field once");
    }

    private ReadException huge(JsonParser parser) throws IOException {
        return new ReadException(
                place(parser), "a number too large to hold, " + Shown.cut(parser.getText()), "a number below 1e308");
    }

    private Place place(JsonParser parser) {
        return Place.pointer(name, parser.getParsingContext().pathAsPointer().toString());
    }

    private ReadException syntaxFault(JsonProcessingException e) {
        int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
        Place place = line > 0 ? Place.line(name, line) : Place.file(name);
        if (e instanceof StreamConstraintsException) {
            return new ReadException(
                    place,
                    "lists or objects nested too deep, or a number or name too long",
                    "at most " + limits.maxDepth() + " levels and numbers of at most " + limits.maxNumberLength()
                            + " characters");
        }
        if (e instanceof JsonEOFException) {
            return new ReadException(
                    place, "the end of the file inside an object, list or text", "its closing }, ] or \"");
        }
        int column = e.getLocation() == null ? 0 : e.getLocation().getColumnNr();
        return new ReadException(
                place,
                "text that is not JSON near column " + column,
                "JSON: names and texts in double quotes, a comma between entries and none after the last, no comments");
    }
}
