package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeEvidence.Rigidity;
import spotline.analysis.charge.ChargeInput.OtherScan;
import spotline.core.Estimate;
import spotline.spectra.BindingScan;

class EvidenceTest {
    private static BindingScan oxygen(double atEv, long seed) {
        return Made.noisy("O 1s scan", atEv - 9, atEv + 11, List.of(new Made.Peak(atEv, 20000, 1.4)), 400, seed);
    }

    @Test
    void absoluteEnergiesCarryTheReferenceAndDifferencesDoNot() {
        ChargeReference charge = Made.reference(
                Made.byRecord(),
                Made.input(
                        Made.ISOLATED,
                        -2.5,
                        Made.line("C 1s", Made.carbonScan(287.35, 91)),
                        Made.line("O 1s", oxygen(535.05, 92))));
        Position position = charge.evidence().positions().get(1);
        // Derived: O 1s 535.05 -> 532.50 eV with the reference's 0.25 eV; 247.70 eV above C 1s without it.
        Estimate referenced = position.referenced().orElseThrow();
        assertThat(referenced.value()).isCloseTo(532.50, within(0.03));
        assertThat(referenced.standardUncertainty().orElseThrow()).isCloseTo(0.25, within(0.001));
        Estimate apart = position.fromReferenceLine().orElseThrow();
        assertThat(apart.value()).isCloseTo(247.70, within(0.03));
        assertThat(apart.standardUncertainty().orElseThrow()).isLessThan(0.02);
        Estimate carbon = charge.evidence().positions().get(0).referenced().orElseThrow();
        Estimate difference = referenced.minus(carbon);
        assertThat(difference.standardUncertainty().orElseThrow())
                .as("two referenced energies share the reference and the measured line")
                .isLessThan(0.02);
        assertThat(charge.scale()).isEqualTo("C 1s set to 284.80 eV");
    }

    @Test
    void twoLinesOfFiveHundredthsEachDifferBySeven() {
        // Derived: u(E1 - E2) = sqrt(0.05^2 + 0.05^2) = 0.071 eV, a difference of 0.15 eV is 2.1 of them.
        Estimate shift = Estimate.of(-2.55, "charge adventitious-carbon:reference", 0.25);
        Estimate one = Estimate.of(287.5, "one", 0.05).plus(shift);
        Estimate other = Estimate.of(287.35, "other", 0.05).plus(shift);
        Estimate apart = one.minus(other);
        assertThat(apart.standardUncertainty().orElseThrow()).isCloseTo(0.0707, within(0.0001));
        assertThat(apart.value() / apart.standardUncertainty().orElseThrow()).isCloseTo(2.1, within(0.05));
    }

    private static ChargeInput copper(double chargingEv, double augerKineticEv) {
        BindingScan photo = Made.noisy(
                "Cu 2p scan",
                926 + chargingEv,
                942 + chargingEv,
                List.of(new Made.Peak(932.62 + chargingEv, 30000, 0.9)),
                600,
                93);
        double at = 1486.6 - augerKineticEv + chargingEv;
        BindingScan auger =
                Made.noisy("Cu LMM scan", at - 15, at + 15, List.of(new Made.Peak(at, 40000, 1.2)), 900, 94);
        return new ChargeInput(
                Made.ISOLATED,
                List.of(Made.line("C 1s", Made.carbonScan(284.8 + chargingEv, 95)), Made.line("Cu 2p", photo)),
                List.of(new OtherScan("Cu LMM", auger)),
                Optional.empty(),
                new TreeSet<>(List.of("C", "Cu")),
                false,
                true,
                -chargingEv);
    }

