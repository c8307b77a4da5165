package spotline.viewer.model;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spotline.core.Decimal;
import spotline.run.document.SpotException;

/** In which settings a spot differs from its family and the holder, for a person. */
final class OwnSettings {
    private OwnSettings() {}

    /** By spot, in the order of the run; a spot without settings of its own is not in it. */
    static Map<String, String> of(List<SpotException> exceptions, Words words) {
        Map<String, List<String>> bySpot = new LinkedHashMap<>();
        for (SpotException e : exceptions) {
            List<String> told = bySpot.computeIfAbsent(e.spot(), s -> new ArrayList<>());
            if (e.here().isEmpty()) told.add(words.of("own.left-out", path(e.setting())));
            else tell(path(e.setting()), e.here().get(), e.elsewhere(), words, told);
        }
        return bySpot.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey, e -> String.join("; ", e.getValue()), (a, b) -> a, LinkedHashMap::new));
    }

    private static void tell(
            String name, JsonNode value, Optional<JsonNode> elsewhere, Words words, List<String> told) {
        if (value.path("lowEv").isNumber() && value.path("highEv").isNumber()) {
            told.add(words.of("own.window", name, number(value.path("lowEv")), number(value.path("highEv"))));
        } else if (value.has("components")) {
            told.add(words.of("own.model", name));
        } else if (value.isObject()) {
            value.properties()
                    .forEach(p -> tell(joined(name, p.getKey()), p.getValue(), Optional.empty(), words, told));
        } else if (elsewhere.filter(JsonNode::isValueNode).isPresent()) {
            told.add(words.of("own.instead", name, shown(value), shown(elsewhere.get())));
        } else {
            told.add(words.of("own.value", name, shown(value)));
        }
    }

    private static String path(String pointer) {
        String name = "";
        for (String part : pointer.split("/")) {
            if (!part.isEmpty()) name = joined(name, part.replace("~1", "/").replace("~0", "~"));
        }
        return name;
    }

    /** Lines stand in the settings under a word of their own, which tells a person nothing. */
    private static String joined(String name, String part) {
        if (name.isEmpty()) return part;
        return name.equals("lines") ? part : name + " " + part;
    }

    private static String shown(JsonNode value) {
        if (value.isNumber()) return number(value);
        return value.isTextual() ? value.textValue() : value.toString();
    }

    private static String number(JsonNode value) {
        return Decimal.significant(value.doubleValue(), 6);
    }
}
