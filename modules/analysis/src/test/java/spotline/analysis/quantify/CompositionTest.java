package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Estimate;
import spotline.numerics.random.RandomStreams;
import spotline.spectra.Window;

class CompositionTest {
    private static Contribution of(String element, Estimate q, double limit, boolean detected) {
        return new Contribution(element, element + " 1s", "made", Basis.NARROW, new Window(0, 1), q, limit, detected);
    }

    private static Contribution of(String element, Estimate q) {
        return of(element, q, 0, true);
    }

    private static Estimate area(String name, double value, double relative) {
        return Estimate.of(value, "counting/" + name, relative * value);
    }

    private static Estimate factor(String name, double value, double relative) {
        return Estimate.of(value, "factor/cross section " + name, relative * value);
    }

    private static double x(List<Quantified> rows, int row) {
        return rows.get(row).atomicPercent().orElseThrow().value();
    }

    private static double u(List<Quantified> rows, int row) {
        return rows.get(row).atomicPercent().orElseThrow().standardUncertainty().orElseThrow();
    }

    /** Scofield 1976 relative cross sections 1.00, 2.93 and 0.817; arithmetic derived, closed form. */
    private static List<Quantified> threeLines(double areaU, double thirdAreaU, double factorU) {
        return Composition.of(List.of(
                of("C", area("C", 24500, areaU).dividedBy(factor("C", 1, factorU))),
                of("O", area("O", 31200, areaU).dividedBy(factor("O", 2.93, factorU))),
                of("Si", area("Si", 4100, thirdAreaU).dividedBy(factor("Si", 0.817, factorU)))));
    }

    @Test
    void threeLinesWithCountingUncertainty() {
        List<Quantified> rows = threeLines(0.01, 0.03, 0);
        assertThat(x(rows, 0)).isCloseTo(60.996, within(0.0005));
        assertThat(x(rows, 1)).isCloseTo(26.511, within(0.0006));
        assertThat(x(rows, 2)).isCloseTo(12.494, within(0.0005));
        assertThat(u(rows, 0)).isCloseTo(0.367, within(0.0006));
        assertThat(u(rows, 1)).isCloseTo(0.272, within(0.0006));
        assertThat(u(rows, 2)).isCloseTo(0.338, within(0.0006));
        assertThat(rows.get(0).statisticalU().orElseThrow()).isCloseTo(u(rows, 0), within(1e-12));
    }

    @Test
    void factorsDominateTheCounting() {
        List<Quantified> rows = threeLines(0, 0, 0.05);
        assertThat(u(rows, 0)).isCloseTo(1.49, within(0.006));
        assertThat(u(rows, 1)).isCloseTo(1.28, within(0.006));
        assertThat(u(rows, 2)).isCloseTo(0.69, within(0.006));
        assertThat(rows.get(0).statisticalU()).hasValue(0);
    }

    /** Monte Carlo of the same three lines. Source: JCGM 101:2008; 0.367, 0.272, 0.338 at.%, derived. */
    @Test
    void aMonteCarloAgreesWithThePropagation() {
        RandomGenerator random = RandomStreams.stream(20260522, "three lines");
        double[] q = {24500, 31200 / 2.93, 4100 / 0.817};
        double[] r = {0.01, 0.01, 0.03};
        double[] sum = new double[3];
        double[] squares = new double[3];
        int draws = 200_000;
        for (int trial = 0; trial < draws; trial++) {
            double[] drawn = new double[3];
            double total = 0;
            for (int i = 0; i < 3; i++) total += drawn[i] = q[i] * (1 + r[i] * random.nextGaussian());
            for (int i = 0; i < 3; i++) {
                sum[i] += 100 * drawn[i] / total;
                squares[i] += Math.pow(100 * drawn[i] / total, 2);
            }
        }
        List<Quantified> rows = threeLines(0.01, 0.03, 0);
        double[] expected = {0.367, 0.272, 0.338};
        for (int i = 0; i < 3; i++) {
            double deviation = Math.sqrt(squares[i] / draws - Math.pow(sum[i] / draws, 2));
            assertThat(deviation).isCloseTo(expected[i], within(0.0015));
            assertThat(deviation).isCloseTo(u(rows, i), within(0.0015));
        }
        // quotients of areas and Scofield's factors
        assertThat(q[1]).isCloseTo(10648.46, within(0.005));
        assertThat(q[2]).isCloseTo(5018.36, within(0.005));
    }

