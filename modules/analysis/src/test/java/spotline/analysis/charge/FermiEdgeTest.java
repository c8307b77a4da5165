package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.analysis.charge.ChargeInput.OtherScan;
import spotline.analysis.charge.SpotCondition.CarbonOrigin;
import spotline.analysis.charge.SpotCondition.Conduction;
import spotline.analysis.charge.SpotCondition.Contact;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.spectra.BindingScan;

class FermiEdgeTest {
    private static BindingScan edge(double atEv, double fwhmEv, double temperatureK, double height, long seed) {
        double[] x = new double[161];
        for (int i = 0; i < x.length; i++) x[i] = atEv - 3 + 0.05 * i;
        double[] means = new double[x.length];
        FermiEdge.curve(
                x, new double[] {atEv, fwhmEv, height, 0.05 * height, 20}, FermiEdge.BOLTZMANN * temperatureK, means);
        RandomGenerator random = RandomStreams.stream(seed, "edge");
        return Made.scan("valence band", x, PoissonSampler.sample(random, means));
    }

    @ParameterizedTest
    @CsvSource({"123, 0.0466", "300, 0.1136", "1073, 0.406"})
    void thermalWidthIsTwoLnNineTimesKt(double temperatureK, double width) {
        // Derived, closed form: 2 ln 9 kT = 4.394 kT.
        assertThat(FermiEdge.thermalWidthEv(temperatureK)).isCloseTo(width, within(0.0005));
        double[] x = new double[2001];
        for (int i = 0; i < x.length; i++) x[i] = -1 + 0.001 * i;
        double[] values = new double[x.length];
        FermiEdge.curve(x, new double[] {0, 0.001, 1, 0, 0}, FermiEdge.BOLTZMANN * temperatureK, values);
        assertThat(crossing(x, values, 0.9) - crossing(x, values, 0.1)).isCloseTo(width, within(0.0015));
    }

    private static double crossing(double[] x, double[] values, double share) {
        int i = 0;
        while (values[i] < share) i++;
        return x[i];
    }

    @Test
    void aGaussianEdgeHasItsOwnWidth() {
        // Derived, closed form: 10-90 % of a Gaussian edge is 2.563 sigma = 1.088 FWHM.
        FermiEdge broad =
                FermiEdge.fit(edge(0, 0.6, 10, 2e5, 2), 0, 10, Work.UNWATCHED).orElseThrow();
        assertThat(broad.instrumentFwhmEv().value()).isCloseTo(0.6, within(0.01));
        assertThat(broad.width1090Ev()).isCloseTo(1.088 * 0.6, within(0.01));
    }

    @Test
    void theEdgeIsPlacedWithinItsUncertainty() {
        int inside = 0;
        double worst = 0;
        for (int k = 0; k < 60; k++) {
            FermiEdge fit = FermiEdge.fit(edge(0.12, 0.5, 300, 3000, 50 + k), 0, 300, Work.UNWATCHED)
                    .orElseThrow();
            double off = Math.abs(fit.positionEv().value() - 0.12);
            worst = Math.max(worst, off);
            if (off < 1.96 * fit.positionEv().standardUncertainty().orElseThrow()) inside++;
        }
        assertThat(worst).isLessThan(0.02);
        // 57 of 60 expected, standard deviation 1.7.
        assertThat(inside).isBetween(52, 60);
    }

    @Test
    void aFlatScanHasNoEdge() {
        double[] x = new double[161];
        double[] means = new double[161];
        for (int i = 0; i < x.length; i++) {
            x[i] = -3 + 0.05 * i;
            means[i] = 50;
        }
        BindingScan flat = Made.scan("flat", x, PoissonSampler.sample(RandomStreams.stream(3, "flat"), means));
        assertThat(FermiEdge.fit(flat, 0, 300, Work.UNWATCHED)).isEmpty();
        assertThat(FermiEdge.fit(flat, 40, 300, Work.UNWATCHED))
                .as("not in the scan")
                .isEmpty();
    }

    private static ChargeInput withEdge(SpotCondition condition, BindingScan scan, double workingShiftEv) {
        return new ChargeInput(
                condition,
                List.of(),
                List.of(new OtherScan("valence band", scan)),
                Optional.empty(),
                new TreeSet<>(),
                false,
                true,
                workingShiftEv);
    }

    @ParameterizedTest
    @CsvSource({"0.00, NOT_NEEDED", "0.12, DOUBTFUL"})
    void aGroundedConductorIsCheckedByItsEdge(double atEv, ChargeVerdict verdict) {
        ChargeInput input = withEdge(Made.GROUNDED_METAL, edge(atEv, 0.5, 300, 5000, 7), 0);
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isEqualTo(verdict);
        assertThat(charge.shiftEv()).hasValue(0);
        assertThat(charge.referenceLine()).isEqualTo("Fermi edge");
        assertThat(charge.measuredEv().orElseThrow()).isCloseTo(atEv, within(0.02));
        assertThat(Made.rules(Made.byRecord(), input).contains("fermi-edge-off"))
                .isEqualTo(verdict == ChargeVerdict.DOUBTFUL);
        assertThat(charge.evidence().fermiEdge()).isPresent();
    }

    @Test
    void theMethodShiftsByTheEdge() {
        SpotCondition floating = new SpotCondition(Conduction.CONDUCTOR, Contact.ISOLATED, CarbonOrigin.ADVENTITIOUS);
        ChargeSettings settings = Made.settings(
                ChargeMethod.FERMI_EDGE, OptionalDouble.empty(), OptionalDouble.empty(), "", "metal film on glass");
        ChargeReference charge = Made.reference(settings, withEdge(floating, edge(1.7, 0.5, 300, 5000, 8), -1.5));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(-1.7, within(0.02));
        assertThat(charge.referenceEv()).hasValue(0);
        assertThat(charge.standardUncertainty()).isEqualTo(charge.measurementU());
        assertThat(Made.reference(settings, Made.input(floating, -1.5)).verdict())
                .isEqualTo(ChargeVerdict.FAILED);
        assertThat(Made.reference(settings, withEdge(Made.ISOLATED, edge(1.7, 0.5, 300, 5000, 8), -1.5))
                        .verdict())
                .as("an insulator has none")
                .isEqualTo(ChargeVerdict.DOUBTFUL);
    }
}
