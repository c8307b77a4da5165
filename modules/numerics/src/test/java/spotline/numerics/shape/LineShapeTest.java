package spotline.numerics.shape;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import spotline.numerics.Table;

class LineShapeTest {
    @Test
    void voigtAgreesWithTheTable() {
        double worst = 0;
        for (double[] row : Table.read("special/voigt_profile.csv").rows()) {
            if (row[1] == 0 && row[2] == 0) continue;
            double found = new Voigt().value(row[0], 0, 1, row[1] * Voigt.FWHM_PER_SIGMA, 2 * row[2]);
            double error = row[3] < 1e-300 ? Math.abs(found - row[3]) : Math.abs(found / row[3] - 1);
            worst = Math.max(worst, error);
        }
        assertThat(worst).isLessThan(1e-13);
    }

    @Test
    void doniachSunjicAgreesWithTheTable() {
        double worst = 0;
        for (double[] row : Table.read("special/doniach_sunjic.csv").rows()) {
            DoniachSunjic ds = new DoniachSunjic(new AreaLimits(5, 10));
            double integral = ds.integral(row[1], row[2]);
            double found = integral * ds.value(row[0], 0, 1, row[3] * Voigt.FWHM_PER_SIGMA, 2 * row[2], row[1]);
            double error = Math.abs(found / row[5] - 1);
            worst = Math.max(worst, error);
        }
        assertThat(worst).isLessThan(1e-13);
    }
}
