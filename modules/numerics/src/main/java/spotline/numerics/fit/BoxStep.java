package spotline.numerics.fit;

import java.util.Arrays;

/**
 * Minimiser of {@code d (H + lambda D) d - 2 g d} with {@code low <= q + d <= high}: parameters that would leave the box
 * are put on its face one round after another, those that the descent presses against a face stay there.
 */
final class BoxStep {
    private final int count;
    private final double[] factor;
    private final double[] rhs;
    private final int[] index;
    private final boolean[] held;
    private double worstPivot;

    BoxStep(int count) {
        this.count = count;
        factor = new double[count * count];
        rhs = new double[count];
        index = new int[count];
        held = new boolean[count];
    }

    /** Smallest pivot over its diagonal in the last factorisation: the precision left in it. */
    double worstPivot() {
        return worstPivot;
    }

    boolean isHeld(int j) {
        return held[j];
    }

    /** Marks what is pressed against a bound; returns whether any parameter is left to move. */
    boolean begin(double[] q, double[] descent, double[] lower, double[] upper, boolean[] movable) {
        boolean any = false;
        for (int j = 0; j < count; j++) {
            held[j] = !movable[j] || (q[j] <= lower[j] && descent[j] <= 0) || (q[j] >= upper[j] && descent[j] >= 0);
            any |= !held[j];
        }
        return any;
    }

    /** Puts those that left the box on its face; returns whether any did. */
    boolean clamp(double[] q, double[] step, double[] lower, double[] upper) {
        boolean clamped = false;
        for (int j = 0; j < count; j++) {
            if (held[j]) continue;
            double to = q[j] + step[j];
            if (to < lower[j]) {
                step[j] = lower[j] - q[j];
                held[j] = true;
                clamped = true;
            } else if (to > upper[j]) {
                step[j] = upper[j] - q[j];
                held[j] = true;
                clamped = true;
            }
        }
        return clamped;
    }

    /** @return false when the matrix is not positive definite within the precision of the arithmetic */
    boolean solve(
            double[] normal,
            double[] scale,
            double lambda,
            double[] descent,
            double[] q,
            double[] lower,
            double[] upper,
            boolean[] movable,
            double[] step) {
        Arrays.fill(step, 0);
        if (!begin(q, descent, lower, upper, movable)) return true;
        do {
            if (!solveHeld(normal, scale, lambda, descent, step)) return false;
        } while (clamp(q, step, lower, upper));
        return true;
    }

    private boolean solveHeld(double[] normal, double[] scale, double lambda, double[] descent, double[] step) {
        int m = 0;
        for (int j = 0; j < count; j++) {
            if (!held[j]) index[m++] = j;
        }
        if (m == 0) return true;
        for (int a = 0; a < m; a++) {
            int j = index[a];
            rhs[a] = descent[j];
            if (m < count) {
                for (int k = 0; k < count; k++) {
                    if (held[k] && step[k] != 0) rhs[a] -= entry(normal, j, k) * step[k];
                }
            }
            for (int b = 0; b < a; b++) factor[a * count + b] = entry(normal, j, index[b]);
            factor[a * count + a] = normal[j * count + j] + lambda * scale[j];
        }
        if (!factorise(m)) return false;
        for (int a = 0; a < m; a++) {
            double sum = rhs[a];
            for (int b = 0; b < a; b++) sum -= factor[a * count + b] * rhs[b];
            rhs[a] = sum * factor[a * count + a];
        }
        for (int a = m - 1; a >= 0; a--) {
            double value = rhs[a] * factor[a * count + a];
            rhs[a] = value;
            for (int b = 0; b < a; b++) rhs[b] -= factor[a * count + b] * value;
        }
        for (int a = 0; a < m; a++) step[index[a]] = rhs[a];
        return true;
    }

    /** Cholesky by rows; the diagonal is kept inverted. */
    private boolean factorise(int m) {
        worstPivot = 1;
        for (int a = 0; a < m; a++) {
            int rowA = a * count;
            double diagonal = factor[rowA + a];
            for (int b = 0; b < a; b++) {
                int rowB = b * count;
                double sum = factor[rowA + b];
                for (int c = 0; c < b; c++) sum -= factor[rowA + c] * factor[rowB + c];
                factor[rowA + b] = sum * factor[rowB + b];
            }
            double pivot = diagonal;
            for (int c = 0; c < a; c++) pivot -= factor[rowA + c] * factor[rowA + c];
            double relative = diagonal > 0 ? pivot / diagonal : 0;
            worstPivot = Math.min(worstPivot, relative);
            if (!(relative > 1e-15)) return false;
            factor[rowA + a] = 1 / Math.sqrt(pivot);
        }
        return true;
    }

    private double entry(double[] normal, int j, int k) {
        return j >= k ? normal[j * count + k] : normal[k * count + j];
    }
}
