package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class ShirleyTest {
    private static final Window WIDE = new Window(-10, 10);
    private static final Shirley TIGHT = new Shirley(1, EndpointPlacement.INSIDE, 1e-9, 50);

    private static BindingScan obedient(double scale) {
        return Scans.scan(
                Scans.grid(-10, 0.1, 201),
                e -> scale * (Scans.gaussian(e, 0, 0.5, 1000) + 50 + 70 * Scans.smoothStep(e, 0, 0.5)));
    }

    private static ShirleyKernel kernel(BindingScan scan, double tolerance, int iterations) {
        double[] noCap = new double[scan.channels()];
        Arrays.fill(noCap, Double.POSITIVE_INFINITY);
        return ShirleyKernel.iterate(
                scan.energies(),
                scan.counts(),
                scan.counts(0),
                scan.counts(scan.channels() - 1),
                noCap,
                tolerance,
                iterations,
                Work.UNWATCHED);
    }

    @Test
    void stepWithoutPeakLeavesOnePartInUpdatesPlusOne() {
        // The step lies halfway between two channels, so that the trapezoids hold exactly the length 0.4 eV above it.
        int above = 4000;
        double h = 0.4 / (above - 0.5);
        BindingScan step = Scans.scan(Scans.grid(-0.5 * h - 9 * h, h, above + 10), e -> e < 0 ? 100 : 300);
        ShirleyKernel kernel = kernel(step, 1e-6, 50);
        // derived, closed form: D L/(n+1) with D = 200, L = 0.4 eV
        double[] expected = {80, 40, 26.667, 20, 16, 13.333, 11.429};
        for (int n = 0; n < expected.length; n++) {
            assertThat(kernel.areas[n]).as("update %d", n).isCloseTo(expected[n], within(0.0006));
        }
        assertThat(kernel.areas[50]).isCloseTo(80.0 / 51, within(0.001));
        assertThat(kernel.ending).isEqualTo(ShirleyKernel.Ending.SHRINKING);
        Outcome<Subtraction> outcome = Scans.outcome(Shirley.of(5), step, step.range());
        assertThat(outcome.result()).isEmpty();
        assertThat(outcome.allFindings().get(0).rule()).isEqualTo("shirley-no-peak");
        assertThat(outcome.allFindings().get(0).message())
                .isEqualTo("No peak: the area above the Shirley background goes to 0, from 80 to 1.568 counts eV,"
                        + " stopped after 50 iterations.");
    }

    @Test
    void peakThatObeysIt() {
        ShirleyKernel kernel = kernel(obedient(1), 1e-12, 50);
        // derived, checked numerically: trapezoids on 201 channels of 0.1 eV
        assertThat(kernel.areas[1]).isCloseTo(1143.75, within(0.005));
        assertThat(kernel.areas[2]).isCloseTo(1029.18, within(0.005));
        assertThat(kernel.areas[3]).isCloseTo(1004.93, within(0.005));
        assertThat(kernel.areas[4]).isCloseTo(1000.68, within(0.005));
        assertThat(kernel.areas[9]).isCloseTo(1000.004, within(0.0005));
        assertThat(Math.abs(kernel.areas[10] - kernel.areas[9])).isLessThan(2e-5);
        assertThat(kernel.iterations()).isEqualTo(13); // a change below 1e-9 counts eV
        assertThat(kernel.area()).isCloseTo(1000.00408334, within(1e-7)); // frozen, computed twice
        Subtraction subtraction = Scans.subtract(TIGHT, obedient(1), WIDE);
        assertThat(subtraction.netArea().value()).isCloseTo(1000.004, within(0.0005));
        assertThat(subtraction.converged()).isTrue();
        double worst = 0;
        for (int i = 0; i < 201; i++) {
            double truth = 50 + 70 * Scans.smoothStep(-10 + 0.1 * i, 0, 0.5);
            worst = Math.max(worst, Math.abs(subtraction.background(i) - truth));
        }
        assertThat(worst).isCloseTo(0.06, within(0.005));
    }

    @Test
    void fixedPointIsTheSameByAnotherRoad() {
        // For a given k the background obeys a first-order recursion; k is then found by bisection on the high end.
        BindingScan scan = Scans.scan(
                Scans.unevenGrid(-8, 160), e -> Scans.gaussian(e, 0.4, 0.6, 800) + 90 + 60 * Scans.smoothStep(e, 0, 1));
        ShirleyKernel kernel = kernel(scan, 1e-13, 200);
        double below = 0;
        double above = 1;
        for (int i = 0; i < 100; i++) {
            double k = 0.5 * (below + above);
            if (recursion(scan, k)[scan.channels() - 1] < scan.counts(scan.channels() - 1)) below = k;
            else above = k;
        }
        double[] recursive = recursion(scan, below);
        for (int i = 0; i < recursive.length; i++) {
            assertThat(kernel.background[i]).isCloseTo(recursive[i], within(1e-8));
        }
    }

    private static double[] recursion(BindingScan scan, double k) {
        double[] background = new double[scan.channels()];
        background[0] = scan.counts(0);
        for (int i = 1; i < background.length; i++) {
            double half = 0.5 * k * (scan.energy(i) - scan.energy(i - 1));
            background[i] =
                    (background[i - 1] * (1 - half) + half * (scan.counts(i - 1) + scan.counts(i))) / (1 + half);
        }
        return background;
    }

    private static BindingScan uneven() {
        return Scans.scan(
                Scans.unevenGrid(278, 130),
                e -> Scans.gaussian(e, 284.8, 0.6, 3000) + 300 + 150 * Scans.smoothStep(e, 284.8, 0.6));
    }

    private static final Window UNEVEN = new Window(280, 289.5);

    @Test
    void sensitivitiesAgreeWithDifferencesAndDraws() {
        for (EndpointPlacement placement : EndpointPlacement.values()) {
            Scans.assertSensitivities(new Shirley(4, placement, 1e-13, 200), uneven(), UNEVEN, 1e-6);
        }
        Scans.assertMonteCarlo(Shirley.of(4), uneven(), UNEVEN, 21);
        Scans.assertMonteCarlo(new Shirley(8, EndpointPlacement.OUTSIDE, 1e-6, 50), uneven(), UNEVEN, 22);
    }

    @Test
    void varianceOfTheCurveAgreesWithDraws() {
        Shirley shirley = Shirley.of(4);
        Subtraction exact = Scans.subtract(shirley, uneven(), UNEVEN);
        double[] stated = exact.backgroundVariances(Work.UNWATCHED);
        double[] squares = new double[stated.length];
        Random random = Scans.random(23);
        for (int k = 0; k < 2000; k++) {
            double[] drawn = Scans.subtract(shirley, Scans.poisson(uneven(), random), UNEVEN)
                    .backgrounds();
            for (int i = 0; i < drawn.length; i++) {
                squares[i] += Math.pow(drawn[i] - exact.backgrounds()[i], 2) / 2000;
            }
        }
        for (int i = 0; i < stated.length; i++) {
            assertThat(squares[i] / stated[i]).as("channel %d", i).isCloseTo(1, within(0.12));
        }
    }

    @Property(tries = 50, seed = "4712")
    void constantAddedLeavesTheAreaAndAFactorScalesIt(
            @ForAll @DoubleRange(min = -40, max = 1000) double added,
            @ForAll @DoubleRange(min = 0.1, max = 50) double factor,
            @ForAll @IntRange(min = 1, max = 20) int channels) {
        double[] counts = obedient(factor).counts();
        for (int i = 0; i < counts.length; i++) counts[i] += added;
        Shirley shirley = Shirley.of(channels);
        double plain = Scans.area(shirley, obedient(1), WIDE);
        double changed = Scans.area(shirley, Scans.scan(obedient(1).energies(), counts), WIDE);
        assertThat(changed).isCloseTo(factor * plain, within(1e-6 * factor * plain));
    }

    @Test
    void levelEndsGiveALevelBackground() {
        BindingScan level = Scans.scan(Scans.grid(-10, 0.1, 201), e -> Scans.gaussian(e, 0, 0.5, 1000) + 50);
        Subtraction subtraction = Scans.subtract(Shirley.of(5), level, WIDE);
        assertThat(subtraction.netArea().value()).isCloseTo(1000, within(1e-6));
        assertThat(subtraction.background(100)).isCloseTo(50, within(1e-9));
    }

    @Test
    void refusesAFallBeyondNoiseAndOffersALine() {
        BindingScan falling = Scans.scan(
                Scans.grid(-10, 0.1, 201),
                e -> Scans.gaussian(e, 0, 0.5, 1000) + 120 - 70 * Scans.smoothStep(e, 0, 0.5));
        Outcome<Subtraction> outcome = Scans.outcome(Shirley.of(5), falling, WIDE);
        assertThat(outcome.allFindings().get(0).rule()).isEqualTo("shirley-falling");
        assertThat(outcome.allFindings().get(0).message())
                .isEqualTo("The counts fall from 120 to 50 towards higher binding energy, by 70 where noise explains"
                        + " 17.49, so there is no Shirley background; a linear one can be taken.");
        BindingScan slightly = Scans.scan(
                Scans.grid(-10, 0.1, 201),
                e -> Scans.gaussian(e, 0, 0.5, 1000) + 120 - 10 * Scans.smoothStep(e, 0, 0.5));
        assertThat(Scans.area(Shirley.of(5), slightly, WIDE)).isCloseTo(1000, within(0.1));
        // Without known statistics the scatter of the endpoint channels, here none, is the noise.
        Outcome<Subtraction> uncounted =
                Scans.outcome(Shirley.of(5), Scans.uncounted(slightly.energies(), slightly.counts()), WIDE);
        assertThat(uncounted.allFindings().get(0).rule()).isEqualTo("shirley-falling");
    }

    @Test
    void refusesADipInsteadOfAPeak() {
        BindingScan dip = Scans.scan(Scans.grid(-10, 0.1, 201), e -> 1000 - Scans.gaussian(e, 0, 0.5, 500));
        Outcome<Subtraction> outcome = Scans.outcome(Shirley.of(5), dip, WIDE);
        assertThat(outcome.allFindings().get(0).rule()).isEqualTo("shirley-no-area");
    }

    /** Of 300 noisy spectra without a peak, how many are given an area. */
    private static int areasFound(BindingScan expected, long seed) {
        Random random = Scans.random(seed);
        int found = 0;
        for (int k = 0; k < 300; k++) {
            BindingScan drawn = Scans.poisson(expected, random);
            Outcome<Subtraction> outcome = Scans.outcome(Shirley.of(5), drawn, drawn.range());
            if (outcome.result().isPresent()) found++;
            else assertThat(outcome.allFindings().get(0).rule()).startsWith("shirley-");
        }
        return found;
    }

    @Test
    void noiseAndNoisyStepsAreNoPeaks() {
        double[] energy = Scans.grid(-5, 0.1, 101);
        assertThat(areasFound(Scans.scan(energy, e -> 1000), 24)).isLessThanOrEqualTo(3);
        assertThat(areasFound(Scans.scan(energy, e -> e < 0 ? 1000 : 1200), 25)).isLessThanOrEqualTo(3);
        assertThat(areasFound(Scans.scan(energy, e -> e < -4 ? 10000 : 12000), 26))
                .isLessThanOrEqualTo(3);
        BindingScan small =
                Scans.scan(energy, e -> Scans.gaussian(e, 0, 0.6, 450) + 1000 + 40 * Scans.smoothStep(e, 0, 0.6));
        assertThat(areasFound(small, 27)).isGreaterThan(270);
    }

    @Test
    void weakAreaOnAStepIsCautioned() {
        double[] energy = Scans.grid(-5, 0.1, 101);
        BindingScan weak =
                Scans.scan(energy, e -> Scans.gaussian(e, 0, 0.6, 300) + 1000 + 200 * Scans.smoothStep(e, 0, 0.6));
        Outcome<Subtraction> outcome = Scans.outcome(Shirley.of(5), weak, weak.range());
        double ratio = outcome.result().orElseThrow().netArea().value()
                / Scans.u(outcome.result().orElseThrow());
        assertThat(ratio).isBetween(0.5, 4.0);
        assertThat(outcome.allFindings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.rule()).isEqualTo("shirley-weak"));
        assertThat(Scans.outcome(Shirley.of(5), obedient(10), WIDE).allFindings())
                .isEmpty();
    }

    @Test
    void saysWhatItIs() {
        assertThat(Shirley.of(5).describe()).isEqualTo("iterative Shirley, 5 endpoint channels");
        assertThatThrownBy(() -> new Shirley(0, EndpointPlacement.INSIDE, 0, 0))
                .hasMessage("endpointChannels: 0 channels, expected 1 channel or more; relativeTolerance: 0.0,"
                        + " expected above 0 and below 1; maxIterations: 0, expected 1 or more");
    }
}
