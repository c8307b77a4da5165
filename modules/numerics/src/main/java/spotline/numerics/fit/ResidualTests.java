package spotline.numerics.fit;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.special.Erf;

/** Tests for structure that residuals should not have. */
public final class ResidualTests {
    private ResidualTests() {}

    /**
     * {@code sum (r_(i+1) - r_i)^2 / sum r_i^2}: 2 for independent residuals, near 0 for slowly varying ones. Source: J. von
     * Neumann, Ann. Math. Stat. 12 (1941) 367.
     */
    public static OptionalDouble vonNeumannRatio(double... residuals) {
        return vonNeumannRatio(List.of(residuals));
    }

    static OptionalDouble vonNeumannRatio(List<double[]> series) {
        double steps = 0;
        double squares = 0;
        for (double[] r : series) {
            for (int i = 0; i < r.length; i++) {
                squares += r[i] * r[i];
                if (i > 0) steps += (r[i] - r[i - 1]) * (r[i] - r[i - 1]);
            }
        }
        return squares > 0 && Double.isFinite(squares) ? OptionalDouble.of(steps / squares) : OptionalDouble.empty();
    }

    public static RunsTest runs(double... residuals) {
        return runs(List.of(residuals));
    }

    static RunsTest runs(List<double[]> series) {
        int runs = 0;
        double positive = 0;
        double negative = 0;
        double expected = 0;
        double variance = 0;
        for (double[] r : series) {
            int sign = 0;
            double p = 0;
            double m = 0;
            for (double value : r) {
                int here = value > 0 ? 1 : value < 0 ? -1 : sign;
                if (here == 0) continue;
                if (here != sign) runs++;
                sign = here;
                if (here > 0) p++;
                else m++;
            }
            positive += p;
            negative += m;
            double n = p + m;
            if (n == 0) continue;
            expected += 1 + 2 * p * m / n;
            if (n > 1) variance += 2 * p * m * (2 * p * m - n) / (n * n * (n - 1));
        }
        if (positive == 0 || negative == 0 || !(variance > 0)) {
            return new RunsTest(runs, expected, OptionalDouble.empty(), OptionalDouble.empty());
        }
        double z = (runs - expected) / Math.sqrt(variance);
        return new RunsTest(
                runs, expected, OptionalDouble.of(z), OptionalDouble.of(Erf.erfc(Math.abs(z) / Math.sqrt(2))));
    }
}
