package spotline.numerics.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TemplateTest {
    private static Template gaussian(double fwhm) {
        double[] x = new double[161];
        double[] y = new double[161];
        for (int i = 0; i < x.length; i++) {
            x[i] = -8 + 0.1 * i;
            y[i] = 40 * Math.exp(-4 * Math.log(2) * x[i] * x[i] / (fwhm * fwhm));
        }
        return new Template(x, y);
    }

    @Test
    void reproducesItsSamples() {
        double[] x = {-1, -0.4, 0, 0.3, 1.5};
        double[] y = {0.5, 2, 3, 2.5, 0.2};
        Template template = new Template(x, y);
        double scale = template.value(284, 284, 1, 0) / 3;
        for (int i = 0; i < x.length; i++) {
            assertThat(template.value(284 + x[i], 284, 1, 0)).isCloseTo(y[i] * scale, within(1e-12));
        }
        assertThat(template.value(282.9, 284, 1, 0)).isZero();
        assertThat(template.value(285.6, 284, 1, 0)).isZero();
    }

    // derived: the squares of the widths of Gaussians add
    @Test
    void broadeningAGaussianGivesAGaussian() {
        Template template = gaussian(1.2);
        double[] p = {285, 500, 0.9};
        double fwhm = Math.hypot(1.2, 0.9);
        assertThat(template.fwhm(p)).isCloseTo(fwhm, within(2e-5));
        for (double x = 282; x < 288; x += 0.17) {
            double expected = new Gaussian().value(x, 285, 500, fwhm);
            assertThat(template.value(x, p)).isCloseTo(expected, within(3e-5 * new Gaussian().height(285, 500, fwhm)));
        }
    }

    @Test
    void aTemplateCutOffAtItsEndsIsBroadenedThereToo() {
        // a box: value jumps at both ends, so that the broadened one is a difference of error functions
        Template box = new Template(new double[] {-1, -0.5, 0.5, 1}, new double[] {1, 1, 1, 1});
        double sigma = 0.3;
        double[] p = {0, 2, sigma * Voigt.FWHM_PER_SIGMA};
        for (double x = -2.5; x <= 2.5; x += 0.1) {
            double expected = 0.5
                    * (org.apache.commons.math3.special.Erf.erf((x + 1) / (sigma * Math.sqrt(2)))
                            - org.apache.commons.math3.special.Erf.erf((x - 1) / (sigma * Math.sqrt(2))));
            assertThat(box.value(x, p)).isCloseTo(expected, within(1e-10));
        }
    }

    @Test
    void isNeverNarrowerThanItsSamples() {
        Template template = gaussian(1.2);
        assertThatThrownBy(() -> template.withFwhm(new double[] {285, 1, 0}, 1.0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1.2");
    }

    @Test
    void refusesSamplesThatAreNoLine() {
        assertThatThrownBy(() -> new Template(new double[] {0, 1, 1, 2}, new double[] {1, 2, 2, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ascend");
        assertThatThrownBy(() -> new Template(new double[] {0, 1, 2, 3}, new double[] {-1, -2, -2, -1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("area");
        assertThatThrownBy(() -> new Template(new double[] {0, 1, 2}, new double[] {1, 2, 1}))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Template(new double[] {0, 1, 2, 3}, new double[] {1, Double.NaN, 2, 1}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
