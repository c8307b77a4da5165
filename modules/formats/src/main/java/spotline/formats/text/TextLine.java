package spotline.formats.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import spotline.formats.source.NumberText;

/**
 * The fields of one line: parted by blanks or tabs, by a semicolon, or by a comma unless the comma is the decimal sign.
 * Reused from line to line.
 */
final class TextLine {
    private static final byte[] NONE = new byte[0];

    private byte[] bytes = NONE;
    private int[] from = new int[16];
    private int[] to = new int[16];
    private int count;
    private boolean decimalComma;
    private byte[] scratch = new byte[64];

    /** Parts {@code bytes[start, end)} into fields, at most {@link TextColumns#MOST_COLUMNS} of them. */
    void split(byte[] line, int start, int end, boolean commaIsDecimal) {
        bytes = line;
        decimalComma = commaIsDecimal;
        count = 0;
        int at = skipBlanks(start, end);
        while (at < end && count <= TextColumns.MOST_COLUMNS) {
            int fieldStart = at;
            while (at < end && !isBlank(line[at]) && !isSeparator(line[at])) at++;
            add(fieldStart, at);
            at = skipBlanks(at, end);
            if (at < end && isSeparator(line[at])) {
                at = skipBlanks(at + 1, end);
                if (at == end) add(end, end);
            }
        }
    }

    private void add(int start, int end) {
        if (count == from.length) {
            from = Arrays.copyOf(from, count * 2);
            to = Arrays.copyOf(to, count * 2);
        }
        from[count] = start;
        to[count] = end;
        count++;
    }

    private int skipBlanks(int start, int end) {
        int at = start;
        while (at < end && isBlank(bytes[at])) at++;
        return at;
    }

    private static boolean isBlank(byte b) {
        return b == ' ' || b == '\t';
    }

    private boolean isSeparator(byte b) {
        return b == ';' || (b == ',' && !decimalComma);
    }

    int count() {
        return count;
    }

    /** What stands between the fields, in words; empty for a single field. */
    String separators() {
        boolean blanks = false;
        boolean tabs = false;
        boolean semicolons = false;
        boolean commas = false;
        for (int i = 1; i < count; i++) {
            for (int at = to[i - 1]; at < from[i]; at++) {
                blanks |= bytes[at] == ' ';
                tabs |= bytes[at] == '\t';
                semicolons |= bytes[at] == ';';
                commas |= bytes[at] == ',';
            }
        }
        List<String> words = new ArrayList<>();
        if (semicolons) words.add("semicolons");
        if (commas) words.add("commas");
        if (tabs) words.add("tabs");
        if (blanks) words.add("blanks");
        return String.join(" and ", words);
    }

    /** Number in a field, counted from 0; NaN where there is none. */
    double number(int field) {
        int start = from[field];
        int end = to[field];
        if (!decimalComma) return NumberText.parse(bytes, start, end);
        int length = end - start;
        // A comma behind the last digit is a separator with a blank after it.
        if (length > scratch.length || (length > 0 && bytes[end - 1] == ',')) return Double.NaN;
        for (int i = 0; i < length; i++) {
            byte b = bytes[start + i];
            if (b == '.') return Double.NaN;
            scratch[i] = b == ',' ? (byte) '.' : b;
        }
        return NumberText.parse(scratch, 0, length);
    }

    /** Whether every field is a number. */
    boolean allNumbers() {
        for (int i = 0; i < count; i++) if (Double.isNaN(number(i))) return false;
        return count > 0;
    }
}
