package spotline.report.facts;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spotline.core.Decimal;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.run.document.SpotException;

/**
 * Spots that are not treated as their sample's family and the holder say, and how tables mark them: numbers beside one
 * another are compared, and whoever compares has to see where they were not made alike.
 *
 * @param exceptions in the order of the spots, then of the settings
 */
public record OwnSettings(List<SpotException> exceptions) {
    /** Stands behind the spot in a table. */
    public static final String MARK = "*";

    public OwnSettings {
        exceptions = List.copyOf(exceptions);
    }

    public static OwnSettings of(RunResult result) {
        return new OwnSettings(SpotException.of(result.plan().file()));
    }

    public boolean at(String spot) {
        return exceptions.stream().anyMatch(e -> e.spot().equals(spot));
    }

    /** Spots for a cell of a table, those with settings of their own marked: "1, 2*". */
    public String marked(List<String> spots) {
        return marked(spots, ", ");
    }

    public String marked(List<String> spots, String between) {
        return spots.stream().map(s -> at(s) ? s + MARK : s).collect(Collectors.joining(between));
    }

    /** What to say under a table of these spots: a sentence a spot with settings of its own. */
    public List<String> notes(List<String> spots) {
        Map<String, List<String>> bySpot = new LinkedHashMap<>();
        for (SpotException e : exceptions) {
            if (!spots.contains(e.spot())) continue;
            String elsewhere = e.elsewhere().map(v -> " instead of " + value(v)).orElse("");
            bySpot.computeIfAbsent(e.spot(), s -> new ArrayList<>())
                    .add(setting(e) + " " + e.here().map(OwnSettings::value).orElse("left out") + elsewhere);
        }
        List<String> notes = new ArrayList<>();
        bySpot.forEach((spot, told) -> notes.add(
                Shown.text(MARK + " Spot " + spot + " has settings of its own: " + String.join("; ", told) + ".")));
        return notes;
    }

    /** The way to a setting in words: {@code /windows/lines/C 1s/lowEv} is "windows, C 1s, lowEv". */
    public static String setting(SpotException exception) {
        List<String> names = new ArrayList<>();
        for (String part : exception.setting().split("/", -1)) {
            // Lines stand under a word of their own, which tells a person nothing.
            if (!part.isEmpty() && !part.equals("lines"))
                names.add(part.replace("~1", "/").replace("~0", "~"));
        }
        return String.join(", ", names);
    }

    /** A value as a table holds it; empty for none. */
    public static String value(Optional<JsonNode> value) {
        return value.map(OwnSettings::value).orElse("");
    }

    private static String value(JsonNode value) {
        if (value.has("components")) return "a model of its own";
        if (value.isFloatingPointNumber()) return Decimal.text(value.doubleValue());
        if (!value.isObject()) return value.isTextual() ? value.textValue() : value.toString();
        List<String> parts = new ArrayList<>();
        value.properties().forEach(p -> parts.add(p.getKey() + " " + value(p.getValue())));
        return parts.isEmpty() ? "none" : String.join(", ", parts);
    }
}
