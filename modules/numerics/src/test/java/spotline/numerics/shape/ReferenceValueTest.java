package spotline.numerics.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.numerics.Table;

/** Shapes against tables of high precision and numbers derived in closed form. */
class ReferenceValueTest {
    // computed with mpmath 1.3.0, 20 digits: header of the table
    @Test
    void voigtAgreesWithTheTable() {
        Voigt voigt = new Voigt();
        for (double[] row : Table.read("special/voigt_profile.csv").rows()) {
            if (row[1] == 0 && row[2] == 0) continue; // not a function
            double[] p = {0, 1, row[1] * Voigt.FWHM_PER_SIGMA, 2 * row[2]};
            double[] value = new double[1];
            voigt.evaluate(new double[] {row[0]}, p, value);
            double[] together = new double[1];
            voigt.evaluate(new double[] {row[0]}, p, together, new double[4][1]);
            String what = Arrays.toString(row);
            // below 1e-300 digits are lost to underflow
            assertThat(value[0]).as(what).isCloseTo(row[3], within(1e-13 * row[3] + 1e-300));
            assertThat(together[0]).as(what).isCloseTo(row[3], within(1e-13 * row[3] + 1e-300));
        }
    }

    // computed with mpmath 1.3.0: header of the table
    @Test
    void theKernelKeepsThirteenDigitsOfEachComponentWhereAVoigtUsesIt() {
        for (double[] row : Table.read("special/faddeeva_w.csv").rows()) {
            if (row[0] > 1e8) continue;
            double[][] w = new double[6][1];
            VoigtKernel.evaluate(new double[] {row[0]}, 0, 1, row[1], w, new double[0], new ShapeScratch());
            assertThat(w[0][0]).as(Arrays.toString(row)).isCloseTo(row[2], within(1e-13 * row[2] + 1e-300));
            double size = Math.hypot(row[2], row[3]);
            assertThat(w[4][0]).as(Arrays.toString(row)).isCloseTo(row[3], within(1e-13 * size + 1e-300));
        }
    }

    @Test
    void theKernelsDerivativesAgreeWithThoseOfOnePoint() {
        double[] x = new double[801];
        for (int i = 0; i < x.length; i++) x[i] = -20 + 0.05 * i;
        double[] point = new double[6];
        for (double y : new double[] {0, 1e-7, 0.01, 0.059, 0.061, 0.3, 2, 7.99, 8.01, 12, 15.9, 16.1, 100, 1e6}) {
            double[][] w = new double[6][x.length];
            VoigtKernel.evaluate(x, 0, 1, y, w, new double[0], new ShapeScratch());
            for (int i = 0; i < x.length; i++) {
                Faddeeva.withDerivatives(x[i], y, point);
                double slope = Math.hypot(point[2], point[3]);
                double sum = Math.hypot(point[4], point[5]);
                String what = "x " + x[i] + " y " + y;
                assertThat(w[1][i]).as(what).isCloseTo(point[2], within(1e-12 * slope));
                assertThat(w[2][i]).as(what).isCloseTo(point[3], within(1e-12 * slope));
                assertThat(w[3][i]).as(what).isCloseTo(point[4], within(2e-11 * sum));
                assertThat(w[5][i]).as(what).isCloseTo(point[5], within(2e-11 * sum));
            }
        }
    }

    // computed with mpmath 1.3.0, 30 digits: header of the table
    @Test
    void voigtWidthAndHeightAgreeWithTheTable() {
        Table table = Table.read("special/voigt_fwhm.csv");
        for (double[] row : table.rows()) {
            PeakMeasure measure = new Voigt().measure(284.8, 1, row[0], row[1]);
            double exact = row[table.column("fwhm_V_exact")];
            double height = row[table.column("peak_height_unit_area")];
            assertThat(measure.fwhm()).isCloseTo(exact, within(1e-9 * exact + 1e-12));
            assertThat(measure.height()).isCloseTo(height, within(1e-12 * height));
        }
    }

