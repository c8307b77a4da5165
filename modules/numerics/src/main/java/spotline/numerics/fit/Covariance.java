package spotline.numerics.fit;

import java.util.OptionalDouble;

/**
 * Covariance of all parameters of a fit, tied and fixed ones too, in the order of the problem.
 *
 * <p>What the data do not determine is unknown and empty, never 0. A fixed parameter is a given constant: it has no
 * uncertainty of its own and adds nothing to that of others.
 */
public final class Covariance {
    private final Layout layout;
    private final double[] free; // Q x Q
    private final boolean[] unknown; // by q

    Covariance(Layout layout, double[] free, boolean[] unknown) {
        this.layout = layout;
        this.free = free;
        this.unknown = unknown;
    }

    public int size() {
        return layout.columns.length;
    }

    /** Covariance of parameters i and j; empty where either is fixed or undetermined. */
    public OptionalDouble get(int i, int j) {
        if (!determined(i) || !determined(j)) return OptionalDouble.empty();
        return OptionalDouble.of(sum(i, j));
    }

    public OptionalDouble standardUncertainty(int i) {
        return determined(i) ? OptionalDouble.of(Math.sqrt(sum(i, i))) : OptionalDouble.empty();
    }

    public OptionalDouble correlation(int i, int j) {
        if (!determined(i) || !determined(j)) return OptionalDouble.empty();
        double size = Math.sqrt(sum(i, i) * sum(j, j));
        return size > 0 ? OptionalDouble.of(sum(i, j) / size) : OptionalDouble.empty();
    }

    /**
     * Standard uncertainty, to first order, of a quantity with these partial derivatives by the parameters; empty when it
     * depends on an undetermined one.
     */
    public OptionalDouble standardUncertainty(double[] gradient) {
        double[] byFree = new double[layout.free.length];
        for (int i = 0; i < gradient.length; i++) {
            int[] columns = layout.columns[i];
            for (int c = 0; c < columns.length; c++) byFree[columns[c]] += gradient[i] * layout.ratios[i][c];
        }
        double variance = 0;
        for (int a = 0; a < byFree.length; a++) {
            if (byFree[a] == 0) continue;
            if (unknown[a]) return OptionalDouble.empty();
            for (int b = 0; b < byFree.length; b++) variance += byFree[a] * byFree[b] * free[a * byFree.length + b];
        }
        return Double.isFinite(variance) ? OptionalDouble.of(Math.sqrt(Math.max(variance, 0))) : OptionalDouble.empty();
    }

    private boolean determined(int i) {
        int[] columns = layout.columns[i];
        if (columns.length == 0) return false;
        for (int column : columns) {
            if (unknown[column]) return false;
        }
        return true;
    }

    private double sum(int i, int j) {
        int q = layout.free.length;
        double sum = 0;
        for (int a = 0; a < layout.columns[i].length; a++) {
            for (int b = 0; b < layout.columns[j].length; b++) {
                sum += layout.ratios[i][a]
                        * layout.ratios[j][b]
                        * free[layout.columns[i][a] * q + layout.columns[j][b]];
            }
        }
        return sum;
    }

    /**
     * Signed changes of a quantity with these partial derivatives for one standard deviation of each of as many
     * independent sources as there are free parameters: dot products of two such arrays are covariances.
     */
    double[] contributions(double[] gradient) {
        int q = layout.free.length;
        double[] root = root();
        double[] sums = new double[q];
        for (int i = 0; i < gradient.length; i++) {
            for (int a = 0; a < layout.columns[i].length; a++) {
                double slope = gradient[i] * layout.ratios[i][a];
                if (slope == 0) continue;
                for (int k = 0; k < q; k++) sums[k] += slope * root[layout.columns[i][a] * q + k];
            }
        }
        return sums;
    }

    /** Lower triangular root of the determined part; a dependent row ends in zeros. */
    private double[] root() {
        int q = layout.free.length;
        double[] root = new double[q * q];
        for (int i = 0; i < q; i++) {
            if (unknown[i]) continue;
            for (int j = 0; j <= i; j++) {
                if (unknown[j]) continue;
                double sum = free[i * q + j];
                for (int k = 0; k < j; k++) sum -= root[i * q + k] * root[j * q + k];
                if (i == j) root[i * q + i] = sum > 1e-14 * free[i * q + i] ? Math.sqrt(sum) : 0;
                else root[i * q + j] = root[j * q + j] > 0 ? sum / root[j * q + j] : 0;
            }
        }
        return root;
    }
}
