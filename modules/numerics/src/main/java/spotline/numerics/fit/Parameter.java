package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

/**
 * One parameter of a fit.
 *
 * @param start value to start from; the value itself where the parameter is fixed
 * @param min lower bound, may be negative infinity
 * @param max upper bound, may be infinity
 * @param fixed held at its start
 */
public record Parameter(String name, double start, double min, double max, boolean fixed) {
    public Parameter {
        requireNonNull(name, "name");
        if (name.isBlank()) throw new IllegalArgumentException("a parameter needs a name");
        if (!Double.isFinite(start)) throw new IllegalArgumentException(name + ": start is not finite, was " + start);
        if (!(min <= max)) throw new IllegalArgumentException(name + ": min " + min + " is above max " + max);
        if (!fixed && !(start >= min && start <= max)) {
            throw new IllegalArgumentException(name + ": start " + start + " lies outside " + min + " to " + max);
        }
    }

    public static Parameter free(String name, double start) {
        return new Parameter(name, start, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, false);
    }

    public static Parameter bounded(String name, double start, double min, double max) {
        return new Parameter(name, start, min, max, false);
    }

    public static Parameter fixed(String name, double value) {
        return new Parameter(name, value, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, true);
    }

    public Parameter startingAt(double newStart) {
        return new Parameter(name, newStart, min, max, fixed);
    }

    public Parameter within(double newMin, double newMax) {
        return new Parameter(name, start, newMin, newMax, fixed);
    }

    public Parameter held(double value) {
        return new Parameter(name, value, min, max, true);
    }
}
