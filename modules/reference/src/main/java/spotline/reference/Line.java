package spotline.reference;

import static java.util.Objects.requireNonNull;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A photoelectron line: "Ti 2p3/2", or both lines of a doublet together: "Ti 2p". Ordered by atomic number, then orbital.
 *
 * <p>Shape: one line. Units: none. Errors: {@link IllegalArgumentException} for a symbol that is no element's. Source:
 * notation of ISO 18115-1.
 *
 * @param element symbol, case-sensitive
 */
public record Line(String element, Orbital orbital) implements Comparable<Line> {
    private static final Pattern FORM = Pattern.compile("([A-Z][a-z]?)\\s*([1-7]\\s*[spdf].*)");
    private static final Comparator<Line> ORDER =
            Comparator.comparing(Line::atom).thenComparing(Line::orbital);

    public Line {
        requireNonNull(orbital, "orbital");
        if (Elements.bySymbol(element).isEmpty()) {
            throw new IllegalArgumentException("\"" + element + "\" is no element's symbol");
        }
    }

    /** Errors: {@link IllegalArgumentException} unless the text reads like "Ti 2p3/2", "Ti2p" or "C 1s". */
    public static Line parse(String text) {
        Matcher matcher = FORM.matcher(text.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is no line, expected one like C 1s, Ti 2p or Ti 2p3/2");
        }
        return new Line(matcher.group(1), Orbital.parse(matcher.group(2).replaceAll("\\s+", "")));
    }

    /** As {@link #parse}, empty for a text that names no line: for labels that need not be one. */
    public static Optional<Line> find(String text) {
        try {
            return Optional.of(parse(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    public Element atom() {
        return Elements.bySymbol(element).orElseThrow();
    }

    /** The whole nl line this belongs to. */
    public Line whole() {
        return new Line(element, orbital.whole());
    }

    /** The component with j = l + 1/2, which lies at the lower binding energy; an s line is its own. */
    public Line high() {
        return new Line(element, orbital.high());
    }

    /** The component with j = l - 1/2; an s line is its own. */
    public Line low() {
        return new Line(element, orbital.low());
    }

    /** The components this stands for: one, or the two of a doublet with j = l + 1/2 first. */
    public List<Line> members() {
        return orbital.members().stream().map(o -> new Line(element, o)).toList();
    }

    // Written out as that of Orbital is, and for the same reason.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Line o && element.equals(o.element) && orbital.equals(o.orbital);
    }

    @Override
    public int hashCode() {
        return 31 * element.hashCode() + orbital.hashCode();
    }

    @Override
    public int compareTo(Line other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return element + " " + orbital;
    }
}
