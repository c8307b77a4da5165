package spotline.analysis.calibration;

import java.util.Locale;

/** Sentences with numbers, the same in every locale. */
final class Texts {
    private Texts() {}

    static String ev(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