    // derived, root of the exact profile: Olivero and Longbottom (1977) is within 3e-4
    @ParameterizedTest
    @CsvSource({"1, 0.2, 1.11100", "0.8, 0.4, 1.03502", "1, 1, 1.63760"})
    void voigtWidth(double gaussian, double lorentzian, double fwhm) {
        assertThat(new Voigt().fwhm(0, 1, gaussian, lorentzian)).isCloseTo(fwhm, within(5e-6));
        double approximate = 0.5346 * lorentzian + Math.sqrt(0.2166 * lorentzian * lorentzian + gaussian * gaussian);
        assertThat(approximate).isCloseTo(fwhm, within(3e-4 * fwhm));
    }

    // computed with mpmath 1.3.0: header of the table
    @Test
    void doniachSunjicAgreesWithTheTable() {
        DoniachSunjic shape = new DoniachSunjic(new AreaLimits(5, 10));
        for (double[] row : Table.read("special/doniach_sunjic.csv").rows()) {
            double integral = shape.integral(row[1], row[2]);
            double broadened = integral * shape.value(row[0], 0, 1, row[3] * Voigt.FWHM_PER_SIGMA, 2 * row[2], row[1]);
            assertThat(broadened).as(Arrays.toString(row)).isCloseTo(row[5], within(2e-13 * row[5]));
            double sharp = integral * shape.value(row[0], 0, 1, 0, 2 * row[2], row[1]);
            assertThat(sharp).as(Arrays.toString(row)).isCloseTo(row[4], within(1e-12 * row[4]));
        }
    }

    // exact, from the derivative: header of the table
    @Test
    void doniachSunjicMaximaAgreeWithTheTable() {
        DoniachSunjic shape = new DoniachSunjic();
        for (double[] row : Table.read("special/doniach_sunjic_maxima.csv").rows()) {
            double integral = shape.integral(row[0], row[1]);
            PeakMeasure measure = shape.measure(0, integral, 0, 2 * row[1], row[0]);
            assertThat(measure.maximumAt()).isCloseTo(row[2], within(1e-7 * row[1]));
            assertThat(measure.height()).isCloseTo(row[3], within(1e-11 * row[3]));
            assertThat(measure.areaLimits()).contains(new AreaLimits(20, 20));
        }
    }

    // derived: value, maximum and areas of the unconvolved shape for F = 0.3, a = 0.1
    @Test
    void doniachSunjicAreaNeedsItsLimits() {
        double[] areas = {3.493, 3.817, 4.130};
        double[] limits = {5, 10, 20};
        for (int i = 0; i < 3; i++) {
            DoniachSunjic shape = new DoniachSunjic(new AreaLimits(limits[i], limits[i]));
            assertThat(shape.integral(0.1, 0.3)).isCloseTo(areas[i], within(5e-4));
            double[] p = {0, shape.integral(0.1, 0.3), 0, 0.6, 0.1};
            assertThat(shape.value(0, p)).isCloseTo(2.918843, within(5e-7));
            // on a binding-energy axis the maximum lies above the position
            assertThat(shape.measure(p).maximumAt()).isCloseTo(0.02486, within(5e-6));
        }
    }

    // computed with mpmath 1.3.0, 30 digits: header of the table
    @Test
    void voigtWithATailAgreesWithTheTable() {
        VoigtExponentialTail shape = new VoigtExponentialTail();
        for (double[] row : Table.read("special/voigt_exponential_tail.csv").rows()) {
            double[] p = {0, 1, row[1] * Voigt.FWHM_PER_SIGMA, 2 * row[2], row[3]};
            // a value far below the height is a difference along the path
            double height = shape.height(p);
            assertThat(shape.value(row[0], p))
                    .as(Arrays.toString(row))
                    .isCloseTo(row[4], within(1e-12 * row[4] + 1e-15 * height));
        }
    }