    @ParameterizedTest
    @CsvSource({"0", "3.70", "-5"})
    void theAugerParameterDoesNotMoveWithTheSurfacePotential(double chargingEv) {
        ChargeReference charge = Made.reference(Made.byRecord(), copper(chargingEv, 918.65));
        AugerParameterSeen seen = charge.evidence().augerParameters().get(0);
        // Derived: 932.62 + 918.65 = 1851.27 eV whatever the shift.
        assertThat(seen.parameter().value()).isCloseTo(1851.27, within(0.03));
        assertThat(seen.parameter().standardUncertainty().orElseThrow()).isLessThan(0.02);
        assertThat(seen.nearest().orElseThrow().state()).isEqualTo("Cu metal");
        // For a chemical-state plot: the binding energy goes one way, the kinetic energy the other.
        assertThat(seen.referencedBindingEv().orElseThrow() - seen.bindingEv().value())
                .isCloseTo(charge.shiftEv().orElseThrow(), within(1e-9));
        assertThat(seen.referencedKineticEv().orElseThrow() - seen.kineticEv().value())
                .isCloseTo(-charge.shiftEv().orElseThrow(), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"932.62, true", "935.30, false"})
    void aMetalLineThatDidNotMoveIsHardware(double copperEv, boolean found) {
        BindingScan copper = Made.noisy("Cu 2p scan", 924, 944, List.of(new Made.Peak(copperEv, 8000, 1.0)), 300, 96);
        ChargeInput input = Made.input(
                Made.ISOLATED, -2.6, Made.line("C 1s", Made.carbonScan(287.4, 97)), Made.line("Cu 2p", copper));
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(Made.rules(Made.byRecord(), input).contains("metal-line-unmoved"))
                .isEqualTo(found);
        assertThat(charge.evidence().unmoved()).hasSize(found ? 1 : 0);
        assertThat(charge.verdict()).isEqualTo(found ? ChargeVerdict.DOUBTFUL : ChargeVerdict.ACCEPTED);
    }

    @ParameterizedTest
    @CsvSource({"535.55, false", "536.20, true"})
    void aSecondReferenceThatDisagreesIsShown(double oxygenEv, boolean found) {
        // Derived: carbon says -2.55 eV; 532.9 - 536.2 = -3.30 eV departs by 0.75 eV, over twice hypot(0.25, 0.15) eV.
        ChargeSettings settings = new ChargeSettings(
                ChargeMethod.BY_RECORD,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                Optional.empty(),
                300,
                Optional.of(new ChargeSettings.SecondReference("O 1s", 532.9, 0.15)),
                Optional.empty(),
                false,
                "",
                ChargeLimits.USUAL);
        ChargeInput input = Made.input(
                Made.ISOLATED,
                -2.5,
                Made.line("C 1s", Made.carbonScan(287.35, 98)),
                Made.line("O 1s", oxygen(oxygenEv, 99)));
        assertThat(Made.rules(settings, input).contains("references-disagree")).isEqualTo(found);
        ChargeReference charge = Made.reference(settings, input);
        assertThat(charge.evidence().check().orElseThrow().shiftEv()).isCloseTo(532.9 - oxygenEv, within(0.02));
        assertThat(charge.verdict()).isEqualTo(found ? ChargeVerdict.DOUBTFUL : ChargeVerdict.ACCEPTED);
    }

