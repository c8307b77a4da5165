package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;

/**
 * What is to be fitted: data sets with their models, parameters by name, and ties between parameters.
 *
 * <p>A parameter that no model uses may serve as a term of a tie. Errors: {@link IllegalArgumentException} with all
 * names concerned when a name is missing, double or tied in a circle, or when no value satisfies the bounds.
 */
public final class FitProblem {
    private final List<DataSet> dataSets;
    private final List<Parameter> parameters;
    private final List<Tie> ties;
    private final Layout layout;

    public FitProblem(List<DataSet> dataSets, List<Parameter> parameters, List<Tie> ties) {
        this.dataSets = List.copyOf(dataSets);
        this.parameters = List.copyOf(parameters);
        this.ties = List.copyOf(ties);
        layout = Layout.of(this.dataSets, this.parameters, this.ties);
    }

    private FitProblem(List<DataSet> dataSets, List<Parameter> parameters, List<Tie> ties, Layout layout) {
        this.dataSets = dataSets;
        this.parameters = parameters;
        this.ties = ties;
        this.layout = layout;
    }

    /** One data set; the first parameters are the model's, in its order, any more are sources of ties. */
    public static FitProblem of(
            ModelFunction model, double[] y, Weighting weighting, List<Parameter> parameters, List<Tie> ties) {
        requireNonNull(model, "model");
        if (parameters.size() < model.parameterCount()) {
            throw new IllegalArgumentException(
                    "the model has " + model.parameterCount() + " parameters, given were " + parameters.size());
        }
        List<String> names = new ArrayList<>();
        for (int k = 0; k < model.parameterCount(); k++) {
            names.add(parameters.get(k).name());
        }
        return new FitProblem(List.of(new DataSet(model, y, weighting, names)), parameters, ties);
    }

    public static FitProblem of(ModelFunction model, double[] y, Weighting weighting, List<Parameter> parameters) {
        return of(model, y, weighting, parameters, List.of());
    }

    public List<DataSet> dataSets() {
        return dataSets;
    }

    public List<Parameter> parameters() {
        return parameters;
    }

    public List<Tie> ties() {
        return ties;
    }

    /** The same problem with other data for its only data set: cheap, for batches and for Monte-Carlo. */
    public FitProblem withOrdinates(double[] y) {
        if (dataSets.size() != 1) {
            throw new IllegalArgumentException("one data set expected, there are " + dataSets.size());
        }
        return new FitProblem(List.of(dataSets.get(0).withOrdinates(y)), parameters, ties, layout);
    }

    /** As {@link #withOrdinates(double[])} where the weights change with the data. */
    public FitProblem withData(double[] y, Weighting weighting) {
        if (dataSets.size() != 1) {
            throw new IllegalArgumentException("one data set expected, there are " + dataSets.size());
        }
        return new FitProblem(List.of(dataSets.get(0).withData(y, weighting)), parameters, ties, layout);
    }

    /** The same problem with other data, one array a data set. */
    public FitProblem withOrdinates(List<double[]> ys) {
        if (ys.size() != dataSets.size()) {
            throw new IllegalArgumentException(dataSets.size() + " data sets expected, given were " + ys.size());
        }
        List<DataSet> changed = new ArrayList<>();
        for (int d = 0; d < ys.size(); d++) changed.add(dataSets.get(d).withOrdinates(ys.get(d)));
        return new FitProblem(List.copyOf(changed), parameters, ties, layout);
    }

    /** The same problem with one parameter replaced by name. */
    public FitProblem with(Parameter replacement) {
        List<Parameter> changed = new ArrayList<>();
        boolean found = false;
        for (Parameter parameter : parameters) {
            boolean here = parameter.name().equals(replacement.name());
            found |= here;
            changed.add(here ? replacement : parameter);
        }
        if (!found) throw new IllegalArgumentException("no parameter is named " + replacement.name());
        return new FitProblem(dataSets, changed, ties);
    }

    /** The same problem started from these values, one a parameter; values of tied and fixed parameters are ignored. */
    public FitProblem startingAt(double[] values) {
        List<Parameter> changed = new ArrayList<>();
        for (int i = 0; i < parameters.size(); i++) {
            Parameter parameter = parameters.get(i);
            double inside = Math.max(parameter.min(), Math.min(parameter.max(), values[i]));
            changed.add(layout.isFree(i) ? parameter.startingAt(inside) : parameter);
        }
        return new FitProblem(dataSets, List.copyOf(changed), ties, layout.startingAt(values));
    }

    Layout layout() {
        return layout;
    }
}
