package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LossSpectrumTest {
    private static final Complex[] UNIVERSAL = LossSpectrum.transformOf(LossFunction.UNIVERSAL);

    private static double[] line(Depth depth, double area, LossFunction loss) {
        ZeroLoss narrow = new ZeroLoss.Peak(0, area, 0.5, 0);
        return LossSpectrum.of(
                        List.of(new Emission("X", "1s", "", depth, List.of(narrow))),
                        loss == LossFunction.UNIVERSAL ? UNIVERSAL : LossSpectrum.transformOf(loss))
                .values(0);
    }

    private static double at(double[] spectrum, double bindingEv) {
        return spectrum[(int) Math.round((bindingEv - LossSpectrum.FIRST_EV) / LossSpectrum.STEP_EV)];
    }

    private static double integral(double[] spectrum, double from, double to) {
        double sum = 0;
        for (double e = from; e < to + 0.5 * LossSpectrum.STEP_EV; e += LossSpectrum.STEP_EV) sum += at(spectrum, e);
        return sum * LossSpectrum.STEP_EV;
    }

    @Test
    void withoutLossesAPeakKeepsItsAreaAndHeight() {
        double[] spectrum = LossSpectrum.of(
                        List.of(new Emission(
                                "X", "1s", "", new Depth.Below(0), List.of(new ZeroLoss.Peak(284.83, 1000, 1.2, 0)))),
                        LossSpectrum.transformOf(loss -> 0))
                .values(0);
        assertThat(integral(spectrum, 270, 300)).isCloseTo(1000, within(1e-8)); // the area asked for
        double sigma = 1.2 / 2.3548200450309493;
        double expected = 1000 / (sigma * Math.sqrt(2 * Math.PI)) * Math.exp(-0.5 * Math.pow(0.07 / sigma, 2));
        assertThat(at(spectrum, 284.9)).isCloseTo(expected, within(1e-8)); // Gaussian, closed form
    }

    @Test
    void theLorentzianTailIsTheNaturalOne() {
        double[] spectrum = LossSpectrum.of(
                        List.of(new Emission(
                                "X", "1s", "", new Depth.Below(0), List.of(new ZeroLoss.Peak(300, 1, 0.8, 0.4)))),
                        LossSpectrum.transformOf(loss -> 0))
                .values(0);
        // Lorentzian, closed form; the Gaussian adds a share 3 sigma^2 / x^2, the grid's period nothing that shows
        double x = 20;
        double sigma = 0.8 / 2.3548200450309493;
        double lorentz = 0.2 / Math.PI / (x * x + 0.04);
        assertThat(at(spectrum, 300 + x)).isCloseTo(lorentz * (1 + 3 * sigma * sigma / (x * x)), within(3e-8));
    }

    /**
     * An exponential loss function p q exp(-q T) has the closed-form convolution series p q exp(-q (1 - p) T): the
     * n-fold convolution is (p q)^n T^(n-1) exp(-q T) / (n - 1)!.
     */
    @ParameterizedTest
    @CsvSource({"5", "20", "60", "150"})
    void theTailOfANarrowLineIsTheClosedFormSeries(double loss) { // derived, closed form
        double p = 0.8;
        double q = 0.05;
        double[] spectrum = line(new Depth.Below(0), 1, t -> p * q * Math.exp(-q * t));
        double sigma = 0.5 / 2.3548200450309493;
        double rate = q * (1 - p);
        double expected = p * q * Math.exp(-rate * loss) * Math.exp(0.5 * rate * rate * sigma * sigma);
        assertThat(at(spectrum, loss)).isCloseTo(expected, within(3e-5 * expected)); // trapezoidal: p q T (q h)^2 / 12
    }

    /** Below a layer the series gains the Poisson-weighted orders of the layer: first order p q (1 + a) at T -> 0. */
    @Test
    void aLayerAboveTheEmittersAddsItsOwnLosses() { // derived, closed form
        double p = 0.8;
        double q = 0.05;
        double a = 0.7;
        double[] spectrum = line(new Depth.Below(a), 1, t -> p * q * Math.exp(-q * t));
        // exp(a k)/(1 - k) with k = p q/(q + is): to second order in T, p q [(1 + a) + T q (c2 p - (1 + a))],
        // c2 = 1 + a + a^2/2 being the coefficient of k^2
        double t = 2;
        double c2 = 1 + a + a * a / 2;
        double c3 = c2 + a * a * a / 6;
        double x = q * t;
        double expected = p * q * Math.exp(-x) * ((1 + a) + c2 * p * x + c3 * p * p * x * x / 2);
        assertThat(at(spectrum, t)).isCloseTo(expected, within(2e-4 * expected));
    }

    @Test
    void aThinLayerOfEmittersLosesHalfOfTheFirstOrder() { // derived: the limit a -> 0 is exp(0) = 1, first order a/2
        double a = 0.02;
        double[] spectrum = line(new Depth.Within(a), 1, LossFunction.UNIVERSAL);
        double first = LossFunction.UNIVERSAL.at(30);
        assertThat(at(spectrum, 30) / first).isCloseTo(a / 2, within(0.02 * a / 2));
    }

    /** Full multiple-scattering tail of a delta peak. */
    @ParameterizedTest
    @CsvSource({"10, 0.00961", "23.4, 0.01569", "50, 0.01534", "100, 0.01265"}) // derived by an independent series
    void theUniversalTailHasTheSeriesValues(double loss, double expected) {
        assertThat(at(line(new Depth.Below(0), 1, LossFunction.UNIVERSAL), loss))
                .isCloseTo(expected, within(1.2e-5));
    }

    /** Removing the loss integral again must leave the zero-loss peak and nothing else. */
    @Test
    void theHomogeneousSpectrumSolvesItsIntegralEquation() {
        double[] spectrum = line(new Depth.Below(0), 1, LossFunction.UNIVERSAL);
        for (double loss : new double[] {8, 30, 90, 200}) {
            double scattered = 0;
            for (int n = 1; n * LossSpectrum.STEP_EV < loss + 5; n++) {
                double t = n * LossSpectrum.STEP_EV;
                scattered += LossFunction.UNIVERSAL.at(t) * at(spectrum, loss - t) * LossSpectrum.STEP_EV;
            }
            assertThat(at(spectrum, loss) - scattered)
                    .isCloseTo(0, within(3e-7)); // exact but for the period of the grid
        }
    }

    @Test
    void aShiftMovesTheSpectrumAndNothingElse() {
        Emission emission =
                new Emission("X", "1s", "", new Depth.Below(0.3), List.of(new ZeroLoss.Peak(500, 100, 0.9, 0.2)));
        LossSpectrum spectrum = LossSpectrum.of(List.of(emission), UNIVERSAL);
        double[] still = spectrum.values(0);
        double[] moved = spectrum.values(2.5);
        for (double e = 480; e < 700; e += 7) assertThat(at(moved, e + 2.5)).isCloseTo(at(still, e), within(1e-9));
    }

    @Test
    void nothingWrapsRoundToTheLowSide() {
        double[] spectrum = line(new Depth.Below(0), 1, LossFunction.UNIVERSAL);
        assertThat(Math.abs(at(spectrum, -100))).isLessThan(2e-5 * at(spectrum, 23.4));
    }
}
