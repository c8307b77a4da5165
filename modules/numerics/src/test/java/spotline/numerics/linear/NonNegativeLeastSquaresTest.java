package spotline.numerics.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class NonNegativeLeastSquaresTest {
    private static double objective(double[][] h, double[] g, double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum -= g[i] * x[i];
            for (int j = 0; j < x.length; j++) sum += 0.5 * x[i] * h[i][j] * x[j];
        }
        return sum;
    }

    /** Random positive definite problem of the given size. */
    private static double[][] gram(Random random, int n) {
        double[][] a = new double[n + 4][n];
        for (double[] row : a) for (int j = 0; j < n; j++) row[j] = random.nextGaussian();
        double[][] h = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) for (double[] row : a) h[i][j] += row[i] * row[j];
        }
        return h;
    }

    @Test
    void anUnconstrainedMinimumWithoutNegativesIsTheSolution() {
        double[][] h = {{2, 0}, {0, 4}};
        NonNegativeLeastSquares.Solution s =
                NonNegativeLeastSquares.solve(h, new double[] {2, 8}, new boolean[2], new boolean[2]);
        assertThat(s.converged()).isTrue();
        assertThat(s.values()).containsExactly(new double[] {1, 2}, within(1e-12));
    }

    @Test
    void anUnknownThatWouldBeNegativeIsHeldAtZeroUnlessItIsFree() {
        double[][] h = {{1, 0.5}, {0.5, 1}};
        double[] g = {1, -1};
        NonNegativeLeastSquares.Solution held =
                NonNegativeLeastSquares.solve(h, g, new boolean[2], new boolean[] {true, true});
        // derived, closed form: with the second at 0 the first is g/h = 1
        assertThat(held.values()).containsExactly(new double[] {1, 0}, within(1e-12));
        assertThat(held.indices()).containsExactly(0);
        NonNegativeLeastSquares.Solution free =
                NonNegativeLeastSquares.solve(h, g, new boolean[] {false, true}, new boolean[2]);
        // derived, closed form: inverse of [[1, .5], [.5, 1]] times (1, -1) is (2, -2)
        assertThat(free.value(0)).isCloseTo(2, within(1e-12));
        assertThat(free.value(1)).isCloseTo(-2, within(1e-12));
    }

    @Test
    void everySubsetOfUnknownsDoesWorse() {
        Random random = new Random(7);
        for (int round = 0; round < 60; round++) {
            int n = 2 + random.nextInt(7);
            double[][] h = gram(random, n);
            double[] g = new double[n];
            boolean[] free = new boolean[n];
            boolean[] start = new boolean[n];
            for (int i = 0; i < n; i++) {
                g[i] = 3 * random.nextGaussian();
                free[i] = random.nextInt(5) == 0;
                start[i] = random.nextBoolean();
            }
            NonNegativeLeastSquares.Solution s = NonNegativeLeastSquares.solve(h, g, free, start);
            assertThat(s.converged()).isTrue();
            double best = objective(h, g, s.values());
            for (int subset = 0; subset < 1 << n; subset++) {
                int[] picked = picked(subset, n);
                if (picked.length == 0) continue;
                double[] right = new double[picked.length];
                for (int k = 0; k < picked.length; k++) right[k] = g[picked[k]];
                double[] part = Cholesky.of(h, picked).solve(right);
                double[] x = new double[n];
                boolean allowed = true;
                for (int k = 0; k < picked.length; k++) {
                    x[picked[k]] = part[k];
                    allowed &= free[picked[k]] || part[k] >= 0;
                }
                if (allowed) assertThat(best).isLessThanOrEqualTo(objective(h, g, x) + 1e-9);
            }
            for (int i = 0; i < n; i++) if (!free[i]) assertThat(s.value(i)).isGreaterThanOrEqualTo(0);
        }
    }

    private static int[] picked(int subset, int n) {
        return java.util.stream.IntStream.range(0, n)
                .filter(i -> (subset >> i & 1) == 1)
                .toArray();
    }

    @Test
    void theInverseUndoesTheMatrix() {
        double[][] h = gram(new Random(3), 9);
        int[] picked = {1, 2, 4, 7, 8};
        double[][] inverse = Cholesky.of(h, picked).inverse();
        for (int i = 0; i < picked.length; i++) {
            for (int j = 0; j < picked.length; j++) {
                double sum = 0;
                for (int k = 0; k < picked.length; k++) sum += h[picked[i]][picked[k]] * inverse[k][j];
                assertThat(sum).isCloseTo(i == j ? 1 : 0, within(1e-9));
            }
        }
    }

    @Test
    void theForwardSolutionMeasuresAVectorByTheInverse() {
        double[][] h = gram(new Random(5), 4);
        int[] all = {0, 1, 2, 3};
        double[] b = {1, -2, 0.5, 3};
        Cholesky factor = Cholesky.of(h, all);
        double[] z = factor.forward(b);
        double[] x = factor.solve(b);
        assertThat(Cholesky.dot(z, z, 4)).isCloseTo(Cholesky.dot(b, x, 4), within(1e-9));
    }

    @Test
    void aMatrixWithoutPositiveDiagonalIsRefused() {
        assertThatThrownBy(() -> Cholesky.of(new double[][] {{0}}, new int[] {0}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("diagonal 0");
    }

    @Test
    void sizesThatDoNotFitAreRefused() {
        assertThatThrownBy(() ->
                        NonNegativeLeastSquares.solve(new double[2][2], new double[3], new boolean[3], new boolean[3]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("one size");
    }
}
