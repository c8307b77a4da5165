package spotline.analysis.identify;

import java.util.Locale;

/** How sure it is that an element is there. */
public enum Verdict {
    /** Two lines, or one and its Auger group, or the only line that could reach detection. */
    PRESENT,
    POSSIBLE;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
