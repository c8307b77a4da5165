package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class LinearTest {
    private static final Window WIDE = new Window(-10, 10);

    /** Area 1000 counts eV on a smooth step from 50 to 120 that is centred with it. */
    private static BindingScan onStep(double centre) {
        return Scans.scan(
                Scans.grid(-10, 0.1, 201),
                e -> Scans.gaussian(e, centre, 0.5, 1000) + 50 + 70 * Scans.smoothStep(e, centre, 0.5));
    }

    @Test
    void areaOnAStepDependsOnWhereThePeakStands() {
        // derived, closed form: the error is minus the step's height times the distance from the window's centre
        assertThat(Scans.area(Linear.of(1), onStep(0), WIDE)).isCloseTo(1000, within(0.01));
        assertThat(Scans.area(Linear.of(1), onStep(2), WIDE)).isCloseTo(860, within(0.01));
        assertThat(Scans.area(Linear.of(1), onStep(-3), WIDE)).isCloseTo(1210, within(0.01));
    }

    /** 101 channels of 0.1 eV: 81 of the window and 10 beside it at each end; 20000 counts of peak. */
    private static BindingScan counted() {
        double[] counts = new double[101];
        double[] energy = Scans.grid(-5, 0.1, 101);
        double shape = 0;
        for (int i = 10; i < 91; i++) shape += Scans.gaussian(energy[i], 0, 0.6, 1);
        for (int i = 0; i < 101; i++) {
            counts[i] = i < 10 ? 1000 : i > 90 ? 1200 : 1000 + 200.0 * (i - 10) / 80;
            if (i >= 10 && i < 91) counts[i] += 20000 * Scans.gaussian(energy[i], 0, 0.6, 1) / shape;
        }
        return Scans.scan(energy, counts);
    }

    private static final Window INNER = new Window(-4, 4);

    @Test
    void uncertaintyWithEndpointsBesideTheWindow() {
        Subtraction ten = Scans.subtract(new Linear(10, EndpointPlacement.OUTSIDE), counted(), INNER);
        assertThat(ten.to() - ten.from()).isEqualTo(81);
        // derived, closed form: u^2 = G + (N/2)^2 (b1/m + b2/m) with G = 109100, N = 81
        assertThat(ten.grossArea()).isCloseTo(10910, within(1e-6));
        assertThat(ten.netArea().value()).isCloseTo(2000, within(1e-6));
        assertThat(Scans.u(ten) / 0.1).isCloseTo(685.5, within(0.05));
        assertThat(ten.netArea().contribution("counting/line") / 0.1).isCloseTo(330.3, within(0.05));
        assertThat(ten.netArea().sources()).containsExactly("counting/line", "endpoints/line");
        Subtraction one = Scans.subtract(new Linear(1, EndpointPlacement.OUTSIDE), counted(), INNER);
        assertThat(Scans.u(one) / 0.1).isCloseTo(1928.1, within(0.05));
    }

    @Test
    void generalRuleWithEndpointsInside() {
        BindingScan scan = counted();
        Subtraction inside = Scans.subtract(Linear.of(10), scan, INNER);
        double variance = 0;
        for (int i = 0; i < scan.channels(); i++) {
            variance += Math.pow(inside.areaSensitivity(i), 2) * scan.counts(i);
        }
        assertThat(Scans.u(inside)).isCloseTo(Math.sqrt(variance), within(1e-9));
        // derived, closed form: each of the ten channels at an end has w = 1 - N/(2m) for an average at the mean energy
        assertThat(inside.areaSensitivity(10) / 0.1).isCloseTo(1 - 81.0 / 20, within(1e-9));
        assertThat(inside.areaSensitivity(50) / 0.1).isCloseTo(1, within(1e-9));
        assertThat(inside.areaSensitivity(5)).isZero();
    }

    @Test
    void sensitivitiesAgreeWithDifferencesAndDraws() {
        BindingScan uneven =
                Scans.scan(Scans.unevenGrid(280, 90), e -> Scans.gaussian(e, 284.8, 0.6, 3000) + 300 + 20 * (e - 280));
        Window window = new Window(281, 288);
        Scans.assertSensitivities(Linear.of(4), uneven, window, 1e-7);
        Scans.assertSensitivities(new Linear(4, EndpointPlacement.OUTSIDE), uneven, window, 1e-7);
        Scans.assertMonteCarlo(Linear.of(4), uneven, window, 11);
        Scans.assertMonteCarlo(new Linear(10, EndpointPlacement.OUTSIDE), counted(), INNER, 12);
    }

    @Test
    void straightLineHasNoAreaOnAnUnevenAxis() {
        BindingScan line = Scans.scan(Scans.unevenGrid(280, 90), e -> 100 + 7 * (e - 280));
        for (EndpointPlacement placement : EndpointPlacement.values()) {
            Subtraction subtraction = Scans.subtract(new Linear(6, placement), line, new Window(281, 288));
            for (double net : subtraction.nets()) assertThat(net).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void varianceOfTheLineIsLeastBetweenItsEnds() {
        double[] variance = Scans.subtract(new Linear(10, EndpointPlacement.OUTSIDE), counted(), INNER)
                .backgroundVariances(Work.UNWATCHED);
        // derived, closed form: in the middle a quarter of the sum of both averages' variances
        assertThat(variance[40]).isCloseTo(0.25 * (1000 / 10.0 + 1200 / 10.0), within(1e-9));
        assertThat(variance[0]).isGreaterThan(variance[40]);
    }

    @Property(tries = 50, seed = "4711")
    void constantAddedLeavesTheAreaAndAFactorScalesIt(
            @ForAll @DoubleRange(min = -100, max = 1000) double added,
            @ForAll @DoubleRange(min = 0.1, max = 50) double factor,
            @ForAll @IntRange(min = 1, max = 20) int channels) {
        BindingScan scan = onStep(1.3);
        double[] counts = scan.counts();
        for (int i = 0; i < counts.length; i++) counts[i] = factor * counts[i] + added;
        double plain = Scans.area(Linear.of(channels), scan, WIDE);
        double changed = Scans.area(Linear.of(channels), Scans.scan(scan.energies(), counts), WIDE);
        assertThat(changed).isCloseTo(factor * plain, within(1e-9 * factor * 5000));
    }

    @Test
    void unknownStatisticsGiveNoUncertainty() {
        BindingScan scan = onStep(0);
        Subtraction subtraction = Scans.subtract(Linear.of(3), Scans.uncounted(scan.energies(), scan.counts()), WIDE);
        assertThat(subtraction.netArea().standardUncertainty()).isEmpty();
        assertThat(subtraction.netArea().value()).isCloseTo(1000, within(0.1));
        assertThat(subtraction.backgroundVariances(Work.UNWATCHED)[7]).isNaN();
    }

    @Test
    void scanWithoutACountClaimsNoUncertainty() {
        Subtraction empty =
                Scans.subtract(Linear.of(3), Scans.scan(Scans.grid(0, 0.1, 50), e -> 0), new Window(0, 4.9));
        assertThat(empty.netArea().value()).isZero();
        assertThat(empty.netArea().standardUncertainty()).isEmpty();
    }

    @Test
    void refusesWithOneSentence() {
        Outcome<Subtraction> beyond = Scans.outcome(Linear.of(3), onStep(0), new Window(-12, 5));
        assertThat(beyond.result()).isEmpty();
        assertThat(beyond.allFindings().get(0).rule()).isEqualTo("background-window");
        assertThat(beyond.allFindings().get(0).message())
                .isEqualTo("The window -12.00 to 5.00 eV reaches beyond the scan, which runs from -10.00 to 10.00 eV.");
        assertThat(beyond.allFindings().get(0).spectrum()).isEqualTo("made");
        Outcome<Subtraction> few = Scans.outcome(Linear.of(3), onStep(0), new Window(0, 0.5));
        assertThat(few.allFindings().get(0).message())
                .isEqualTo("The window 0.00 to 0.50 eV holds 6 channels, fewer than the 7 that a linear, 3 endpoint"
                        + " channels background needs.");
    }

    @Test
    void takesEndpointsInsideWhereTheScanHasNoneBeside() {
        Outcome<Subtraction> outcome = Scans.outcome(new Linear(3, EndpointPlacement.OUTSIDE), onStep(0), WIDE);
        assertThat(outcome.result()).contains(Scans.subtract(Linear.of(3), onStep(0), WIDE));
        assertThat(outcome.allFindings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.message())
                        .isEqualTo(
                                "The scan has 0 channels beside the window where 3 were asked for, so the endpoint channels"
                                        + " were taken inside the window."));
    }

    @Test
    void saysWhatItIs() {
        assertThat(Linear.of(1).describe()).isEqualTo("linear, 1 endpoint channel");
        assertThat(new Linear(10, EndpointPlacement.OUTSIDE).describe())
                .isEqualTo("linear, 10 endpoint channels outside the window");
        assertThatThrownBy(() -> Linear.of(0)).hasMessage("endpointChannels: 0 channels, expected 1 channel or more");
    }
}
