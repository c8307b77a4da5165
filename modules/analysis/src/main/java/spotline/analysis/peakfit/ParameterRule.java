package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.OptionalDouble;

/** What holds one parameter of a component: nothing but bounds, a fixed value, or the same parameter of another component. */
public sealed interface ParameterRule {
    /** A number the fit owns or is given: the parameter itself, or the ratio or offset of a tie. */
    sealed interface Own extends ParameterRule {}

    /** Held at a value. */
    record Fixed(double value) implements Own {}

    /**
     * Free within bounds.
     *
     * @param start empty: guessed from the data
     * @param min lower bound, may be negative infinity
     * @param max upper bound, may be infinity
     */
    record Free(OptionalDouble start, double min, double max) implements Own {
        public Free {
            requireNonNull(start, "start");
        }

        /** Bounded by what the shape allows alone, started from the data. */
        public static final Free UNBOUNDED =
                new Free(OptionalDouble.empty(), Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

        public static Free from(double start, double min, double max) {
            return new Free(OptionalDouble.of(start), min, max);
        }

        public static Free within(double min, double max) {
            return new Free(OptionalDouble.empty(), min, max);
        }

        boolean held() {
            return min == max;
        }
    }

    /** A parameter that follows the same parameter of another component. */
    sealed interface Tied extends ParameterRule {
        /** Name of the component that leads. */
        String component();
    }

    record EqualTo(String component) implements Tied {
        public EqualTo {
            requireNonNull(component, "component");
        }
    }

    /** The leader's value times a ratio. */
    record RatioTo(String component, Own ratio) implements Tied {
        public RatioTo {
            requireNonNull(component, "component");
            requireNonNull(ratio, "ratio");
        }
    }

    /** The leader's value plus an offset, in the parameter's unit. */
    record OffsetFrom(String component, Own offset) implements Tied {
        public OffsetFrom {
            requireNonNull(component, "component");
            requireNonNull(offset, "offset");
        }
    }
}
