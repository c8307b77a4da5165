package spotline.report.text;

import java.util.regex.Pattern;

/**
 * Text from files made fit to be looked at.
 *
 * <p>Characters that do not show but change how others do (controls, direction overrides, unpaired surrogates) are
 * written out, so that a reader sees what is there and no line is turned round by a name in it.
 */
public final class Shown {
    private static final int LONGEST_LABEL = 48;

    private static final Pattern MINUS = Pattern.compile("(?<=^|[\\s(])-(?=\\d)");

    private Shown() {}

    public static String text(String raw) {
        int at = 0;
        while (at < raw.length() && !hidden(raw.codePointAt(at))) at += Character.charCount(raw.codePointAt(at));
        if (at == raw.length()) return raw;
        StringBuilder out = new StringBuilder(raw.length() + 16);
        raw.codePoints().forEach(c -> {
            if (hidden(c)) out.append(String.format(java.util.Locale.ROOT, "[U+%04X]", c));
            else out.appendCodePoint(c);
        });
        return out.toString();
    }

    /** Numbers in a sentence as print has them: a true minus sign, and ± in place of {@code +/-}. */
    public static String prose(String sentence) {
        return MINUS.matcher(sentence.replace("+/-", "\u00b1")).replaceAll("\u2212");
    }

    /** Short enough for a figure; what is left out is marked. */
    public static String label(String raw) {
        String text = text(raw).replace('\n', ' ').replace('\t', ' ');
        if (text.codePointCount(0, text.length()) <= LONGEST_LABEL) return text;
        return text.substring(0, text.offsetByCodePoints(0, LONGEST_LABEL - 1)) + "\u2026";
    }

    private static boolean hidden(int c) {
        if (c == '\n' || c == '\t') return false;
        int type = Character.getType(c);
        boolean joiner = c == 0x200C || c == 0x200D;
        return type == Character.CONTROL
                || type == Character.SURROGATE
                || (type == Character.FORMAT && !joiner && c != 0x00AD)
                || (c & 0xFFFE) == 0xFFFE
                || c == 0x2028
                || c == 0x2029;
    }
}
