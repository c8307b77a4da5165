package spotline.formats.iso14976;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.formats.source.NumberText;

/**
 * A number of the standard: its value, or "not known" (written 1E37), and the text it came from.
 *
 * <p>Two numbers are equal when their values are, however they were spelled.
 */
public final class Real {
    private static final double NOT_KNOWN = 1e37;
    /** Relative distance at which a number counts as 1E37: single-precision writers give 9.9999999E36. */
    private static final double SPELLING = 1e-6;

    /** ISO 14976:1998: 1E37 stands for a number that is not known. */
    public static final Real UNKNOWN = new Real(NOT_KNOWN, "1E37");

    public static final Real ZERO = of(0);

    private final double number;
    private final String text;

    private Real(double number, String text) {
        this.number = number;
        this.text = text;
    }

    /** Errors: {@link IllegalArgumentException} when the value is not finite. */
    public static Real of(double value) {
        return new Real(value, isUnknown(value) ? "1E37" : NumberText.exact(value));
    }

    public static Real of(OptionalDouble value) {
        return value.isPresent() ? of(value.getAsDouble()) : UNKNOWN;
    }

    static Real read(double value, String text) {
        return new Real(value, text);
    }

    static boolean isUnknown(double value) {
        return Math.abs(value / NOT_KNOWN - 1) < SPELLING;
    }

    public boolean isKnown() {
        return !isUnknown(number);
    }

    /** Empty when not known. */
    public OptionalDouble value() {
        return isKnown() ? OptionalDouble.of(number) : OptionalDouble.empty();
    }

    /** The value when it is known and above 0. */
    OptionalDouble positive() {
        return isKnown() && number > 0 ? OptionalDouble.of(number) : OptionalDouble.empty();
    }

    /** The value when it is a known whole number that an {@code int} holds. */
    Optional<Integer> whole() {
        return isKnown() && number == (int) number ? Optional.of((int) number) : Optional.empty();
    }

    /** As the file spells it. */
    public String text() {
        return text;
    }

    /** The one spelling the writer uses. */
    String canonical() {
        return number == NOT_KNOWN ? "1E37" : NumberText.exact(number);
    }

    /** The number itself, 1E37 and all. */
    double raw() {
        return number;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Real that && Double.compare(number, that.number) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(number);
    }

    @Override
    public String toString() {
        return text;
    }
}
