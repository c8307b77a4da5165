package spotline.numerics.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import spotline.numerics.Table;

class FaddeevaTest {
    // computed with mpmath 1.3.0, 20 digits: header of the table
    @Test
    void agreesWithTheTableComponentByComponent() {
        double worst = 0;
        for (double[] row : Table.read("special/faddeeva_w.csv").rows()) {
            double[] w = new double[2];
            Faddeeva.w(row[0], row[1], w);
            worst = Math.max(worst, Math.max(relative(w[0], row[2]), relative(w[1], row[3])));
        }
        assertThat(worst).isLessThan(1e-13);
    }

    // computed with mpmath 1.3.0, 20 digits: header of the table
    @Test
    void agreesWithTheTableOfTheLowerHalfPlane() {
        double worst = 0;
        for (double[] row :
                Table.read("special/faddeeva_w_lower_half_plane.csv").rows()) {
            double[] w = new double[2];
            Faddeeva.w(row[0], row[1], w);
            worst = Math.max(worst, Math.hypot(w[0] - row[2], w[1] - row[3]) / Math.hypot(row[2], row[3]));
        }
        assertThat(worst).isLessThan(1e-13);
    }

    @Test
    void scaledComplementaryErrorFunction() {
        // Abramowitz and Stegun table 7.1: erfc(1) = 1 - 0.84270 07929
        assertThat(Faddeeva.erfcx(1)).isCloseTo(Math.E * (1 - 0.8427007929), within(1e-9));
        assertThat(Faddeeva.erfcx(0)).isEqualTo(1);
    }

    private static double relative(double found, double expected) {
        if (Math.abs(expected) < Double.MIN_NORMAL) return Math.abs(found) < 1e-300 ? 0 : 1;
        return Math.abs(found / expected - 1);
    }
}
