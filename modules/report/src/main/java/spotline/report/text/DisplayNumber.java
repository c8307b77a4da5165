package spotline.report.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import spotline.core.Decimal;

/**
 * A number as a person reads it: its digits end where its uncertainty begins.
 *
 * <p>Shape: one value and its standard uncertainty in, two texts with the same decimals out: 12.494 and 0.338 become
 * "12.5" and "0.3". The uncertainty keeps one significant digit, two where the first is a 1 or a 2, so that rounding
 * changes it by a sixth at most. Units: those of the input. Errors: a value that is not finite gives empty texts.
 *
 * <p>Source: GUM (JCGM 100:2008) 7.2.6, digits of a reported uncertainty.
 *
 * @param value text of the value
 * @param uncertainty text of the uncertainty, empty when it is unknown
 */
public record DisplayNumber(String value, String uncertainty) {
    /** A true minus sign, as wide as a plus. */
    private static final char MINUS = '\u2212';

    /** @param decimalsIfUnknown decimals of the value where the uncertainty says nothing */
    public static DisplayNumber of(double value, OptionalDouble uncertainty, int decimalsIfUnknown) {
        if (!Double.isFinite(value)) return new DisplayNumber("", "");
        double u = uncertainty.orElse(Double.NaN);
        if (!(u > 0) || Double.isInfinite(u)) {
            String text = u == 0 ? "0" : "";
            return new DisplayNumber(minus(Decimal.fixed(value, decimalsIfUnknown)), text);
        }
        int decimals = decimals(u);
        return new DisplayNumber(minus(rounded(value, decimals)), rounded(u, decimals));
    }

    private static int decimals(double u) {
        BigDecimal two = significant(u, 2);
        boolean leadingSmall = two.unscaledValue().intValue() / (two.precision() == 2 ? 10 : 1) <= 2;
        // 0.096 rounds to 0.1: the carry makes the leading digit a 1 again.
        boolean carries = exponent(significant(u, 1)) > exponent(two);
        if (carries) return -exponent(two);
        return -exponent(two) + (leadingSmall ? 1 : 0);
    }

    private static BigDecimal significant(double value, int digits) {
        return new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    }

    private static int exponent(BigDecimal number) {
        return number.precision() - number.scale() - 1;
    }

    /** Negative decimals round to tens, hundreds and so on. */
    private static String rounded(double value, int decimals) {
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }

    /** "12.5 ± 0.3"; the value alone where the uncertainty is unknown. */
    public String text() {
        return uncertainty.isEmpty() ? value : value + " \u00b1 " + uncertainty;
    }

    /** A limit with two significant digits: "0.62", "0.20". Errors: empty when it is not finite. */
    public static String limit(double value) {
        if (!Double.isFinite(value)) return "";
        BigDecimal two = significant(value, 2);
        return two.signum() == 0
                ? "0"
                : two.setScale(1 - exponent(two), RoundingMode.UNNECESSARY).toPlainString();
    }

    /** A fixed number of decimals with a true minus sign. */
    public static String fixed(double value, int decimals) {
        return minus(Decimal.fixed(value, decimals));
    }

    /** A fixed number of decimals with its sign always shown; 0 has none. */
    public static String signed(double value, int decimals) {
        String text = fixed(value, decimals);
        return value > 0 && text.chars().anyMatch(c -> c >= '1' && c <= '9') ? "+" + text : text;
    }

    private static String minus(String text) {
        return text.startsWith("-") ? MINUS + text.substring(1) : text;
    }
}
