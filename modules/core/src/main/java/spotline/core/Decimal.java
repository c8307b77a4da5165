package spotline.core;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/** Numbers as text. Every number that a file holds goes through here, so that no locale and no JVM changes a byte. */
public final class Decimal {
    private static final MathContext FILE_DIGITS = new MathContext(10, RoundingMode.HALF_EVEN);

    private Decimal() {}

    /** Ten significant digits, no exponent from 1e-6 to below 1e15; empty for a value that is not finite. */
    public static String text(double value) {
        return significant(value, FILE_DIGITS);
    }

    public static String text(OptionalDouble value) {
        return value.isPresent() ? text(value.getAsDouble()) : "";
    }

    /** For people: rounded to a number of significant digits. */
    public static String significant(double value, int digits) {
        return significant(value, new MathContext(digits, RoundingMode.HALF_EVEN));
    }

    /** For people: a fixed number of decimals, a true minus never before a zero. */
    public static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) return "";
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.toPlainString();
    }

    private static String significant(double value, MathContext digits) {
        if (!Double.isFinite(value)) return "";
        if (value == 0) return "0";
        BigDecimal rounded = new BigDecimal(value).round(digits).stripTrailingZeros();
        int magnitude = rounded.precision() - rounded.scale() - 1;
        return magnitude >= -6 && magnitude < 15 ? rounded.toPlainString() : rounded.toString();
    }
}
