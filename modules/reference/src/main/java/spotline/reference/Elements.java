package spotline.reference;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The elements hydrogen to californium. Symbols are case-sensitive: Co is cobalt, CO is not an element. */
public final class Elements {
    private static final List<Element> ALL = Table.read(ReferenceData::open, "constants/elements.csv").rows().stream()
            .map(row -> row.make(() ->
                    new Element(row.integer("z"), row.text("symbol"), row.text("name"), row.number("atomic_weight"))))
            .toList();
    private static final Map<String, Element> BY_SYMBOL = bySymbol();

    private Elements() {}

    private static Map<String, Element> bySymbol() {
        Map<String, Element> map = new HashMap<>();
        for (Element element : ALL) map.put(element.symbol(), element);
        return Map.copyOf(map);
    }

    /** In order of atomic number. */
    public static List<Element> all() {
        return ALL;
    }

    public static Optional<Element> bySymbol(String symbol) {
        return Optional.ofNullable(BY_SYMBOL.get(symbol));
    }

    public static Optional<Element> byNumber(int z) {
        return z >= 1 && z <= ALL.size() ? Optional.of(ALL.get(z - 1)) : Optional.empty();
    }
}
