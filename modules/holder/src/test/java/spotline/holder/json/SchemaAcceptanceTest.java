package spotline.holder.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ContainerNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplates;

class SchemaAcceptanceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final CheckedJson RUN =
            CheckedJson.of("spotline-holder-run", 1, HolderRunReader.SCHEMA, JsonLimits.DEFAULT);
    private static final SchemaAcceptance ACCEPTANCE =
            new SchemaAcceptance(CheckedJson.ownResource(HolderRunReader.SCHEMA));

    private static ObjectNode run(String name) throws IOException {
        try (InputStream in = SchemaAcceptanceTest.class.getResourceAsStream("/spotline/holder/" + name)) {
            return (ObjectNode) MAPPER.readTree(Objects.requireNonNull(in));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"good-holder-run.json", "full-holder-run.json"})
    void aGoodFileIsAcceptedAndTheLibraryAgrees(String name) throws IOException {
        assertThat(ACCEPTANCE.accepts(run(name))).isTrue();
        assertThat(RUN.libraryErrors(run(name))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"flat-bar", "stub-end-bar", "temperature-stage", "cold-stub-bar", "rotating-stage"})
    void aShippedTemplateIsAcceptedAndReadsAsItShips(String name) throws Exception {
        String resource = "/spotline/holders/" + name + ".json";
        ObjectNode template = CheckedJson.ownResource(resource);
        CheckedJson json = CheckedJson.of("spotline-holder-template", 1, HolderTemplates.SCHEMA, JsonLimits.DEFAULT);
        assertThat(new SchemaAcceptance(CheckedJson.ownResource(HolderTemplates.SCHEMA)).accepts(template))
                .isTrue();
        assertThat(json.libraryErrors(template)).isEmpty();
        assertThat(HolderTemplates.read(resource, template.toString().getBytes(UTF_8)))
                .isEqualTo(HolderTemplates.shipped(name));
    }

    /** One value somewhere is changed: nothing may be accepted that the library faults. */
    @Property(tries = 400, seed = "31")
    void nothingIsAcceptedThatTheLibraryFaults(@ForAll @LongRange(min = 0, max = 1_000_000) long seed)
            throws IOException {
        Random random = new Random(seed);
        ObjectNode file = run(random.nextBoolean() ? "good-holder-run.json" : "full-holder-run.json");
        List<ContainerNode<?>> containers = new ArrayList<>();
        collect(file, containers);
        change(containers.get(random.nextInt(containers.size())), random);
        if (ACCEPTANCE.accepts(file)) {
            assertThat(RUN.libraryErrors(file)).as("%s", file).isEmpty();
        }
    }

    private static void collect(JsonNode node, List<ContainerNode<?>> into) {
        if (node instanceof ContainerNode<?> container && !container.isEmpty()) into.add(container);
        node.forEach(child -> collect(child, into));
    }

    private static void change(ContainerNode<?> container, Random random) throws IOException {
        String[] values = {
            "0",
            "-1",
            "1",
            "1.0",
            "1.5",
            "-400",
            "1e6",
            "1e300",
            "12345678901234567890",
            "true",
            "null",
            "{}",
            "[]",
            "[1, 1]",
            "[1, 1.0]",
            "\"\"",
            "\" \"",
            "\"polygon\"",
            "\"flat\"",
            "\"2026-02-30\"",
            "\"+12026-01-01\"",
            "{\"power\": 1}",
            "{\"shape\": \"polygon\"}",
            "{\"x\": 1}",
            "[{\"id\": \"x\"}]"
        };
        JsonNode value = MAPPER.readTree(values[random.nextInt(values.length)]);
        int at = random.nextInt(container.size());
        if (container instanceof ArrayNode array) {
            if (random.nextInt(4) == 0) array.add(array.get(at));
            else array.set(at, value);
        } else if (container instanceof ObjectNode object) {
            List<String> names = new ArrayList<>();
            for (Map.Entry<String, JsonNode> field : object.properties()) names.add(field.getKey());
            String name = names.get(at);
            switch (random.nextInt(4)) {
                case 0 -> object.remove(name);
                case 1 -> object.set("other", value);
                default -> object.set(name, value);
            }
        }
    }

    @Test
    void whatItDoesNotKnowItDoesNotAccept() throws IOException {
        assertThat(accepts("{ \"oneOf\": [ {} ] }", "1")).isFalse();
        assertThat(accepts("{ \"$ref\": \"other.json\" }", "1")).isFalse();
        assertThat(accepts("{ \"if\": { \"minimum\": 3 }, \"then\": {}, \"else\": {} }", "1"))
                .isFalse();
        assertThat(accepts("{ \"type\": \"integer\" }", "1.0")).isFalse();
        assertThat(accepts("{ \"type\": \"integer\" }", "12345678901234567890")).isFalse();
        assertThat(accepts("{ \"format\": \"time\" }", "\"12:00\"")).isFalse();
        assertThat(accepts("false", "1")).isFalse();
        assertThat(accepts("true", "1")).isTrue();
    }

    private static boolean accepts(String schema, String value) throws IOException {
        return new SchemaAcceptance(MAPPER.readTree(schema)).accepts(MAPPER.readTree(value));
    }

    /** Against java.time, which a formatter's start makes too slow to use. */
    @Property(tries = 500, seed = "32")
    void aDayIsReadAsTheCalendarReadsIt(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        String text = "%04d-%02d-%02d".formatted(random.nextInt(10000), random.nextInt(14), random.nextInt(33));
        if (random.nextInt(5) == 0) text = text.replace('0', 'O');
        if (random.nextInt(5) == 0) text = text.substring(1);
        assertThat(CalendarDate.of(text)).isEqualTo(parsed(text));
    }

    private static Optional<LocalDate> parsed(String text) {
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }
}