    @Test
    void aFittedSumThatMissesTheCountsIsDoubtful() {
        // A line nobody expects, between hydrocarbon and its companions' reach.
        List<Made.Peak> peaks = List.of(
                new Made.Peak(287, 8000, 1.1), new Made.Peak(287.9, 5000, 0.5), new Made.Peak(290.3, 4000, 0.5));
        BindingScan carbon = Made.noisy("C 1s scan", 277, 302, peaks, 400, 100);
        ChargeInput input = Made.input(Made.ISOLATED, carbon, -2.2);
        assertThat(Made.reference(Made.byRecord(), input).verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(Made.rules(Made.byRecord(), input)).contains("reference-line-misfit");
    }

    @Test
    void carbonateIsTakenUpWhenTheCountsAskForIt() {
        List<Made.Peak> peaks = new ArrayList<>(Made.carbon(286.2, 9000, 1.2));
        peaks.add(new Made.Peak(291.1, 1200, 1.25));
        BindingScan carbon = Made.noisy("C 1s scan", 277, 302, peaks, 400, 101);
        ChargeReference charge = Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, carbon, -1.4));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        ReferenceLineFit fit = charge.fit().orElseThrow();
        assertThat(fit.reducedChiSquare()).isBetween(0.6, 1.5);
        assertThat(fit.components())
                .extracting(ReferenceLineFit.Component::name)
                .contains("carbonate");
        assertThat(charge.measuredEv().orElseThrow()).isCloseTo(286.2, within(0.02));
        BindingScan plain = Made.carbonScan(286.2, 102);
        assertThat(Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, plain, -1.4))
                        .fit()
                        .orElseThrow()
                        .components())
                .extracting(ReferenceLineFit.Component::name)
                .doesNotContain("carbonate");
    }

    @Test
    void carbonBelowHydrocarbonIsADoubt() {
        List<Made.Peak> peaks = new ArrayList<>(Made.carbon(287, 8000, 1.2));
        peaks.add(new Made.Peak(285.3, 2500, 1.2));
        BindingScan carbon = Made.noisy("C 1s scan", 277, 302, peaks, 400, 103);
        ChargeInput input = Made.input(Made.ISOLATED, carbon, -2.2);
        assertThat(Made.reference(Made.byRecord(), input).verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(Made.rules(Made.byRecord(), input)).contains("carbon-below-hydrocarbon");
    }

    @Test
    void linesMeasuredAtTwoSettingsHaveToMoveTogether() {
        Rigidity.Moved carbon = new Rigidity.Moved("C 1s", Estimate.of(-0.80, "a", 0.01));
        Rigidity together = Rigid.of(List.of(
                carbon,
                new Rigidity.Moved("O 1s", Estimate.of(-0.82, "b", 0.01)),
                new Rigidity.Moved("Si 2p", Estimate.of(-0.79, "c", 0.02))));
        assertThat(together.together()).isTrue();
        assertThat(together.meanEv()).isCloseTo(-0.81, within(0.01));
        Rigidity apart = Rigid.of(List.of(carbon, new Rigidity.Moved("O 1s", Estimate.of(-0.40, "b", 0.01))));
        assertThat(apart.together()).isFalse();
        assertThat(apart.largestEv()).isCloseTo(0.2, within(1e-9));

        ChargeInput input = Made.input(
                Made.ISOLATED,
                -2.5,
                Made.line("C 1s", Made.carbonScan(287.35, 104)),
                Made.line("O 1s", oxygen(535.05, 105)),
                Made.line("C 1s", Made.carbonScan(287.35, 106)),
                Made.line("O 1s", oxygen(535.50, 107)));
        assertThat(Made.rules(Made.byRecord(), input)).contains("differential-charging");
        assertThat(Made.reference(Made.byRecord(), input).verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
    }

    @Test
    void whatTheRecordDeclaresIsListed() {
        ChargeReference charge =
                Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, Made.carbonScan(287.35, 108), -2.5));
        assertThat(charge.evidence().declared())
                .containsExactly("declared isolated", "declared an insulator", "carbon declared adventitious");
    }

    @Test
    void unknownStatisticsGiveAPositionWithoutInvention() {
        BindingScan counted = Made.carbonScan(287.35, 109);
        BindingScan rates = new BindingScan(
                "C 1s rates",
                1486.6,
                counted.energies(),
                counted.counts(),
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty());
        ChargeReference charge = Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, rates, -2.5));
        assertThat(charge.measuredEv().orElseThrow()).isCloseTo(287.35, within(0.05));
        assertThat(charge.fit().orElseThrow().reducedChiSquare()).isNaN();
        assertThat(charge.evidence().shape()).isEmpty();
    }
}
