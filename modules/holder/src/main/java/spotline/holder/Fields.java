package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import spotline.holder.json.CalendarDate;

/**
 * The fields of a JSON object that a schema has already accepted: present ones have the right type. Plain loops and no
 * lambdas, since each lambda costs a quarter of a millisecond when a program starts.
 */
record Fields(JsonNode node) {
    boolean has(String name) {
        return node.has(name);
    }

    /** Blank text says no more than no text. */
    Optional<String> text(String name) {
        String text = mustText(name);
        return text.isBlank() ? Optional.empty() : Optional.of(text);
    }

    String mustText(String name) {
        return node.path(name).asText();
    }

    OptionalDouble number(String name) {
        return node.has(name) ? OptionalDouble.of(mustNumber(name)) : OptionalDouble.empty();
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

    /** The schema knows years beyond four digits, which nobody writes; they are read all the same. */
    Optional<LocalDate> date(String name) {
        Optional<String> text = text(name);
        if (text.isEmpty()) return Optional.empty();
        Optional<LocalDate> day = CalendarDate.of(text.get());
        return day.isPresent() ? day : Optional.of(LocalDate.parse(text.get()));
    }

    Optional<PointMm> point(String name) {
        return node.has(name) ? Optional.of(must(name).point()) : Optional.empty();
    }

    PointMm point() {
        return new PointMm(mustNumber("x"), mustNumber("y"));
    }

    Optional<AreaMm> area(String name) {
        if (!node.has(name)) return Optional.empty();
        Fields area = must(name);
        return Optional.of(new AreaMm(area.mustNumber("x"), area.mustNumber("y")));
    }

    /** An object, without a field where it is absent. */
    Fields must(String name) {
        return new Fields(node.path(name));
    }

    List<Fields> entries(String name) {
        List<Fields> entries = new ArrayList<>();
        for (JsonNode entry : node.path(name)) entries.add(new Fields(entry));
        return entries;
    }

    List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        for (JsonNode entry : node.path(name)) texts.add(entry.asText());
        return texts;
    }

    List<Integer> integers(String name) {
        List<Integer> integers = new ArrayList<>();
        for (JsonNode entry : node.path(name)) integers.add(entry.asInt());
        return integers;
    }

    /** A merge patch; an absent one is the empty patch, which changes nothing. */
    ObjectNode patch(String name) {
        return node.path(name) instanceof ObjectNode patch ? patch.deepCopy() : JsonNodeFactory.instance.objectNode();
    }

    <E extends Enum<E> & Word> E word(String name, E absent) {
        return node.has(name) ? choice(mustText(name), absent) : absent;
    }

    /** @param any one of the choices, to say which they are */
    static <E extends Enum<E> & Word> E choice(String word, E any) {
        for (E choice : any.getDeclaringClass().getEnumConstants()) {
            if (choice.word().equals(word)) return choice;
        }
        throw new IllegalStateException("the schema let pass the word " + word);
    }
}
