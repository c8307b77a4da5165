package spotline.analysis.identify;

import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import spotline.numerics.linear.Cholesky;

/** A solution of a {@link Design}: amplitudes and which of them are not held at 0. Worked with by one thread. */
final class LinearFit {
    private final Design design;
    final double[] x;
    /** Columns whose amplitudes are not held at 0, rising. */
    final int[] passive;
    /** Weighted sum of squared residuals, with what departs from expectations. */
    final double misfit;

    private double @Nullable [][] inverse;

    LinearFit(Design design, double[] x, int[] passive, double misfit) {
        this.design = design;
        this.x = x;
        this.passive = passive;
        this.misfit = misfit;
    }

    private double[][] inverse() {
        if (inverse == null) inverse = Cholesky.of(design.matrix(), passive).inverse();
        return inverse;
    }

    /** How much the misfit would rise if some columns were held at 0 and all others found anew, signs let be. */
    double lossWithout(IntPredicate columns) {
        int[] places = new int[passive.length];
        int m = 0;
        for (int k = 0; k < passive.length; k++) if (columns.test(passive[k])) places[m++] = k;
        if (m == 0) return 0;
        double[][] all = inverse();
        double[][] part = new double[m][m];
        double[] values = new double[m];
        int[] order = new int[m];
        for (int a = 0; a < m; a++) {
            order[a] = a;
            values[a] = x[passive[places[a]]];
            for (int b = 0; b < m; b++) part[a][b] = all[places[a]][places[b]];
        }
        double[] z = Cholesky.of(part, order).forward(values);
        double sum = 0;
        for (double value : z) sum += value * value;
        return sum;
    }

    /** Variance of a weighted sum of amplitudes. */
    double variance(int[] indices, double[] factors) {
        double[][] all = inverse();
        double sum = 0;
        for (int a = 0; a < indices.length; a++) {
            int ka = place(indices[a]);
            if (ka < 0) continue;
            for (int b = 0; b < indices.length; b++) {
                int kb = place(indices[b]);
                if (kb >= 0) sum += factors[a] * factors[b] * all[ka][kb];
            }
        }
        return sum;
    }

    private int place(int column) {
        int found = java.util.Arrays.binarySearch(passive, column);
        return found < 0 ? -1 : found;
    }

    double[] curve() {
        return design.curve(x);
    }
}
