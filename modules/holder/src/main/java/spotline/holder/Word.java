package spotline.holder;

import java.util.Locale;

/** A choice that a holder-run file names by a word. */
public interface Word {
    /** The enum constant's own name. */
    String name();

    /** The word in the file and on screen: lower case, joined by hyphens. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