    /** PET by cross sections alone: C 14000 and O 16408 counts eV. Source: formula C10H8O4, derived. */
    @Test
    void polyethyleneTerephthalate() {
        List<Quantified> rows =
                Composition.of(List.of(of("C", Estimate.exact(14000)), of("O", Estimate.exact(16408 / 2.93))));
        assertThat(x(rows, 0)).isCloseTo(71.43, within(0.005));
        assertThat(x(rows, 1)).isCloseTo(28.57, within(0.005));
        List<StateShare> states = StateShare.of(
                "C",
                "C 1s",
                rows.get(0).atomicPercent(),
                List.of(
                        new StateShare.Component("ring", Estimate.exact(8400)),
                        new StateShare.Component("C-O", Estimate.exact(2800)),
                        new StateShare.Component("ester", Estimate.exact(2800))));
        // 6 : 2 : 2 carbon atoms
        assertThat(states).extracting(s -> s.fractionOfElement().value()).containsExactly(0.6, 0.2, 0.2);
    }

    /** Atoms of a formula unit, hydrogen left out, and their atomic per cent. Source: formulae, derived. */
    @ParameterizedTest
    @CsvSource({
        "C 2 F 4, 33.33, 66.67",
        "C 5 O 2, 71.43, 28.57",
        "C 2 Cl 1, 66.67, 33.33",
        "C 19 O 3, 86.36, 13.64",
        "Si 1 O 2, 33.33, 66.67",
        "Al 2 O 3, 40, 60",
        "Na 1 Cl 1, 50, 50"
    })
    void stoichiometricCompounds(String formula, double first, double second) {
        String[] parts = formula.split(" ", -1);
        List<Quantified> rows = Composition.of(List.of(
                of(parts[0], Estimate.exact(Double.parseDouble(parts[1]))),
                of(parts[2], Estimate.exact(Double.parseDouble(parts[3])))));
        assertThat(x(rows, 0)).isCloseTo(first, within(0.005));
        assertThat(x(rows, 1)).isCloseTo(second, within(0.005));
    }

    /** Formula units with three elements: PDMS, nylon-6, a polyimide. Source: formulae, derived. */
    @ParameterizedTest
    @CsvSource({"2, 1, 1, 50, 25, 25", "6, 1, 1, 75, 12.5, 12.5", "22, 5, 2, 75.86, 17.24, 6.90"})
    void compoundsOfThree(double a, double b, double c, double first, double second, double third) {
        List<Quantified> rows = Composition.of(
                List.of(of("C", Estimate.exact(a)), of("O", Estimate.exact(b)), of("N", Estimate.exact(c))));
        assertThat(x(rows, 0)).isCloseTo(first, within(0.005));
        assertThat(x(rows, 1)).isCloseTo(second, within(0.005));
        assertThat(x(rows, 2)).isCloseTo(third, within(0.005));
    }

    /** u^2(X_i) = X_i^2 [(1 - X_i)^2 r_i^2 + sum X_j^2 r_j^2]. Source: GUM 5.1.2 applied to the atomic fraction. */
    @Test
    void agreesWithTheClosedFormForIndependentLines() {
        List<Quantified> rows = threeLines(0.01, 0.03, 0.05);
        double[] r = {Math.hypot(0.01, 0.05), Math.hypot(0.01, 0.05), Math.hypot(0.03, 0.05)};
        for (int i = 0; i < 3; i++) {
            double xi = x(rows, i) / 100;
            double sum = 0;
            for (int j = 0; j < 3; j++) {
                double slope = j == i ? 1 - xi : x(rows, j) / 100;
                sum += slope * slope * r[j] * r[j];
            }
            assertThat(u(rows, i)).isCloseTo(100 * xi * Math.sqrt(sum), within(1e-9));
        }
    }

    /** PTFE, CF2: one carbon, two fluorine. */
    @Test
    void polytetrafluoroethyleneByCrossSectionsAlone() {
        List<Quantified> rows =
                Composition.of(List.of(of("C", Estimate.exact(10000)), of("F", Estimate.exact(88600 / 4.43))));
        // stoichiometry
        assertThat(x(rows, 0)).isCloseTo(33.33, within(0.01));
        assertThat(x(rows, 1)).isCloseTo(66.67, within(0.01));
    }

