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
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import spotline.core.Place;
import spotline.core.ReadException;

/** The text of one JSON file and what can be said of it before any schema: encoding, syntax, repeated fields. */
final class JsonText {
    private final String name;
    private final String text;
    private final JsonLimits limits;
    private final JsonMapper mapper;

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
        this.mapper = new JsonMapper(
                JsonFactory.builder().streamReadConstraints(constraints).build());
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
    static JsonNode lenientTree(String text) {
        try {
            return new JsonMapper().readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The value the file holds. Errors: {@link ReadException} at the line where it stops being JSON. */
    JsonNode tree() throws ReadException {
        try {
            return mapper.readTree(text);
        } catch (JsonProcessingException e) {
            throw syntaxFault(e);
        }
    }

    /** Fields given twice in one object, and numbers beyond a double. Errors: as {@link #tree()}. */
    List<ReadException> repeatedFieldsAndHugeNumbers() throws ReadException {
        List<ReadException> faults = new ArrayList<>();
        Deque<Set<String>> open = new ArrayDeque<>();
        boolean ended = false;
        try (JsonParser parser = mapper.createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (ended) throw afterTheEnd(parser);
                switch (token) {
                    case START_OBJECT, START_ARRAY -> open.push(new HashSet<>());
                    case END_OBJECT, END_ARRAY -> open.pop();
                    case FIELD_NAME -> {
                        if (!open.element().add(parser.currentName())) faults.add(repeated(parser));
                    }
                    case VALUE_NUMBER_FLOAT -> {
                        if (Double.isInfinite(parser.getDoubleValue())) faults.add(huge(parser));
                    }
                    default -> {}
                }
                ended = open.isEmpty();
            }
        } catch (JsonProcessingException e) {
            throw syntaxFault(e);
        } catch (CharacterCodingException e) {
            throw new ReadException(Place.file(name), "text that is not UTF-8", "text in UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (!ended) throw new ReadException(Place.file(name), "an empty file", "an object { ... }");
        return faults;
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
