package spotline.core;

import java.util.Locale;

/** How much a finding weighs. A {@link #STOP} withholds the number it concerns. */
public enum Severity {
    NOTE,
    CAUTION,
    STOP;

    /** The word used in files and on screen. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
