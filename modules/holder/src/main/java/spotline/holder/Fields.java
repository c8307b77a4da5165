package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import spotline.holder.json.CalendarDate;

/** The fields of a JSON object that a schema has already accepted: present ones have the right type. */
record Fields(JsonNode node) {
    /** Blank text says no more than no text. */
    Optional<String> text(String name) {
        return Optional.of(node.path(name).asText()).filter(text -> !text.isBlank());
    }

    String mustText(String name) {
        return node.path(name).asText();
    }

    OptionalDouble number(String name) {
        return node.has(name) ? OptionalDouble.of(node.path(name).asDouble()) : OptionalDouble.empty();
    }

    double mustNumber(String name) {
        return node.path(name).asDouble();
    }

    OptionalInt integer(String name) {
        return node.has(name) ? OptionalInt.of(node.path(name).asInt()) : OptionalInt.empty();
    }

    Optional<Boolean> truth(String name) {
        return node.has(name) ? Optional.of(node.path(name).asBoolean()) : Optional.empty();
    }

    Optional<LocalDate> date(String name) {
        return text(name).map(text -> CalendarDate.of(text).orElseGet(() -> LocalDate.parse(text)));
    }

    Optional<Fields> object(String name) {
        return node.has(name) ? Optional.of(new Fields(node.path(name))) : Optional.empty();
    }

    <T> List<T> list(String name, Function<Fields, T> entry) {
        return stream(name).map(Fields::new).map(entry).toList();
    }

    List<String> texts(String name) {
        return stream(name).map(JsonNode::asText).toList();
    }

    List<Integer> integers(String name) {
        return stream(name).map(JsonNode::asInt).toList();
    }

    private Stream<JsonNode> stream(String name) {
        return StreamSupport.stream(node.path(name).spliterator(), false);
    }

    /** A merge patch; an absent one is the empty patch, which changes nothing. */
    ObjectNode patch(String name) {
        return node.path(name) instanceof ObjectNode patch ? patch.deepCopy() : JsonNodeFactory.instance.objectNode();
    }

    <E extends Enum<E> & Word> E word(String name, E absent) {
        if (!node.has(name)) return absent;
        String word = node.path(name).asText();
        for (E choice : absent.getDeclaringClass().getEnumConstants()) {
            if (choice.word().equals(word)) return choice;
        }
        throw new IllegalStateException("the schema let pass the word " + word + " for " + name);
    }
}
