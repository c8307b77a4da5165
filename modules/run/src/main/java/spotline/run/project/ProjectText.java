package spotline.run.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import spotline.core.Place;
import spotline.core.ReadException;

/** The JSON text of a project's own files, which people may read but only the program writes. */
final class ProjectText {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private ProjectText() {}

    /** Errors: {@link ReadException} when the bytes are no JSON object. */
    static ObjectNode tree(String name, byte[] bytes) throws ReadException {
        try {
            JsonNode tree = MAPPER.readTree(bytes);
            if (tree instanceof ObjectNode object) return object;
            throw new ReadException(Place.file(name), "no JSON object", "an object { ... }");
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
            Place place = line > 0 ? Place.line(name, line) : Place.file(name);
            throw new ReadException(place, "text that is not JSON", "the JSON that the program wrote");
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "bytes that cannot be read", "JSON in UTF-8");
        }
    }

    static byte[] bytes(JsonNode tree) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        try {
            return (MAPPER.writer(printer).writeValueAsString(tree) + "\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree in memory could not be written", e);
        }
    }
}
