package spotline.formats.source;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers from the bytes of a file, and doubles as the shortest text of 15 to 17 digits that reads back the same. */
public final class NumberText {
    /** Longest run of digits whose integer a double holds exactly. */
    private static final int EXACT_DIGITS = 15;

    private static final double EXACT_LIMIT = 1e15;

    private NumberText() {}

    /**
     * The number that stands in {@code bytes[from, to)}: digits with an optional sign, decimal point and exponent, and
     * nothing else. NaN when it is none, or not finite.
     */
    public static double parse(byte[] bytes, int from, int to) {
        if (from >= to) return Double.NaN;
        if (to - from <= EXACT_DIGITS) {
            double integer = parseDigits(bytes, from, to);
            if (integer >= 0) return integer;
        }
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

    /** The commonest case by far, a count: -1 when anything but digits is there. */
    private static double parseDigits(byte[] bytes, int from, int to) {
        long value = 0;
        for (int i = from; i < to; i++) {
            int digit = bytes[i] - '0';
            if (digit < 0 || digit > 9) return -1;
            value = value * 10 + digit;
        }
        return value;
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