    @Test
    void withoutDecayTheTailIsAVoigt() {
        double[] x = {-3, -0.5, 0, 0.2, 1, 4};
        double[] tail = new double[6];
        double[] voigt = new double[6];
        new VoigtExponentialTail().evaluate(x, new double[] {0.1, 50, 1.1, 0.3, 0}, tail);
        new Voigt().evaluate(x, new double[] {0.1, 50, 1.1, 0.3}, voigt);
        for (int i = 0; i < 6; i++) assertThat(tail[i]).isCloseTo(voigt[i], within(1e-12 * voigt[i]));
    }

    @Test
    void withoutAsymmetryDoniachSunjicIsAVoigt() {
        DoniachSunjic shape = new DoniachSunjic();
        double integral = shape.integral(0, 0.15);
        for (double x : new double[] {-8, -1, 0, 0.3, 2, 12}) {
            double voigt = new Voigt().value(x, 0, 1, 0.7, 0.3);
            assertThat(shape.value(x, 0, integral / Math.PI, 0.7, 0.3, 0)).isCloseTo(voigt, within(2e-13 * voigt));
        }
    }

    // computed with mpmath 1.3.0, 30 digits: header of the table
    @Test
    void productAreaAndWidthAgreeWithTheTable() {
        GaussianLorentzianProduct shape = new GaussianLorentzianProduct();
        for (double[] row :
                Table.read("special/gaussian_lorentzian_product.csv").rows()) {
            assertThat(GaussianLorentzianProduct.area(row[0])).isCloseTo(row[1], within(1e-14 * row[1]));
            double[] p = {0, row[1], 1, row[0]};
            assertThat(shape.height(p)).isCloseTo(1, within(1e-13));
            assertThat(shape.fwhm(p)).isCloseTo(row[2], within(1e-12));
        }
    }

    // derived: unit height and w = 1; product rows 0.1 to 0.8 integrated over +-400 w
    @ParameterizedTest
    @CsvSource({
        "0, 1.064467, 1.064467, 1.0000",
        "0.1, 1.115100, 1.048001, 0.9817",
        "0.3, 1.216366, 1.041987, 0.9614",
        "0.5, 1.317632, 1.061991, 0.9560",
        "0.8, 1.469530, 1.161324, 0.9713",
        "1.0, 1.570796, 1.570796, 1.0000"
    })
    void sumAndProduct(double m, double sumArea, double productArea, double productFwhm) {
        double[] sum = new GaussianLorentzianSum().withHeight(new double[] {0, 1, 1, m}, 1);
        assertThat(sum[LineShape.AREA]).isCloseTo(sumArea, within(5e-7));
        assertThat(new GaussianLorentzianSum().fwhm(sum)).isCloseTo(1, within(1e-12));
        double[] product = new GaussianLorentzianProduct().withHeight(new double[] {0, 1, 1, m}, 1);
        assertThat(product[LineShape.AREA]).isCloseTo(productArea, within(5e-7));
        assertThat(new GaussianLorentzianProduct().fwhm(product)).isCloseTo(productFwhm, within(5e-5));
    }

    // derived, closed form
    @Test
    void gaussianAndLorentzian() {
        assertThat(new Gaussian().height(0, 1, 1)).isCloseTo(1 / 1.0644670194312262, within(1e-15));
        assertThat(new Gaussian().fwhm(5, 3, 0.8)).isCloseTo(0.8, within(1e-12));
        assertThat(new Lorentzian().height(0, 1, 1)).isCloseTo(2 / Math.PI, within(1e-15));
        assertThat(new Lorentzian().fwhm(5, 3, 0.8)).isCloseTo(0.8, within(1e-12));
        // within 3.8 full widths the vector exponential, beyond 0
        for (double x = -3.79; x < 3.8; x += 0.01) {
            double[] value = new double[1];
            new Gaussian().evaluate(new double[] {x}, new double[] {0, 1.0644670194312262, 1}, value, new double[3][1]);
            double exact = Math.exp(-4 * Math.log(2) * x * x);
            assertThat(value[0]).isCloseTo(exact, within(3e-14 * exact));
        }
    }
}
