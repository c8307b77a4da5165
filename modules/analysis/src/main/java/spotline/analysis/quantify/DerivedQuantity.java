package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spotline.core.Estimate;

/**
 * A ratio or a sum of atomic fractions: {@code "O/Si"}, {@code "(O+N)/C"}, {@code "Na+K"}.
 *
 * <p>Errors: {@link IllegalArgumentException} unless the text is a sum of symbols, or two sums with a stroke between.
 * Source: GUM (JCGM 100:2008) 5.2.2; shared factors cancel where they should.
 *
 * @param name as written
 */
public record DerivedQuantity(String name, List<String> numerator, List<String> denominator) {
    public DerivedQuantity {
        numerator = List.copyOf(numerator);
        denominator = List.copyOf(denominator);
        if (numerator.isEmpty()) throw new IllegalArgumentException("\"" + name + "\" names no element");
    }

    public static DerivedQuantity parse(String text) {
        String[] sides = text.replace(" ", "").split("/", -1);
        if (sides.length > 2) {
            throw new IllegalArgumentException("\"" + text + "\" has more than one stroke, expected a form like O/Si");
        }
        List<String> below = sides.length == 2 ? symbols(sides[1], text) : List.of();
        return new DerivedQuantity(text.strip(), symbols(sides[0], text), below);
    }

    private static List<String> symbols(String side, String text) {
        String inner = side.startsWith("(") && side.endsWith(")") ? side.substring(1, side.length() - 1) : side;
        List<String> symbols = Arrays.asList(inner.split("\\+", -1));
        for (String symbol : symbols) {
            if (spotline.reference.Elements.bySymbol(symbol).isEmpty()) {
                throw new IllegalArgumentException("\"" + symbol + "\" in \"" + text + "\" is no element's symbol");
            }
        }
        return symbols;
    }

    public boolean isRatio() {
        return !denominator.isEmpty();
    }

    /** Empty where an element of it has no number, or there is nothing to divide by. */
    public Optional<Estimate> of(List<Quantified> composition) {
        Optional<Estimate> above = sum(numerator, composition);
        if (!isRatio() || above.isEmpty()) return above;
        return sum(denominator, composition)
                .filter(below -> below.value() > 0)
                .map(below -> above.get().dividedBy(below));
    }

    private static Optional<Estimate> sum(List<String> symbols, List<Quantified> composition) {
        List<Estimate> parts = new ArrayList<>();
        for (String symbol : symbols) {
            Optional<Estimate> part = composition.stream()
                    .filter(row -> row.element().equals(symbol))
                    .findFirst()
                    .flatMap(Quantified::atomicPercent);
            if (part.isEmpty()) return Optional.empty();
            parts.add(part.get());
        }
        return Optional.of(Estimate.sum(parts));
    }
}
