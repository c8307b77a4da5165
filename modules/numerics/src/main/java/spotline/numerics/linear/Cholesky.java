package spotline.numerics.linear;

/**
 * Cholesky factor of the rows and columns of a symmetric matrix that a list of indices picks.
 *
 * <p>Shape: the picked part is m x m. Errors: {@link IllegalArgumentException} when the part is not positive definite
 * even after a relative 1e-12 is added to its diagonal.
 *
 * <p>Source: G.H. Golub, C.F. Van Loan, Matrix Computations, section 4.2.
 */
public final class Cholesky {
    private static final double RIDGE = 1e-12;

    private final int size;
    private final double[][] lower;

    private Cholesky(int size, double[][] lower) {
        this.size = size;
        this.lower = lower;
    }

    public static Cholesky of(double[][] matrix, int[] picked) {
        int m = picked.length;
        double[][] l = new double[m][];
        for (int i = 0; i < m; i++) {
            double[] row = new double[i + 1];
            double[] from = matrix[picked[i]];
            for (int j = 0; j < i; j++) {
                row[j] = (from[picked[j]] - dot(row, l[j], j)) / l[j][j];
            }
            double diagonal = from[picked[i]];
            double rest = diagonal - dot(row, row, i);
            double least = RIDGE * diagonal;
            if (!(diagonal > 0)) {
                throw new IllegalArgumentException("diagonal " + picked[i] + " must be above 0, was " + diagonal);
            }
            row[i] = Math.sqrt(Math.max(rest, least));
            l[i] = row;
        }
        return new Cholesky(m, l);
    }

    /** Sum of the products of the first elements of two arrays. */
    public static double dot(double[] a, double[] b, int length) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int k = 0;
        for (; k + 3 < length; k += 4) {
            s0 += a[k] * b[k];
            s1 += a[k + 1] * b[k + 1];
            s2 += a[k + 2] * b[k + 2];
            s3 += a[k + 3] * b[k + 3];
        }
        for (; k < length; k++) s0 += a[k] * b[k];
        return s0 + s1 + s2 + s3;
    }

    public int size() {
        return size;
    }

    /** Solution of (part) x = b. */
    public double[] solve(double[] b) {
        double[] x = forward(b);
        for (int i = size - 1; i >= 0; i--) {
            double value = x[i] / lower[i][i];
            x[i] = value;
            double[] row = lower[i];
            for (int j = 0; j < i; j++) x[j] -= row[j] * value;
        }
        return x;
    }

    /** Solution of L z = b; the squared length of z is b' (part)^-1 b. */
    public double[] forward(double[] b) {
        double[] z = b.clone();
        for (int i = 0; i < size; i++) {
            double[] row = lower[i];
            z[i] = (z[i] - dot(row, z, i)) / row[i];
        }
        return z;
    }

    /** Inverse of the part, m x m. */
    public double[][] inverse() {
        // Columns of L^-1, each zero above its own index; the inverse is their Gram matrix.
        double[][] columns = new double[size][];
        for (int c = 0; c < size; c++) {
            double[] z = new double[size];
            z[c] = 1 / lower[c][c];
            for (int i = c + 1; i < size; i++) {
                double sum = 0;
                double[] row = lower[i];
                for (int j = c; j < i; j++) sum += row[j] * z[j];
                z[i] = -sum / row[i];
            }
            columns[c] = z;
        }
        double[][] inverse = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = i; k < size; k++) sum += columns[i][k] * columns[j][k];
                inverse[i][j] = sum;
                inverse[j][i] = sum;
            }
        }
        return inverse;
    }
}
