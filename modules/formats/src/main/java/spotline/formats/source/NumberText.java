package spotline.formats.source;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers from the bytes of a file, and doubles as the shortest text of 15 to 17 digits that reads back the same. */
public final class NumberText {
    /** Digits that name a double uniquely. */
    private static final int EXACT_DIGITS = 15;

    /** So many digits never overflow a {@code long}. */
    private static final int LONG_DIGITS = 18;

    /** Integers below this are doubles, and so are these powers of ten: one division of the two rounds once, rightly. */
    private static final long EXACT_MANTISSA = 1L << 53;

    private static final double[] POWERS_OF_TEN = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18
    };

    private static final double EXACT_LIMIT = 1e15;

    private NumberText() {}

    /**
     * The number that stands in {@code bytes[from, to)}: digits with an optional sign, decimal point and exponent, and
     * nothing else. NaN when it is none, or not finite.
     */
    public static double parse(byte[] bytes, int from, int to) {
        if (from >= to) return Double.NaN;
        int at = from;
        boolean negative = bytes[at] == '-';
        if (negative || bytes[at] == '+') at++;
        int first = at;
        long mantissa = 0;
        int digit = 0;
        while (at < to && (digit = bytes[at] - '0') >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            at++;
        }
        int digits = at - first;
        int decimals = 0;
        if (at < to && bytes[at] == '.') {
            int point = at++;
            while (at < to && (digit = bytes[at] - '0') >= 0 && digit <= 9) {
                mantissa = mantissa * 10 + digit;
                at++;
            }
            decimals = at - point - 1;
            digits += decimals;
        }
        if (at == to && digits > 0 && digits <= LONG_DIGITS && mantissa <= EXACT_MANTISSA) {
            double magnitude = decimals == 0 ? mantissa : mantissa / POWERS_OF_TEN[decimals];
            return negative ? -magnitude : magnitude;
        }
        return parseAny(bytes, from, to);
    }

    private static double parseAny(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            byte b = bytes[i];
            boolean usual = (b >= '0' && b <= '9') || b == '.' || b == '-' || b == '+' || b == 'e' || b == 'E';
            if (!usual) return Double.NaN;
        }
        try {
            double value = JavaDoubleParser.parseDouble(bytes, from, to - from);
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException notANumber) {
            return Double.NaN;
        }
    }

    /**
     * Text that {@link #parse} reads back as the same double, sign of zero included; no exponent between 1e-5 and 1e15.
     *
     * <p>Errors: {@link IllegalArgumentException} when the value is not finite.
     */
    public static String exact(double value) {
        if (!Double.isFinite(value)) throw new IllegalArgumentException("a number must be finite, was " + value);
        if (value == 0) return 1 / value < 0 ? "-0" : "0";
        if (value == Math.rint(value) && Math.abs(value) < EXACT_LIMIT) return Long.toString((long) value);
        String decimals = exactDecimals(value);
        if (!decimals.isEmpty()) return decimals;
        BigDecimal all = new BigDecimal(value);
        BigDecimal rounded = all;
        for (int digits = EXACT_DIGITS; digits <= 17; digits++) {
            rounded = all.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (rounded.doubleValue() == value) break;
        }
        BigDecimal shortest = rounded.stripTrailingZeros();
        int magnitude = shortest.precision() - shortest.scale() - 1;
        return magnitude >= -5 && magnitude < EXACT_DIGITS ? shortest.toPlainString() : shortest.toString();
    }

    /**
     * The quick way for numbers of few decimals: a whole number of billionths below 2^53 over 1e9 is rounded as reading
     * the text would be, and 15 digits name a double uniquely. Empty when the number is none of these.
     */
    private static String exactDecimals(double value) {
        double billionths = Math.rint(value * 1e9);
        boolean fits = Math.abs(value) >= 1e-5 && Math.abs(billionths) < EXACT_LIMIT && billionths / 1e9 == value;
        return fits
                ? BigDecimal.valueOf((long) billionths, 9).stripTrailingZeros().toPlainString()
                : "";
    }
}
