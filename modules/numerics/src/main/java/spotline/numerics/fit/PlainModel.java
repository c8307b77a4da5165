package spotline.numerics.fit;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A model made of functions. */
record PlainModel(
        int pointCount,
        int parameterCount,
        Values values,
        @Nullable Derivatives slopes,
        Set<Integer> linearOnes) implements ModelFunction {
    PlainModel {
        if (pointCount < 1) throw new IllegalArgumentException("points must be 1 or more, was " + pointCount);
        if (parameterCount < 0) {
            throw new IllegalArgumentException("parameters must be 0 or more, was " + parameterCount);
        }
    }

    @Override
    public boolean linear(int parameter) {
        return linearOnes.contains(parameter);
    }

    @Override
    public Evaluator evaluator() {
        return new Evaluator() {
            @Override
            public void values(double[] parameters, double[] out) {
                values.evaluate(parameters, out);
            }

            @Override
            public boolean derivatives(double[] parameters, double[] out, double[][] rows) {
                if (slopes == null) return false;
                values.evaluate(parameters, out);
                slopes.evaluate(parameters, rows);
                return true;
            }
        };
    }
}
