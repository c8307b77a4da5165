package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

class FactorObjectsTest {
    private static final OptionalDouble NO_ANGLE = OptionalDouble.empty();
    private final ReferenceData reference = ReferenceData.shipped();

    private static FactorSet set(OptionalDouble photons) {
        return new FactorSet(
                "made",
                "made for a test",
                FactorKind.ELEMENTAL,
                photons,
                OptionalDouble.empty(),
                FactorSet.Transmission.DIVIDED_OUT,
                "in the factors",
                List.of(FactorSet.BackgroundFamily.SHIRLEY),
                true,
                "two lines");
    }

    private static FactorSettings settings(FactorKind kind) {
        return new FactorSettings(
                kind,
                new MeanFreePathModel.Power(0.75),
                new Anisotropy(Anisotropy.Kind.REDUCED, 14, 0.08),
                0.05,
                0.05,
                0.05,
                54.7356103);
    }

    @Test
    void theAverageMatrixIsAWorldOfItsOwn() {
        TheoreticalFactors average = new TheoreticalFactors(reference, settings(FactorKind.AVERAGE_MATRIX));
        TheoreticalFactors power = new TheoreticalFactors(reference, settings(FactorKind.THEORETICAL));
        assertThat(average.set().kind()).isEqualTo(FactorKind.AVERAGE_MATRIX);
        assertThat(average.set().backgrounds()).containsExactly(FactorSet.BackgroundFamily.TOUGAARD);
        Line f = Line.parse("F 1s");
        double ratio = average.factor(f, 1486.6, 797.6, NO_ANGLE).orElseThrow().value()
                / power.factor(f, 1486.6, 797.6, NO_ANGLE).orElseThrow().value();
        // TPP-2M of the average matrix over a power of 0.75 between 797.6 and 1000 eV: within 1 %, computed
        assertThat(ratio).isCloseTo(1, within(0.01));
        double lambda = spotline.reference.MeanFreePath.tpp2m(TheoreticalFactors.AVERAGE_MATRIX, 1000);
        // An average solid: between silicon dioxide and gold at 1 keV, in nm
        assertThat(lambda).isBetween(1.3, 3.1);
    }

    @Test
    void everyPhotonEnergyOfTheTablesHasFactors() {
        TheoreticalFactors factors = new TheoreticalFactors(reference, settings(FactorKind.THEORETICAL));
        for (double hv : new double[] {1253.6, 1486.6, 2984.3, 5414.7, 9251.7}) {
            Estimate c =
                    factors.factor(Line.parse("C 1s"), hv, hv - 285, NO_ANGLE).orElseThrow();
            Estimate o =
                    factors.factor(Line.parse("O 1s"), hv, hv - 531, NO_ANGLE).orElseThrow();
            assertThat(o.dividedBy(c).value()).isBetween(2.0, 4.5);
        }
        assertThat(factors.set().describe()).contains("theoretical", "0.75", "shirley");
    }

    @Test
    void listedFactorsShareOutDoublets() {
        Line zn = Line.parse("Zn 2p");
        ListedFactors factors = new ListedFactors(
                set(OptionalDouble.of(1486.6)), Map.of(zn, Estimate.of(20, "factor/listed", 1)), reference);
        Estimate member = factors.factor(zn.high(), 1486.6, 464, NO_ANGLE).orElseThrow();
        // two thirds by statistics; the cross sections differ from that by a per cent or two
        assertThat(member.value() / 20).isCloseTo(2 / 3.0, within(0.015));
        assertThat(factors.factor(zn, 1486.6, 464, NO_ANGLE)).contains(Estimate.of(20, "factor/listed", 1));
        assertThat(factors.factor(Line.parse("O 1s"), 1486.6, 955, NO_ANGLE)).isEmpty();
        assertThat(factors.factor(zn, 1253.6, 231, NO_ANGLE)).isEmpty();
    }

    @Test
    void aFactorIsAboveZero() {
        assertThatThrownBy(() -> new ListedFactors(
                        set(OptionalDouble.empty()), Map.of(Line.parse("C 1s"), Estimate.exact(0)), reference))
                .hasMessageContaining("C 1s");
    }

    /** Silicon dioxide measured once gives factors that give silicon dioxide back, and carry what is uncertain in it. */
    @Test
    void aReferenceMaterialGivesItsOwnFactors() {
        Line si = Line.parse("Si 2p");
        Line o = Line.parse("O 1s");
        Map<Line, Estimate> intensities = new LinkedHashMap<>();
        intensities.put(si, Estimate.of(1000, "counting/reference Si", 10));
        intensities.put(o, Estimate.of(6800, "counting/reference O", 34));
        Map<String, Estimate> composition =
                Map.of("Si", Estimate.of(33.33, "composition/Si", 0.3333), "O", Estimate.exact(66.67));
        ListedFactors factors =
                ReferenceMaterialFactors.of(set(OptionalDouble.empty()), composition, intensities, si, reference);
        Estimate factor = factors.factors().get(o);
        // (6800 / 66.67) / (1000 / 33.33), relative u 1 %, 0.5 % and 1 % together; derived
        assertThat(factor.value()).isCloseTo(3.3995, within(0.001));
        assertThat(factor.standardUncertainty().orElseThrow() / factor.value()).isCloseTo(0.015, within(1e-6));
        assertThat(factor.sources()).allMatch(s -> s.startsWith("factor/reference material"));
        assertThat(factors.factors().get(si)).isEqualTo(Estimate.exact(1));
        List<Quantified> back = Composition.of(List.of(
                contribution("Si", Estimate.exact(1000)),
                contribution("O", Estimate.exact(6800).dividedBy(factor))));
        assertThat(back.get(0).atomicPercent().orElseThrow().value()).isCloseTo(33.33, within(1e-9));
    }

    @Test
    void aReferenceMaterialMustHoldWhatIsMeasured() {
        Line n = Line.parse("N 1s");
        assertThatThrownBy(() -> ReferenceMaterialFactors.of(
                        set(OptionalDouble.empty()),
                        Map.of("Si", Estimate.exact(100)),
                        Map.of(n, Estimate.exact(5)),
                        n,
                        reference))
                .hasMessageContaining("no known N");
    }

    private static Contribution contribution(String element, Estimate q) {
        return new Contribution(element, element, "made", Basis.NARROW, new spotline.spectra.Window(0, 1), q, 0, true);
    }
}