    @Test
    void aForgottenCorrectionShows() {
        // Data that carry lambda ~ E^0.75 and T ~ E^-0.5; derived
        double carried = Math.pow((1486.6 - 689) / (1486.6 - 284.8), 0.25);
        assertThat(carried).isCloseTo(0.903, within(0.001));
        List<Quantified> forgotten =
                Composition.of(List.of(of("C", Estimate.exact(10000)), of("F", Estimate.exact(79969 / 4.43))));
        assertThat(x(forgotten, 1)).isCloseTo(64.35, within(0.01));
        List<Quantified> applied =
                Composition.of(List.of(of("C", Estimate.exact(10000)), of("F", Estimate.exact(79969 / 4.43 / 0.9026))));
        assertThat(x(applied, 1)).isCloseTo(66.67, within(0.01));
    }

    @Test
    void goldAndCopper() {
        List<Quantified> rows = Composition.of(
                List.of(of("Au", Estimate.exact(50000 / 17.12)), of("Cu", Estimate.exact(30000 / 16.73))));
        // Scofield 1976 factors, arithmetic derived
        assertThat(x(rows, 0)).isCloseTo(61.96, within(0.005));
        assertThat(x(rows, 1)).isCloseTo(38.04, within(0.005));
    }

    @Test
    void theDetectionLimitOfAnAbsentElement() {
        double limit = CurrieNumbers.DETECTION_COUNTS / 1.80;
        List<Quantified> rows =
                Composition.of(List.of(of("C", Estimate.exact(2.0e5)), of("N", Estimate.exact(30), limit, false)));
        // L_D 2210 counts, N 1s factor 1.80, sum of I/S 2.0e5; derived
        assertThat(rows.get(1).detectionLimit().orElseThrow()).isCloseTo(0.61, within(0.005));
        assertThat(rows.get(1).atomicPercent()).isEmpty();
        assertThat(rows.get(1).belowDetection()).isTrue();
        assertThat(x(rows, 0)).isEqualTo(100);
    }

    private static final class CurrieNumbers {
        static final double DETECTION_COUNTS = 2210;
    }

    @Test
    void aContributionSharedAlikeCancels() {
        Estimate scale = Estimate.of(2, "factor/instrument", 0.4);
        List<Quantified> rows =
                Composition.of(List.of(of("C", scale.times(30)), of("O", scale.times(50)), of("Si", scale.times(7))));
        for (int i = 0; i < 3; i++) assertThat(u(rows, i)).isCloseTo(0, within(1e-12));
    }

    @Test
    void nothingDetectedHasNoNumbers() {
        List<Quantified> rows = Composition.of(List.of(of("C", Estimate.exact(3), 0, false)));
        assertThat(rows.get(0).atomicPercent()).isEmpty();
        assertThat(rows.get(0).statisticalU()).isEmpty();
        assertThat(rows.get(0).detectionLimit()).isEmpty();
        assertThat(Composition.of(List.of())).isEmpty();
    }

    @Test
    void anUnknownUncertaintyStaysUnknown() {
        List<Quantified> rows = Composition.of(List.of(of("C", Estimate.unknown(3)), of("O", Estimate.exact(1))));
        assertThat(x(rows, 0)).isEqualTo(75);
        assertThat(rows.get(1).atomicPercent().orElseThrow().standardUncertainty())
                .isEmpty();
    }

    @Property(seed = "20260517", tries = 200)
    void sumsToOneHundredAndTheUncertaintiesCancelInTheSum(
            @ForAll @Size(min = 1, max = 8) List<@DoubleRange(min = 0.01, max = 1e6) Double> values) {
        List<Contribution> made = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            made.add(of("C", area("" + i, values.get(i), 0.02).dividedBy(factor("" + i, 1 + i, 0.05))));
        }
        List<Estimate> rows = Composition.of(made).stream()
                .map(r -> r.atomicPercent().orElseThrow())
                .toList();
        Estimate sum = Estimate.sum(rows);
        assertThat(sum.value()).isCloseTo(100, within(1e-9));
        assertThat(sum.standardUncertainty().orElseThrow()).isCloseTo(0, within(1e-9));
    }
}
