package spotline.numerics.linear;

import java.util.Arrays;

/**
 * Least squares in which chosen unknowns may not be negative, from the normal equations.
 *
 * <p>Minimises {@code x' H x / 2 - g' x} for a symmetric positive definite H (n x n), {@code x[i] >= 0} unless unknown i
 * is free. Unknowns are split into those that are 0 and those solved for; all that break a sign change sides at once, and
 * one at a time when that does not lessen their number.
 *
 * <p>Errors: {@link IllegalArgumentException} for sizes that do not fit or a diagonal element that is not above 0. After
 * {@value #MOST_ROUNDS} exchanges the last solution, its negative values set to 0, is given back as not converged.
 *
 * <p>Source: L.F. Portugal, J.J. Judice, L.N. Vicente, Math. Comp. 63 (1994) 625, block principal pivoting.
 */
public final class NonNegativeLeastSquares {
    private static final int MOST_ROUNDS = 300;
    private static final int PATIENCE = 3;
    private static final double RELATIVE_TOLERANCE = 1e-10;

    /** Values of the unknowns, and which were solved for; the others are 0. */
    public static final class Solution {
        private final double[] values;
        private final boolean[] solved;
        private final boolean converged;

        private Solution(double[] values, boolean[] solved, boolean converged) {
            this.values = values;
            this.solved = solved;
            this.converged = converged;
        }

        public double value(int unknown) {
            return values[unknown];
        }

        public double[] values() {
            return values.clone();
        }

        public boolean[] solved() {
            return solved.clone();
        }

        /** Indices of the unknowns solved for, rising. */
        public int[] indices() {
            return indicesOf(solved);
        }

        public boolean converged() {
            return converged;
        }
    }

    private NonNegativeLeastSquares() {}

    /**
     * @param free unknowns that may be negative
     * @param start unknowns to begin with as solved for; free ones always are
     */
    public static Solution solve(double[][] h, double[] g, boolean[] free, boolean[] start) {
        int n = g.length;
        if (h.length != n || free.length != n || start.length != n) {
            throw new IllegalArgumentException("matrix, right side and flags must have one size, were " + h.length
                    + ", " + n + ", " + free.length + ", " + start.length);
        }
        boolean[] solved = new boolean[n];
        for (int i = 0; i < n; i++) solved[i] = free[i] || start[i];
        int fewest = Integer.MAX_VALUE;
        int patience = PATIENCE;
        double[] x = new double[n];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            int[] picked = indicesOf(solved);
            x = new double[n];
            if (picked.length > 0) {
                double[] right = new double[picked.length];
                for (int k = 0; k < picked.length; k++) right[k] = g[picked[k]];
                double[] part = Cholesky.of(h, picked).solve(right);
                for (int k = 0; k < picked.length; k++) x[picked[k]] = part[k];
            }
            boolean[] wrong = new boolean[n];
            int count = 0;
            int last = -1;
            for (int i = 0; i < n; i++) {
                if (free[i]) continue;
                if (solved[i]) {
                    wrong[i] = x[i] < 0;
                } else {
                    double gradient = -g[i];
                    for (int k : picked) gradient += h[i][k] * x[k];
                    wrong[i] = gradient < -RELATIVE_TOLERANCE * (Math.abs(g[i]) + 1e-300);
                }
                if (wrong[i]) {
                    count++;
                    last = i;
                }
            }
            if (count == 0) return new Solution(x, solved, true);
            if (count < fewest) {
                fewest = count;
                patience = PATIENCE;
            } else if (patience > 0) {
                patience--;
            } else {
                Arrays.fill(wrong, false);
                wrong[last] = true;
            }
            for (int i = 0; i < n; i++) if (wrong[i]) solved[i] = !solved[i];
        }
        for (int i = 0; i < n; i++) if (!free[i] && x[i] < 0) x[i] = 0;
        return new Solution(x, solved, false);
    }

    private static int[] indicesOf(boolean[] flags) {
        int count = 0;
        for (boolean flag : flags) if (flag) count++;
        int[] indices = new int[count];
        int k = 0;
        for (int i = 0; i < flags.length; i++) if (flags[i]) indices[k++] = i;
        return indices;
    }
}
