package spotline.numerics.fit;

import java.util.Arrays;

/**
 * Householder decomposition with column pivoting of the weighted rows of derivatives, for steps and covariances that the
 * normal matrix has too few digits for.
 */
final class OrthogonalSolver {
    /** Column lengths below this part of the first, after scaling, are rounding. */
    private static final double RANK_TOLERANCE = 1e-14;

    private final int count;
    private final int length;
    private double[][] columns = new double[0][];
    private double[] rhs = new double[0];
    private final double[] size;
    private final double[] norms;
    private final double[] diagonal;
    private final int[] pivot;
    private int used;
    private int rank;

    OrthogonalSolver(int count, int points) {
        this.count = count;
        length = points + count;
        size = new double[count];
        norms = new double[count];
        diagonal = new double[count];
        pivot = new int[count];
    }

    /**
     * Least-squares step for the parameters that are not held: rows and residual as they are, below them the square root of
     * {@code lambda scale}. The steps of held parameters are taken as given.
     */
    void solve(Workspace workspace, Workspace.Point point, BoxStep held, double lambda, double[] scale, double[] step) {
        load(workspace, point, held, lambda, scale);
        for (int j = 0; j < count; j++) {
            if (held.isHeld(j) && step[j] != 0) subtract(workspace, point, j, step[j]);
        }
        decompose(true);
        double[] x = new double[used];
        for (int a = rank - 1; a >= 0; a--) {
            double sum = rhs[a];
            for (int b = a + 1; b < rank; b++) sum -= columns[b][a] * x[b];
            x[a] = sum / diagonal[a];
        }
        for (int a = 0; a < used; a++) step[pivot[a]] = x[a] / size[pivot[a]];
    }

    private void load(Workspace workspace, Workspace.Point point, BoxStep held, double lambda, double[] scale) {
        if (columns.length < count) {
            columns = new double[count][length];
            rhs = new double[length];
        }
        used = 0;
        Arrays.fill(rhs, 0);
        for (int j = 0; j < count; j++) {
            if (held.isHeld(j)) continue;
            pivot[used] = j;
            double[] column = columns[used++];
            Arrays.fill(column, 0);
            fill(workspace, point, j, column);
            column[length - count + j] = Math.sqrt(lambda * scale[j]);
            double sum = 0;
            for (double value : column) sum += value * value;
            size[j] = sum > 0 ? Math.sqrt(sum) : 1;
            for (int i = 0; i < length; i++) column[i] /= size[j];
        }
        int from = 0;
        for (int d = 0; d < workspace.blocks.length; d++) {
            int n = workspace.blocks[d].points();
            System.arraycopy(point.states[d].residual(), 0, rhs, from, n);
            from += n;
        }
    }

    private static void fill(Workspace workspace, Workspace.Point point, int j, double[] column) {
        int from = 0;
        for (int d = 0; d < workspace.blocks.length; d++) {
            Block block = workspace.blocks[d];
            int at = Arrays.binarySearch(block.used(), j);
            if (at >= 0) System.arraycopy(point.states[d].rows[at], 0, column, from, block.points());
            from += block.points();
        }
    }

    private void subtract(Workspace workspace, Workspace.Point point, int j, double step) {
        int from = 0;
        for (int d = 0; d < workspace.blocks.length; d++) {
            Block block = workspace.blocks[d];
            int at = Arrays.binarySearch(block.used(), j);
            if (at >= 0) {
                double[] row = point.states[d].rows[at];
                for (int i = 0; i < block.points(); i++) rhs[from + i] -= row[i] * step;
            }
            from += block.points();
        }
    }

    /** {@code |r|^2 - |r - J step|^2} from the rows: the normal matrix would lose it to cancellation. */
    double expectedDecrease(Workspace workspace, Workspace.Point point, double[] step) {
        Arrays.fill(rhs, 0);
        for (int j = 0; j < count; j++) {
            if (step[j] != 0) subtract(workspace, point, j, -step[j]);
        }
        double expected = 0;
        int from = 0;
        for (int d = 0; d < workspace.blocks.length; d++) {
            int n = workspace.blocks[d].points();
            double[] residual = point.states[d].residual();
            for (int i = 0; i < n; i++) expected += rhs[from + i] * (2 * residual[i] - rhs[from + i]);
            from += n;
        }
        return expected;
    }

    private void decompose(boolean withRhs) {
        rank = 0;
        double first = 0;
        for (int a = 0; a < used; a++) {
            int best = a;
            for (int b = a; b < used; b++) {
                double sum = 0;
                for (int i = a; i < length; i++) sum += columns[b][i] * columns[b][i];
                norms[b] = sum;
                if (sum > norms[best]) best = b;
            }
            exchange(a, best);
            double norm = Math.sqrt(norms[a]);
            if (a == 0) first = norm;
            if (!(norm > RANK_TOLERANCE * first)) return;
            double[] v = columns[a];
            double head = v[a] > 0 ? -norm : norm;
            diagonal[a] = head;
            v[a] -= head;
            double half = -head * v[a];
            for (int b = a + 1; b < used; b++) reflect(v, columns[b], a, half);
            if (withRhs) reflect(v, rhs, a, half);
            rank++;
        }
    }

    private void reflect(double[] v, double[] target, int from, double half) {
        double sum = 0;
        for (int i = from; i < length; i++) sum += v[i] * target[i];
        double factor = sum / half;
        for (int i = from; i < length; i++) target[i] -= factor * v[i];
    }

    private void exchange(int a, int b) {
        double[] column = columns[a];
        columns[a] = columns[b];
        columns[b] = column;
        double norm = norms[a];
        norms[a] = norms[b];
        norms[b] = norm;
        int p = pivot[a];
        pivot[a] = pivot[b];
        pivot[b] = p;
    }

    /** Inverse of {@code J'J} into {@code covariance}; marks what the rows do not determine. */
    void covariance(
            Workspace workspace, Workspace.Point point, BoxStep nothingHeld, double[] covariance, boolean[] unknown) {
        load(workspace, point, nothingHeld, 0, new double[count]);
        decompose(false);
        double[][] inverse = new double[rank][rank]; // of R11, upper
        for (int c = 0; c < rank; c++) {
            inverse[c][c] = 1 / diagonal[c];
            for (int r = c - 1; r >= 0; r--) {
                double sum = 0;
                for (int k = r + 1; k <= c; k++) sum += columns[k][r] * inverse[k][c];
                inverse[r][c] = -sum / diagonal[r];
            }
        }
        for (int c = rank; c < used; c++) {
            unknown[pivot[c]] = true;
            for (int r = 0; r < rank; r++) {
                double along = 0;
                for (int k = r; k < rank; k++) along += inverse[r][k] * columns[c][k];
                if (Math.abs(along) > 1e-7) unknown[pivot[r]] = true;
            }
        }
        for (int a = 0; a < rank; a++) {
            for (int b = 0; b < rank; b++) {
                double sum = 0;
                for (int k = Math.max(a, b); k < rank; k++) sum += inverse[a][k] * inverse[b][k];
                covariance[pivot[a] * count + pivot[b]] = sum / (size[pivot[a]] * size[pivot[b]]);
            }
        }
    }
}
