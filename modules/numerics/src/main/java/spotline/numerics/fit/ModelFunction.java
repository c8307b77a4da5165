package spotline.numerics.fit;

import java.util.Set;

/**
 * A model of data: values, and derivatives if it has them, at a fixed number of points for a vector of parameters.
 *
 * <p>The function itself is immutable and may be shared between threads; an {@link Evaluator} holds scratch and belongs
 * to one.
 */
public interface ModelFunction {
    int pointCount();

    int parameterCount();

    /** Whether this is one of the parameters that the values are linear in, all of them together. */
    default boolean linear(int parameter) {
        return false;
    }

    Evaluator evaluator();

    /** The model at work in one thread. */
    interface Evaluator {
        /** Values at all points into {@code values}, which is as long as the points are many. */
        void values(double[] parameters, double[] values);

        /**
         * Values and partial derivatives, {@code rows[k][i]} by parameter k at point i, in one pass.
         *
         * @return false, having written nothing, when the model has no derivatives: they are then taken by differences
         */
        boolean derivatives(double[] parameters, double[] values, double[][] rows);
    }

    /** Values alone. */
    @FunctionalInterface
    interface Values {
        void evaluate(double[] parameters, double[] values);
    }

    /** Derivatives alone, {@code rows[k][i]} by parameter k at point i. */
    @FunctionalInterface
    interface Derivatives {
        void evaluate(double[] parameters, double[][] rows);
    }

    /** A model without derivatives. */
    static ModelFunction of(int points, int parameters, Values values) {
        return new PlainModel(points, parameters, values, null, Set.of());
    }

    /** A model with derivatives of which the numbered parameters are linear, jointly. */
    static ModelFunction of(
            int points, int parameters, Values values, Derivatives derivatives, Set<Integer> linearParameters) {
        return new PlainModel(points, parameters, values, derivatives, Set.copyOf(linearParameters));
    }

    /** A model with derivatives. */
    static ModelFunction of(int points, int parameters, Values values, Derivatives derivatives) {
        return new PlainModel(points, parameters, values, derivatives, Set.of());
    }
}
