package spotline.report.plain;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the name of a chemical state means in words, as far as it is one of those in common use. */
public final class PlainState {
    private static final Map<String, String> WORDS = words();

    private PlainState() {}

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("c-c, c-h", "carbon and hydrogen only, as in oil, wax, plastics");
        words.put("c-c/c-h", "carbon and hydrogen only, as in oil, wax, plastics");
        words.put("c-o", "one bond to oxygen, as in alcohols");
        words.put("c=o", "two bonds to oxygen, as in ketones");
        words.put("o-c=o", "three bonds to oxygen, as in acids and esters");
        words.put("carbonate", "as in chalk and soda");
        words.put("cf2", "with two fluorine atoms, as in PTFE");
        words.put("c-f", "bound to carbon, as in PTFE");
        return Map.copyOf(words);
    }

    /** Empty where the name says it itself or its meaning is not known. */
    public static String meaning(String state) {
        String name = state.toLowerCase(java.util.Locale.ROOT).replace('\u2013', '-');
        String known = WORDS.get(name);
        if (known != null) return known;
        List<String> parts = Stream.of(name.split(" or ", -1)).map(WORDS::get).toList();
        if (parts.size() < 2 || parts.stream().anyMatch(java.util.Objects::isNull)) return "";
        return parts.stream().collect(Collectors.joining(", or "));
    }
}
