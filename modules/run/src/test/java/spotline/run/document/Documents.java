package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import spotline.core.ReadException;

/** Documents made up for tests, and the demonstration. */
final class Documents {
    static final Path DEMO = Path.of("../../demo-spectra/footbridge-bearing.json");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private Documents() {}

    static JsonNode json(String text) {
        try {
            return MAPPER.readTree(text.replace('\'', '"'));
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalArgumentException(e);
        }
    }

    static ObjectNode object(String text) {
        return (ObjectNode) json(text);
    }

    /** Three spots of two families; spot 3 has a patch of its own. */
    static RunDocument small() throws ReadException {
        return RunDocument.of(
                "small.json",
                object("{'format': 'spotline-holder-run/1', 'title': 'invented',"
                        + "'families': {'oxide': {'narrow': {'background': {'kind': 'linear'}}}},"
                        + "'spots': ["
                        + "{'id': '1', 'sample': {'name': 'a', 'family': 'oxide'}, 'spectra': [{'file': 'one.txt'}]},"
                        + "{'id': '2', 'sample': {'name': 'b', 'family': 'oxide'}, 'spectra': [{'file': 'two.txt', 'role': 'main'}]},"
                        + "{'id': '3', 'sample': {'name': 'c'}, 'spectra': [{'file': 'three.txt'}],"
                        + " 'treatment': {'charge': {'method': 'none'}}}]}"),
                1);
    }

    static RunDocument demo() throws ReadException {
        return RunDocument.read(DEMO, 1);
    }
}
