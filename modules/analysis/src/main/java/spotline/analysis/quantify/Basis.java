package spotline.analysis.quantify;

import java.util.Locale;

/** Which kind of spectrum an atomic fraction rests on. */
public enum Basis {
    NARROW,
    SURVEY,
    /** Seen only in the survey, brought into the narrow-scan table through a line measured in both. */
    LINKED;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
