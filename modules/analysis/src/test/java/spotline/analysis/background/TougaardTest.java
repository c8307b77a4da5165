package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class TougaardTest {
    private static final double B = 2866; // Tougaard 1988, from memory
    private static final double C = 1643; // Tougaard 1988, from memory
    private static final TougaardTwo FIXED = new TougaardTwo(1, EndpointPlacement.INSIDE, OptionalDouble.of(B), C);

    @Test
    void twoParameterCrossSection() {
        // derived, closed form: maximum at sqrt(C/3), integral B/(2C) T^2/(C+T^2)
        double peak = Math.sqrt(C / 3);
        assertThat(peak).isCloseTo(23.402, within(0.0005));
        assertThat(TougaardTwo.crossSection(B, C, peak)).isCloseTo(0.013976, within(5e-7));
        assertThat(TougaardTwo.crossSection(B, C, 10)).isCloseTo(0.00943, within(5e-6));
        assertThat(TougaardTwo.crossSection(B, C, 50)).isCloseTo(0.00835, within(5e-6));
        DoubleUnaryOperator k = loss -> TougaardTwo.crossSection(B, C, loss);
        double[] to = {10, 20, 30, 50, 100};
        double[] integral = {0.0500, 0.1708, 0.3087, 0.5263, 0.7491};
        for (int i = 0; i < to.length; i++) {
            assertThat(integral(k, to[i])).isCloseTo(integral[i], within(5e-5));
        }
        assertThat(integral(k, 3000)).isCloseTo(0.87219, within(0.0005));
        assertThat(TougaardTwo.crossSection(B, C, -1)).isZero();
    }

    @ParameterizedTest
    // parameters: Tougaard 1997, from memory; integral and maximum: derived, closed form
    @CsvSource({
        "434, 551, 436, 1.0973, 21.16",
        "325, 542, 275, 1.0871, 21.81",
        "132, 325, 96, 1.0061, 17.36",
        "73, 260, 62, 0.7851, 15.64",
        "16.5, 230, 4.5, 0.7716, 15.13"
    })
    void threeParameterCrossSection(double b, double c, double d, double integral, double peak) {
        DoubleUnaryOperator k = loss -> TougaardThree.crossSection(b, c, d, 0, loss);
        // behind T the integral is B/(2 T^2) to first order
        assertThat(integral(k, 3000) + b / (2 * 3000.0 * 3000)).isCloseTo(integral, within(6e-5));
        double best = 0;
        for (double t = 5; t < 40; t += 0.001) {
            if (k.applyAsDouble(t) > k.applyAsDouble(best)) best = t;
        }
        assertThat(best).isCloseTo(peak, within(0.006));
        assertThat(TougaardThree.crossSection(b, c, d, 9, 9)).isZero();
        assertThat(TougaardThree.crossSection(b, c, d, 9, 9.1)).isPositive();
    }

    private static double integral(DoubleUnaryOperator k, double to) {
        int n = 300_000;
        double sum = 0;
        for (int i = 0; i < n; i++) sum += k.applyAsDouble((i + 0.5) * to / n);
        return sum * to / n;
    }

    @Test
    void everyScatteringOfADeltaPeakAndItsRemoval() {
        double step = 0.1;
        double[] energy = Scans.grid(0, step, 1001);
        double[] primary = new double[1001];
        primary[0] = 1 / step;
        double[] spectrum = TougaardTwo.spectrumOf(energy, primary, B, C);
        // derived, checked numerically
        assertThat(spectrum[100]).isCloseTo(0.00961, within(5e-6));
        assertThat(spectrum[234]).isCloseTo(0.01569, within(5e-6));
        assertThat(spectrum[500]).isCloseTo(0.01534, within(5e-6));
        assertThat(spectrum[1000]).isCloseTo(0.01265, within(5e-6));
        // The low end has to be level for the background's base: three empty channels before the line.
        for (int channels : new int[] {300, 1001}) {
            double[] axis = Scans.grid(-0.3, step, channels);
            double[] line = new double[channels];
            line[3] = 1 / step;
            double[] seen = TougaardTwo.spectrumOf(axis, line, B, C);
            Subtraction removed = Scans.subtract(FIXED, Scans.scan(axis, seen), new Window(-0.3, axis[channels - 1]));
            for (int i = 4; i < channels; i++) {
                assertThat(removed.net(i)).isCloseTo(0, within(channels == 300 ? 1e-15 : 1e-14));
            }
            assertThat(removed.netArea().value()).isCloseTo(1, within(1e-12));
        }
    }

    private static final double[] LONG = Scans.grid(275, 0.1, 700);
    private static final Window RANGE = new Window(275, 344.9);

    private static BindingScan scattered(double[] energy, double b, double base) {
        double[] primary = Arrays.stream(energy)
                .map(e -> Scans.gaussian(e, 285, 0.6, 5000))
                .toArray();
        double[] spectrum = TougaardTwo.spectrumOf(energy, primary, b, C);
        for (int i = 0; i < spectrum.length; i++) spectrum[i] += base;
        return Scans.scan(energy, spectrum);
    }

    @Test
    void adjustingFindsTheParameter() {
        Subtraction found = Scans.subtract(TougaardTwo.universal(10), scattered(LONG, 2500, 200), RANGE);
        assertThat(found.adjustedB().orElseThrow()).isCloseTo(2500, within(1e-6));
        assertThat(found.netArea().value()).isCloseTo(5000, within(1e-6));
        Subtraction fixed = Scans.subtract(
                new TougaardTwo(10, EndpointPlacement.INSIDE, OptionalDouble.of(2500), C),
                scattered(LONG, 2500, 200),
                RANGE);
        assertThat(fixed.adjustedB()).isEmpty();
        assertThat(fixed.netArea().value()).isCloseTo(5000, within(1e-6));
    }

    @Test
    void threeParametersWithAGap() {
        double[] primary =
                Arrays.stream(LONG).map(e -> Scans.gaussian(e, 285, 0.6, 5000)).toArray();
        double[] spectrum = TougaardThree.spectrumOf(LONG, primary, 325, 542, 275, 8);
        BindingScan scan = Scans.scan(LONG, spectrum);
        TougaardThree fixed = new TougaardThree(5, EndpointPlacement.INSIDE, OptionalDouble.of(325), 542, 275, 8);
        TougaardThree adjusted = new TougaardThree(5, EndpointPlacement.INSIDE, OptionalDouble.empty(), 542, 275, 8);
        assertThat(Scans.area(fixed, scan, RANGE)).isCloseTo(5000, within(1e-6));
        assertThat(Scans.area(adjusted, scan, RANGE)).isCloseTo(5000, within(1e-6));
        assertThat(Scans.subtract(adjusted, scan, RANGE).adjustedB().orElseThrow())
                .isCloseTo(325, within(1e-6));
        Scans.assertSensitivities(adjusted, scattered(SHORT, 2500, 300), SHORT_RANGE, 1e-5);
    }

    @Test
    void fourierProductIsTheDoubleSum() {
        int n = 700;
        double[] energy = Scans.grid(0, 0.1, n);
        double[] shaken = energy.clone();
        // Just uneven enough that the double sum is taken.
        shaken[n - 2] += 1e-6;
        double[] widths = new double[n];
        Arrays.fill(widths, 0.1);
        double[] values = new double[n];
        for (int i = 0; i < n; i++) values[i] = 1000 * (1 + Math.sin(i * i));
        DoubleUnaryOperator k = loss -> TougaardTwo.crossSection(B, C, loss);
        LossConvolution fast = new LossConvolution(energy, widths, k, Work.UNWATCHED);
        LossConvolution slow = new LossConvolution(shaken, widths, k, Work.UNWATCHED);
        Offset<Double> small = within(1e-3);
        double[] a = fast.apply(values);
        double[] b = slow.apply(values);
        double[] at = fast.transpose(values);
        double[] bt = slow.transpose(values);
        for (int i = 0; i < n; i++) {
            boolean touched = i == n - 2;
            assertThat(a[i]).isCloseTo(b[i], touched ? small : within(1e-7));
            assertThat(at[i]).isCloseTo(bt[i], touched ? small : within(1e-5));
        }
    }

    private static final double[] SHORT = Scans.unevenGrid(278, 260);
    private static final Window SHORT_RANGE = new Window(280, 302);

    @Test
    void sensitivitiesAgreeWithDifferencesAndDraws() {
        BindingScan scan = scattered(SHORT, 2500, 300);
        for (EndpointPlacement placement : EndpointPlacement.values()) {
            Scans.assertSensitivities(
                    new TougaardTwo(4, placement, OptionalDouble.of(2000), C), scan, SHORT_RANGE, 1e-6);
            Scans.assertSensitivities(
                    new TougaardTwo(4, placement, OptionalDouble.empty(), C), scan, SHORT_RANGE, 1e-5);
        }
        BindingScan even = scattered(Scans.grid(278, 0.1, 250), 2500, 300);
        Window range = new Window(279, 302);
        Scans.assertMonteCarlo(TougaardTwo.universal(8), even, range, 41);
        Scans.assertMonteCarlo(
                new TougaardTwo(8, EndpointPlacement.INSIDE, OptionalDouble.of(2500), C), even, range, 42);
    }

    @Test
    void varianceOfTheCurveIsThatOfItsSensitivities() {
        BindingScan scan = scattered(Scans.grid(275, 0.1, 600), 2500, 300);
        Subtraction subtraction = Scans.subtract(TougaardTwo.universal(5), scan, scan.range());
        double[] variance = subtraction.backgroundVariances(Work.UNWATCHED);
        double[] pick = new double[variance.length];
        pick[400] = 1;
        double[] net = subtraction.sensitivities(pick);
        net[400] -= 1; // the net without its own count is minus the background
        double expected = 0;
        for (int j = 0; j < net.length; j++) expected += net[j] * net[j] * scan.counts(j);
        assertThat(variance[400]).isCloseTo(expected, within(1e-9 * expected));
        assertThat(variance[0]).isPositive();
    }

    @Test
    void constantAddedLeavesTheAreaAndAFactorScalesIt() {
        BindingScan scan = scattered(LONG, 2500, 200);
        double[] counts = scan.counts();
        for (int i = 0; i < counts.length; i++) counts[i] = 3 * counts[i] + 40;
        for (TougaardTwo tougaard : new TougaardTwo[] {FIXED, TougaardTwo.universal(7)}) {
            double plain = Scans.area(tougaard, scan, RANGE);
            assertThat(Scans.area(tougaard, Scans.scan(LONG, counts), RANGE)).isCloseTo(3 * plain, within(1e-6));
        }
    }

    @Test
    void refusesWithoutAPeakOrWithAFall() {
        BindingScan noise = Scans.poisson(Scans.scan(LONG, e -> 500), Scans.random(43));
        Outcome<Subtraction> none = Scans.outcome(TougaardTwo.universal(5), noise, RANGE);
        assertThat(none.result()).isEmpty();
        assertThat(none.allFindings().get(0).rule()).isEqualTo("tougaard-no-peak");
        BindingScan falling = Scans.scan(LONG, e -> 900 - 5 * (e - 275) + Scans.gaussian(e, 285, 0.6, 5000));
        Outcome<Subtraction> fall = Scans.outcome(TougaardTwo.universal(5), falling, RANGE);
        assertThat(fall.allFindings().get(0).rule()).isEqualTo("tougaard-falling");
        // With B fixed a scan without a peak has an area of about 0 with an honest uncertainty.
        Subtraction fixed =
                Scans.subtract(new TougaardTwo(10, EndpointPlacement.INSIDE, OptionalDouble.of(B), C), noise, RANGE);
        assertThat(Math.abs(fixed.netArea().value())).isLessThan(3 * Scans.u(fixed));
    }

    @Test
    void saysWhatItIs() {
        assertThat(TougaardTwo.universal(5).describe())
                .isEqualTo("two-parameter Tougaard, B adjusted, 5 endpoint channels");
        assertThat(new TougaardThree(5, EndpointPlacement.INSIDE, OptionalDouble.of(325), 542, 275, 8).describe())
                .isEqualTo("three-parameter Tougaard, B 325 eV^2, gap 8 eV, 5 endpoint channels");
        assertThatThrownBy(() -> new TougaardThree(0, EndpointPlacement.INSIDE, OptionalDouble.of(-1), 0, -2, -3))
                .hasMessage("endpointChannels: 0 channels, expected 1 channel or more; b: -1.0 eV^2, expected above 0"
                        + " eV^2; c: 0.0 eV^2, expected above 0 eV^2; d: -2.0 eV^2, expected above 0 eV^2; gapEv:"
                        + " -3.0 eV, expected 0 eV or more");
    }

    @Test
    void spectrumNeedsAValueAnEnergy() {
        assertThatThrownBy(() -> TougaardTwo.spectrumOf(new double[] {1, 2}, new double[] {1}, B, C))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("2 or more energies with one value each, were 2 energies and 1 values");
    }
}
