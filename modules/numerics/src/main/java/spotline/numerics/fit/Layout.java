package spotline.numerics.fit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The linear map from free parameters to all parameters, {@code p = M q + c}, with the bounds of q and the place of
 * each model's parameters in p.
 */
final class Layout {
    final List<String> names;
    final int[] free; // index in p of each q
    final int[][] columns; // of M, by row
    final double[][] ratios;
    final double[] offset;
    final double[] start;
    final double[] lower;
    final double[] upper;
    final int[][] models; // by data set: index in p of each model parameter
    final boolean[] linear; // by q

    private Layout(
            List<String> names,
            int[] free,
            int[][] columns,
            double[][] ratios,
            double[] offset,
            double[] start,
            double[] lower,
            double[] upper,
            int[][] models,
            boolean[] linear) {
        this.names = names;
        this.free = free;
        this.columns = columns;
        this.ratios = ratios;
        this.offset = offset;
        this.start = start;
        this.lower = lower;
        this.upper = upper;
        this.models = models;
        this.linear = linear;
    }

    static Layout of(List<DataSet> dataSets, List<Parameter> parameters, List<Tie> ties) {
        if (dataSets.isEmpty()) throw new IllegalArgumentException("a problem needs a data set");
        int n = parameters.size();
        Map<String, Integer> index = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            String name = parameters.get(i).name();
            names.add(name);
            if (index.put(name, i) != null) throw new IllegalArgumentException("two parameters are named " + name);
        }
        Map<Integer, Tie> tieOf = new HashMap<>();
        for (Tie tie : ties) {
            int target = place(index, tie.target());
            if (tieOf.put(target, tie) != null) {
                throw new IllegalArgumentException(tie.target() + " is tied twice");
            }
        }
        int[] freeOf = new int[n];
        int q = 0;
        for (int i = 0; i < n; i++) {
            Parameter p = parameters.get(i);
            boolean isFree = !tieOf.containsKey(i) && !p.fixed() && p.min() < p.max();
            freeOf[i] = isFree ? q++ : -1;
        }
        double[][] dense = new double[n][];
        double[] offset = new double[n];
        for (int i = 0; i < n; i++) resolve(i, q, freeOf, parameters, tieOf, index, dense, offset, new ArrayDeque<>());
        return build(dataSets, parameters, tieOf, index, List.copyOf(names), freeOf, q, dense, offset);
    }

    private static Layout build(
            List<DataSet> dataSets,
            List<Parameter> parameters,
            Map<Integer, Tie> tieOf,
            Map<String, Integer> index,
            List<String> names,
            int[] freeOf,
            int q,
            double[][] dense,
            double[] offset) {
        int n = names.size();
        int[] free = new int[q];
        double[] start = new double[q];
        double[] lower = new double[q];
        double[] upper = new double[q];
        int[][] columns = new int[n][];
        double[][] ratios = new double[n][];
        for (int i = 0; i < n; i++) {
            Parameter p = parameters.get(i);
            if (freeOf[i] >= 0) {
                free[freeOf[i]] = i;
                start[freeOf[i]] = p.start();
                lower[freeOf[i]] = p.min();
                upper[freeOf[i]] = p.max();
            }
            columns[i] = new int[q];
            int count = 0;
            for (int j = 0; j < q; j++) {
                if (dense[i][j] != 0) columns[i][count++] = j;
            }
            columns[i] = Arrays.copyOf(columns[i], count);
            ratios[i] = new double[count];
            for (int c = 0; c < count; c++) ratios[i][c] = dense[i][columns[i][c]];
        }
        for (int target : tieOf.keySet()) {
            boundSource(parameters.get(target), columns[target], ratios[target], offset[target], lower, upper);
        }
        for (int j = 0; j < q; j++) {
            if (lower[j] > upper[j]) {
                throw new IllegalArgumentException(
                        names.get(free[j]) + ": no value satisfies its bounds and those of what is tied to it");
            }
            start[j] = Math.max(lower[j], Math.min(upper[j], start[j]));
        }
        int[][] models = new int[dataSets.size()][];
        for (int d = 0; d < models.length; d++) {
            List<String> used = dataSets.get(d).parameterNames();
            models[d] = new int[used.size()];
            for (int k = 0; k < models[d].length; k++) models[d][k] = place(index, used.get(k));
        }
        boolean[] linear = linear(dataSets, models, columns, q);
        return new Layout(names, free, columns, ratios, offset, start, lower, upper, models, linear);
    }

    private static int place(Map<String, Integer> index, String name) {
        Integer at = index.get(name);
        if (at == null) throw new IllegalArgumentException("no parameter is named " + name);
        return at;
    }

    /** Row i of M and c, following ties to free and fixed parameters. */
    private static void resolve(
            int i,
            int q,
            int[] freeOf,
            List<Parameter> parameters,
            Map<Integer, Tie> tieOf,
            Map<String, Integer> index,
            double[][] dense,
            double[] offset,
            Deque<Integer> path) {
        if (dense[i] != null) return;
        if (path.contains(i)) {
            throw new IllegalArgumentException(parameters.get(i).name() + " is tied to itself in a circle");
        }
        double[] row = new double[q];
        Tie tie = tieOf.get(i);
        if (tie == null) {
            if (freeOf[i] >= 0) row[freeOf[i]] = 1;
            else offset[i] = parameters.get(i).start();
        } else {
            path.push(i);
            offset[i] = tie.offset();
            for (Tie.Term term : tie.terms()) {
                int source = place(index, term.source());
                resolve(source, q, freeOf, parameters, tieOf, index, dense, offset, path);
                offset[i] += term.ratio() * offset[source];
                for (int j = 0; j < q; j++) row[j] += term.ratio() * dense[source][j];
            }
            path.pop();
        }
        dense[i] = row;
    }

    /** Bounds of a tied parameter act on its one free source. */
    private static void boundSource(
            Parameter target, int[] columns, double[] ratios, double offset, double[] lower, double[] upper) {
        if (Double.isInfinite(target.min()) && Double.isInfinite(target.max())) return;
        if (columns.length == 0) return;
        if (columns.length > 1) {
            throw new IllegalArgumentException(
                    target.name() + " is tied to several free parameters and cannot have bounds of its own");
        }
        double a = (target.min() - offset) / ratios[0];
        double b = (target.max() - offset) / ratios[0];
        int j = columns[0];
        lower[j] = Math.max(lower[j], Math.min(a, b));
        upper[j] = Math.min(upper[j], Math.max(a, b));
    }

    private static boolean[] linear(List<DataSet> dataSets, int[][] models, int[][] columns, int q) {
        boolean[] linear = new boolean[q];
        Arrays.fill(linear, true);
        for (int d = 0; d < models.length; d++) {
            ModelFunction model = dataSets.get(d).model();
            for (int k = 0; k < models[d].length; k++) {
                for (int j : columns[models[d][k]]) linear[j] &= model.linear(k);
            }
        }
        return linear;
    }

    Layout startingAt(double[] values) {
        double[] newStart = new double[free.length];
        for (int j = 0; j < free.length; j++) {
            newStart[j] = Math.max(lower[j], Math.min(upper[j], values[free[j]]));
        }
        return new Layout(names, free, columns, ratios, offset, newStart, lower, upper, models, linear);
    }

    boolean isFree(int parameter) {
        return columns[parameter].length == 1 && free[columns[parameter][0]] == parameter;
    }

    void expand(double[] q, double[] p) {
        for (int i = 0; i < p.length; i++) {
            double sum = offset[i];
            for (int c = 0; c < columns[i].length; c++) sum += ratios[i][c] * q[columns[i][c]];
            p[i] = sum;
        }
    }
}
