package spotline.reference;

import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A subshell of an atom (2p3/2) or both subshells of one n and l together (2p).
 *
 * <p>Shape: one orbital. Units: none. Errors: {@link IllegalArgumentException} for quantum numbers that do not exist.
 * Source: notation of ISO 18115-1.
 *
 * @param n principal quantum number, 1 to 7
 * @param l orbital quantum number, 0 to 3
 * @param twoJ twice the total angular momentum, 2l - 1 or 2l + 1; 0 for the whole nl. An s orbital has one subshell,
 *     which is the whole: its twoJ is always held as 0
 */
public record Orbital(int n, int l, int twoJ) implements Comparable<Orbital> {
    private static final String LETTERS = "spdf";
    private static final String SHELLS = "KLMNOPQ";
    private static final Pattern FORM = Pattern.compile("([1-7])([spdf])(?:([1357])/2)?");
    private static final Comparator<Orbital> ORDER =
            Comparator.comparingInt(Orbital::n).thenComparingInt(Orbital::l).thenComparingInt(Orbital::twoJ);

    public Orbital {
        if (n < 1 || n > 7 || l < 0 || l > 3 || l >= n) {
            throw new IllegalArgumentException("no orbital has n = " + n + " and l = " + l);
        }
        boolean fits = twoJ == 0 || twoJ == 2 * l + 1 || (l > 0 && twoJ == 2 * l - 1);
        if (!fits)
            throw new IllegalArgumentException("no " + n + LETTERS.charAt(l) + " orbital has j = " + twoJ + "/2");
        if (l == 0) twoJ = 0;
    }

    /** Errors: {@link IllegalArgumentException} unless the text reads like "2p3/2", "2p" or "1s". */
    public static Orbital parse(String text) {
        Matcher matcher = FORM.matcher(text.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + text + "\" is no orbital, expected one like 1s, 2p or 2p3/2");
        }
        String twoJ = matcher.group(3);
        return new Orbital(
                Integer.parseInt(matcher.group(1)),
                LETTERS.indexOf(matcher.group(2)),
                twoJ == null ? 0 : Integer.parseInt(twoJ));
    }

    public char letter() {
        return LETTERS.charAt(l);
    }

    /** True for the whole nl, and for every s orbital. */
    public boolean isWhole() {
        return twoJ == 0;
    }

    public Orbital whole() {
        return new Orbital(n, l, 0);
    }

    /** The subshell with j = l + 1/2, which lies at the lower binding energy; an s orbital is its own. */
    public Orbital high() {
        return l == 0 ? this : new Orbital(n, l, 2 * l + 1);
    }

    /** The subshell with j = l - 1/2; an s orbital is its own. */
    public Orbital low() {
        return l == 0 ? this : new Orbital(n, l, 2 * l - 1);
    }

    /** The subshells this stands for: one, or the two of a whole nl with j = l + 1/2 first. */
    public List<Orbital> members() {
        return l > 0 && isWhole() ? List.of(high(), low()) : List.of(this);
    }

    /** Name in X-ray notation: K, L1, L3; the two of a whole nl together: L23, M45. */
    public String shell() {
        String shell = String.valueOf(SHELLS.charAt(n - 1));
        if (n == 1) return shell;
        if (l == 0) return shell + 1;
        if (isWhole()) return shell + (2 * l) + (2 * l + 1);
        return shell + (twoJ == 2 * l - 1 ? 2 * l : 2 * l + 1);
    }

    // Written out: the tables are keyed by it, and what a record generates is slow until it is compiled.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Orbital o && n == o.n && l == o.l && twoJ == o.twoJ;
    }

    @Override
    public int hashCode() {
        return (n << 8) | (l << 4) | twoJ;
    }

    @Override
    public int compareTo(Orbital other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        String whole = n + String.valueOf(letter());
        return isWhole() ? whole : whole + twoJ + "/2";
    }
}
