package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * Data with the model that should describe them.
 *
 * <p>Shape: one ordinate a point of the model, one parameter name a parameter of the model, in the model's order; a name
 * that several data sets use is one shared parameter.
 */
public final class DataSet {
    private final ModelFunction model;
    private final double[] y;
    private final Weighting weighting;
    private final List<String> parameterNames;

    public DataSet(ModelFunction model, double[] y, Weighting weighting, List<String> parameterNames) {
        this.model = requireNonNull(model, "model");
        this.y = y.clone();
        this.weighting = requireNonNull(weighting, "weighting");
        this.parameterNames = List.copyOf(parameterNames);
        if (y.length != model.pointCount()) {
            throw new IllegalArgumentException(
                    "the model has " + model.pointCount() + " points, the data have " + y.length);
        }
        if (parameterNames.size() != model.parameterCount()) {
            throw new IllegalArgumentException(
                    "the model has " + model.parameterCount() + " parameters, named were " + parameterNames.size());
        }
        if (weighting instanceof Weighting.Given given && given.size() != y.length) {
            throw new IllegalArgumentException(
                    "one standard deviation a point, was " + given.size() + " for " + y.length);
        }
        boolean counts = weighting instanceof Weighting.PoissonDeviance;
        for (int i = 0; i < y.length; i++) {
            if (!Double.isFinite(y[i])) throw new IllegalArgumentException("ordinate " + (i + 1) + " is not finite");
            if (counts && y[i] < 0) {
                throw new IllegalArgumentException("counts cannot be negative, ordinate " + (i + 1) + " is " + y[i]);
            }
        }
    }

    public ModelFunction model() {
        return model;
    }

    public int size() {
        return y.length;
    }

    public double ordinate(int point) {
        return y[point];
    }

    public double[] ordinates() {
        return y.clone();
    }

    public Weighting weighting() {
        return weighting;
    }

    public List<String> parameterNames() {
        return parameterNames;
    }

    public DataSet withOrdinates(double[] newY) {
        return new DataSet(model, newY, weighting, parameterNames);
    }

    public DataSet withData(double[] newY, Weighting newWeighting) {
        return new DataSet(model, newY, newWeighting, parameterNames);
    }

    /** Not copied: for the solver of this package alone. */
    double[] shared() {
        return y;
    }
}
