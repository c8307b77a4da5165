package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Erf;
import org.apache.commons.math3.special.Gamma;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/** Made scans and the checks that every background has to pass. */
final class Scans {
    private Scans() {}

    static double[] grid(double start, double step, int channels) {
        double[] energy = new double[channels];
        for (int i = 0; i < channels; i++) energy[i] = start + i * step;
        return energy;
    }

    /** Steps of 0.05 to 0.15 eV in turn. */
    static double[] unevenGrid(double start, int channels) {
        double[] energy = new double[channels];
        energy[0] = start;
        for (int i = 1; i < channels; i++) energy[i] = energy[i - 1] + 0.1 + 0.05 * Math.sin(i);
        return energy;
    }

    static BindingScan scan(double[] energy, DoubleUnaryOperator counts) {
        double[] values = new double[energy.length];
        for (int i = 0; i < values.length; i++) values[i] = counts.applyAsDouble(energy[i]);
        return scan(energy, values);
    }

    static BindingScan scan(double[] energy, double[] counts) {
        return new BindingScan("made", 1486.6, energy, counts, true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static BindingScan uncounted(double[] energy, double[] counts) {
        return new BindingScan("made", 1486.6, energy, counts, false, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static double gaussian(double energy, double centre, double sigma, double area) {
        double x = (energy - centre) / sigma;
        return area * Math.exp(-0.5 * x * x) / (sigma * Math.sqrt(2 * Math.PI));
    }

    static double smoothStep(double energy, double centre, double sigma) {
        return 0.5 * (1 + Erf.erf((energy - centre) / sigma / Math.sqrt(2)));
    }

    static BindingScan poisson(BindingScan expected, Random random) {
        double[] counts = expected.counts();
        for (int i = 0; i < counts.length; i++) counts[i] = poisson(counts[i], random);
        return scan(expected.energies(), counts);
    }

    /** Transformed rejection above a mean of 10, products of uniform numbers below. Source: W. Hoermann, 1993, from memory. */
    private static double poisson(double mean, Random random) {
        if (mean < 10) {
            double limit = Math.exp(-mean);
            int count = -1;
            for (double product = 1; product > limit; count++) product *= random.nextDouble();
            return count;
        }
        double b = 0.931 + 2.53 * Math.sqrt(mean);
        double a = -0.059 + 0.02483 * b;
        double inverse = 1.1239 + 1.1328 / (b - 3.4);
        while (true) {
            double u = random.nextDouble() - 0.5;
            double v = random.nextDouble();
            double us = 0.5 - Math.abs(u);
            double k = Math.floor((2 * a / us + b) * u + mean + 0.43);
            if (us >= 0.07 && v <= 0.9277 - 3.6224 / (b - 2)) return k;
            if (k < 0 || (us < 0.013 && v > us)) continue;
            double density = k * Math.log(mean) - mean - Gamma.logGamma(k + 1);
            if (Math.log(v * inverse / (a / (us * us) + b)) <= density) return k;
        }
    }

    static Random random(long seed) {
        return new Random(seed);
    }

    static Outcome<Subtraction> outcome(Background background, BindingScan scan, Window window) {
        return background.subtract(scan, window, "line", Work.UNWATCHED);
    }

    static Subtraction subtract(Background background, BindingScan scan, Window window) {
        Outcome<Subtraction> outcome = outcome(background, scan, window);
        return outcome.result()
                .orElseThrow(() -> new AssertionError(outcome.allFindings().toString()));
    }

    static double area(Background background, BindingScan scan, Window window) {
        return subtract(background, scan, window).netArea().value();
    }

    static double u(Subtraction subtraction) {
        return subtraction.netArea().standardUncertainty().orElseThrow();
    }

    /** Every sensitivity of the area, and of one odd weighted sum, against central differences. */
    static void assertSensitivities(Background background, BindingScan scan, Window window, double tolerance) {
        Subtraction subtraction = subtract(background, scan, window);
        double[] weights = new double[subtraction.to() - subtraction.from()];
        for (int i = 0; i < weights.length; i++) weights[i] = Math.cos(0.3 * i);
        double[] odd = subtraction.sensitivities(weights);
        for (int j = 0; j < scan.channels(); j++) {
            double h = 1e-4 * Math.max(1, scan.counts(j));
            Subtraction up = subtract(background, moved(scan, j, h), window);
            Subtraction down = subtract(background, moved(scan, j, -h), window);
            double slope = (up.netArea().value() - down.netArea().value()) / (2 * h);
            assertThat(subtraction.areaSensitivity(j)).as("area, channel %d", j).isCloseTo(slope, within(tolerance));
            double oddSlope = (sum(weights, up.nets()) - sum(weights, down.nets())) / (2 * h);
            assertThat(odd[j]).as("weighted sum, channel %d", j).isCloseTo(oddSlope, within(10 * tolerance));
        }
    }

    static double sum(double[] weights, double[] values) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) sum += weights[i] * values[i];
        return sum;
    }

    static BindingScan moved(BindingScan scan, int channel, double by) {
        double[] counts = scan.counts();
        counts[channel] += by;
        return scan(scan.energies(), counts);
    }

    /** Scatter of the area over 2000 Poisson draws against the stated uncertainty (its own scatter is 1.6 %). */
    static void assertMonteCarlo(Background background, BindingScan expected, Window window, long seed) {
        Random random = random(seed);
        Subtraction exact = subtract(background, expected, window);
        int draws = 2000;
        double sum = 0;
        double squares = 0;
        for (int k = 0; k < draws; k++) {
            double off = area(background, poisson(expected, random), window)
                    - exact.netArea().value();
            sum += off;
            squares += off * off;
        }
        double mean = sum / draws;
        double scatter = Math.sqrt(squares / draws - mean * mean);
        assertThat(scatter / u(exact)).isCloseTo(1, within(0.06));
        assertThat(Math.abs(mean) / u(exact)).as("bias").isLessThan(0.1);
    }
}
