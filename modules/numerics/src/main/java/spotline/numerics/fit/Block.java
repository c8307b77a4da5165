package spotline.numerics.fit;

import java.util.ArrayList;
import java.util.List;

/** One data set at work: from parameters to weighted rows of derivatives by the free parameters it depends on. */
final class Block {
    private final ModelFunction model;
    private final ModelFunction.Evaluator evaluator;
    private final int n;
    private final int[] place; // in p, by model parameter
    private final int[] used; // free parameters this data set depends on
    private final int[][] sources; // by used: model parameters that depend on it
    private final double[][] ratios;
    private final boolean[] needed; // by model parameter
    private final boolean[] direct; // by used: one source, ratio 1, which nothing else shares
    private final double[] local;
    private final double[] moved;
    private final double[] below;
    private final double[] products;
    private final NormalMatrix normalMatrix;

    /** What one set of parameter values gives. */
    static final class State {
        final double[] fitted;
        final double[][] rows; // weighted, by used; then the residual
        final double[] rowWeight;
        final double[][] raw; // by model parameter, some of them the rows above
        double objective;

        State(int n, int used, int parameters) {
            fitted = new double[n];
            rows = new double[used + 1][n];
            rowWeight = new double[n];
            raw = new double[parameters][];
        }

        double[] residual() {
            return rows[rows.length - 1];
        }
    }

    Block(ModelFunction model, Layout layout, int dataSet) {
        this.model = model;
        evaluator = model.evaluator();
        n = model.pointCount();
        place = layout.models[dataSet];
        List<List<Integer>> sourceLists = new ArrayList<>();
        List<List<Double>> ratioLists = new ArrayList<>();
        for (int j = 0; j < layout.free.length; j++) {
            sourceLists.add(new ArrayList<>());
            ratioLists.add(new ArrayList<>());
        }
        for (int k = 0; k < place.length; k++) {
            int[] columns = layout.columns[place[k]];
            for (int c = 0; c < columns.length; c++) {
                sourceLists.get(columns[c]).add(k);
                ratioLists.get(columns[c]).add(layout.ratios[place[k]][c]);
            }
        }
        List<Integer> usedList = new ArrayList<>();
        for (int j = 0; j < sourceLists.size(); j++) {
            if (!sourceLists.get(j).isEmpty()) usedList.add(j);
        }
        used = new int[usedList.size()];
        sources = new int[used.length][];
        ratios = new double[used.length][];
        direct = new boolean[used.length];
        for (int u = 0; u < used.length; u++) {
            used[u] = usedList.get(u);
            sources[u] = sourceLists.get(used[u]).stream().mapToInt(k -> k).toArray();
            ratios[u] = ratioLists.get(used[u]).stream().mapToDouble(r -> r).toArray();
            direct[u] = sources[u].length == 1 && ratios[u][0] == 1 && layout.columns[place[sources[u][0]]].length == 1;
        }
        needed = new boolean[place.length];
        for (int[] list : sources) for (int k : list) needed[k] = true;
        local = new double[place.length];
        moved = new double[n];
        below = new double[n];
        normalMatrix = new NormalMatrix(used.length + 1, n);
        products = new double[(used.length + 1) * (used.length + 1)];
    }

    ModelFunction model() {
        return model;
    }

    int points() {
        return n;
    }

    int[] used() {
        return used;
    }

    State newState() {
        State state = new State(n, used.length, place.length);
        for (int u = 0; u < used.length; u++) {
            if (direct[u]) state.raw[sources[u][0]] = state.rows[u];
        }
        for (int k = 0; k < place.length; k++) {
            if (state.raw[k] == null) state.raw[k] = new double[n];
        }
        return state;
    }

    double evaluate(double[] parameters, FitProblem problem, DataSet data, State state) {
        for (int k = 0; k < place.length; k++) local[k] = parameters[place[k]];
        if (!evaluator.derivatives(local, state.fitted, state.raw)) differences(problem, state);
        state.objective =
                Objective.evaluate(data.weighting(), data.shared(), state.fitted, n, state.residual(), state.rowWeight);
        for (int u = 0; u < used.length; u++) {
            double[] row = state.rows[u];
            if (!direct[u]) combine(u, state, row);
            multiply(row, state.rowWeight, n);
        }
        return state.objective;
    }

    private static void multiply(double[] row, double[] weight, int n) {
        for (int i = 0; i < n; i++) row[i] *= weight[i];
    }

    private void combine(int u, State state, double[] row) {
        double[] first = state.raw[sources[u][0]];
        double factor = ratios[u][0];
        for (int i = 0; i < n; i++) row[i] = factor * first[i];
        for (int s = 1; s < sources[u].length; s++) {
            double[] raw = state.raw[sources[u][s]];
            double ratio = ratios[u][s];
            for (int i = 0; i < n; i++) row[i] += ratio * raw[i];
        }
    }

    /** Central differences; differences of second order to one side where a bound is near. */
    private void differences(FitProblem problem, State state) {
        evaluator.values(local, state.fitted);
        for (int k = 0; k < place.length; k++) {
            if (!needed[k]) continue;
            Parameter parameter = problem.parameters().get(place[k]);
            double value = local[k];
            double size = Math.max(Math.abs(value), Math.max(1e-3 * Math.abs(parameter.start()), 1e-8));
            double h = 6e-6 * size;
            h = (value + h) - value;
            boolean roomBelow = value - h >= parameter.min();
            boolean roomAbove = value + h <= parameter.max();
            double side = roomAbove ? 1 : -1;
            local[k] = value + side * h;
            evaluator.values(local, moved);
            local[k] = roomBelow && roomAbove ? value - h : value + 2 * side * h;
            evaluator.values(local, below);
            local[k] = value;
            double[] row = state.raw[k];
            if (roomBelow && roomAbove) {
                for (int i = 0; i < n; i++) row[i] = (moved[i] - below[i]) / (2 * h);
            } else {
                double[] here = state.fitted;
                for (int i = 0; i < n; i++) row[i] = (4 * moved[i] - below[i] - 3 * here[i]) / (2 * side * h);
            }
        }
    }

    /** Adds to the normal matrix and to the descent; without {@code exact} the former may leave out what hardly counts. */
    void addNormal(State state, boolean exact, double[] normal, double[] descent, int count) {
        int size = used.length;
        int stride = size + 1;
        normalMatrix.multiply(state.rows, exact, products);
        for (int k = 0; k < size; k++) {
            for (int l = 0; l <= k; l++) normal[used[k] * count + used[l]] += products[k * stride + l];
            descent[used[k]] += products[size * stride + k];
        }
    }

    void addDescent(State state, double[] descent) {
        double[] residual = state.residual();
        for (int u = 0; u < used.length; u++) descent[used[u]] += RowProducts.product(state.rows[u], residual, 0, n);
    }
}
