package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MergePatchTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** RFC 7396, appendix A. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '`',
            value = {
                "{\"a\":\"b\"}; {\"a\":\"c\"}; {\"a\":\"c\"}",
                "{\"a\":\"b\"}; {\"b\":\"c\"}; {\"a\":\"b\",\"b\":\"c\"}",
                "{\"a\":\"b\"}; {\"a\":null}; {}",
                "{\"a\":\"b\",\"b\":\"c\"}; {\"a\":null}; {\"b\":\"c\"}",
                "{\"a\":[\"b\"]}; {\"a\":\"c\"}; {\"a\":\"c\"}",
                "{\"a\":\"c\"}; {\"a\":[\"b\"]}; {\"a\":[\"b\"]}",
                "{\"a\":{\"b\":\"c\"}}; {\"a\":{\"b\":\"d\",\"c\":null}}; {\"a\":{\"b\":\"d\"}}",
                "{\"a\":[{\"b\":\"c\"}]}; {\"a\":[1]}; {\"a\":[1]}",
                "[\"a\",\"b\"]; [\"c\",\"d\"]; [\"c\",\"d\"]",
                "{\"a\":\"b\"}; [\"c\"]; [\"c\"]",
                "{\"a\":\"foo\"}; null; null",
                "{\"a\":\"foo\"}; \"bar\"; \"bar\"",
                "{\"e\":null}; {\"a\":1}; {\"e\":null,\"a\":1}",
                "[1,2]; {\"a\":\"b\",\"c\":null}; {\"a\":\"b\"}",
                "{}; {\"a\":{\"bb\":{\"ccc\":null}}}; {\"a\":{\"bb\":{}}}"
            })
    void theExamplesOfTheStandard(String original, String patch, String result) throws Exception {
        JsonNode target = MAPPER.readTree(original);
        JsonNode change = MAPPER.readTree(patch);
        assertThat(MergePatch.apply(target, change)).isEqualTo(MAPPER.readTree(result));
        assertThat(target).as("target").isEqualTo(MAPPER.readTree(original));
        assertThat(change).as("patch").isEqualTo(MAPPER.readTree(patch));
    }

    @Test
    void theResultSharesNothingWithThePatch() throws Exception {
        JsonNode patch = MAPPER.readTree("{\"a\":{\"b\":[1]}}");
        JsonNode merged = MergePatch.apply(MAPPER.readTree("{}"), patch);
        ((com.fasterxml.jackson.databind.node.ArrayNode) merged.at("/a/b")).add(2);
        assertThat(patch.at("/a/b")).hasSize(1);
    }
}
