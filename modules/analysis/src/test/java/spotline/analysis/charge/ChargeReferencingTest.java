package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.analysis.charge.SpotCondition.CarbonOrigin;
import spotline.analysis.charge.SpotCondition.Conduction;
import spotline.analysis.charge.SpotCondition.Contact;
import spotline.core.Severity;
import spotline.spectra.BindingScan;

class ChargeReferencingTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    @Test
    void carbonAt28735IsShiftedByMinus255AndOxygenGoesWithIt() {
        ChargeReference charge =
                Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, Made.carbonScan(287.35, 11), -2.5));
        assertThat(charge.method()).isEqualTo(ChargeMethod.ADVENTITIOUS_CARBON);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(charge.referenceEv()).hasValue(284.8); // common laboratory setting for insulators
        assertThat(charge.measuredEv().orElseThrow()).isCloseTo(287.35, within(0.03));
        // Derived, closed form: shift = reference - measured = -2.55 eV; O 1s at 535.05 goes to 532.50 eV.
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(-2.55, within(0.03));
        assertThat(charge.referenced(535.05).orElseThrow()).isCloseTo(532.50, within(0.03));
        assertThat(charge.shiftEv().orElseThrow())
                .isEqualTo(284.8 - charge.measuredEv().orElseThrow());
    }

    @Test
    void measurementAndReferenceStaySeparateAndCombineInSquares() {
        ChargeReference charge =
                Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, Made.carbonScan(287.35, 11), -2.5));
        assertThat(charge.measurementU().orElseThrow()).isBetween(0.001, 0.02);
        assertThat(charge.referenceU()).hasValue(0.25); // facility reviews of insulators
        assertThat(charge.standardUncertainty().orElseThrow())
                .isCloseTo(Math.hypot(charge.measurementU().orElseThrow(), 0.25), within(1e-12));
        assertThat(charge.sentence()).contains("adventitious carbon").contains("284.80 eV");
    }

    @Test
    void anotherReferenceValueMovesEveryEnergyByTheDifferenceAndNothingElse() {
        ChargeInput input = Made.input(Made.ISOLATED, Made.carbonScan(287.35, 12), -2.5);
        ChargeReference usual = Made.reference(Made.byRecord(), input);
        ChargeReference nominal = Made.reference(
                Made.settings(ChargeMethod.ADVENTITIOUS_CARBON, OptionalDouble.of(285.0), NONE, "", ""), input);
        // Derived, closed form: 285.0 - 284.8 = 0.20 eV for any line.
        assertThat(nominal.referenced(535.05).orElseThrow()
                        - usual.referenced(535.05).orElseThrow())
                .isCloseTo(0.20, within(1e-9));
        assertThat(nominal.measuredEv()).isEqualTo(usual.measuredEv());
        assertThat(nominal.measurementU()).isEqualTo(usual.measurementU());
    }

    @Test
    void groundedMetalWithCarbonAt2843IsNotShifted() {
        // Carbon on conductors lies anywhere from 284.1 to 286.7 eV: Greczynski and Hultman, 2017.
        BindingScan carbon = Made.carbonScan(284.3, 13);
        ChargeReference charge = Made.reference(Made.byRecord(), Made.input(Made.GROUNDED_METAL, carbon, 0));
        assertThat(charge.method()).isEqualTo(ChargeMethod.NONE);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.NOT_NEEDED);
        assertThat(charge.shiftEv()).hasValue(0);
        assertThat(charge.sentence()).contains("no metal line was measured");
    }

    @ParameterizedTest
    @CsvSource({"285.0, false", "286.6, false", "288.3, true", "282.4, true"})
    void carbonWhereNoConductorHasItTellsOfACharge(double carbonEv, boolean charged) {
        // Carbon on conductors lies anywhere from 284.1 to 286.7 eV: Greczynski and Hultman, 2017.
        BindingScan carbon = Made.carbonScan(carbonEv, 17);
        ChargeInput metal = Made.input(Made.GROUNDED_METAL, carbon, 0);
        assertThat(Made.rules(Made.byRecord(), metal).contains("grounded-conductor-off"))
                .isEqualTo(charged);
        assertThat(Made.reference(Made.byRecord(), metal).verdict())
                .isEqualTo(charged ? ChargeVerdict.DOUBTFUL : ChargeVerdict.NOT_NEEDED);
        SpotCondition unknown = new SpotCondition(Conduction.UNKNOWN, Contact.GROUNDED, CarbonOrigin.ADVENTITIOUS);
        ChargeInput undeclared = Made.input(unknown, carbon, 284.8 - carbonEv);
        ChargeReference charge = Made.reference(Made.byRecord(), undeclared);
        assertThat(charge.verdict()).isEqualTo(charged ? ChargeVerdict.FAILED : ChargeVerdict.DOUBTFUL);
        // Without a shift the windows follow where the lines are.
        assertThat(charge.shiftEv().isPresent()).isEqualTo(!charged);
    }

    @ParameterizedTest
    @CsvSource({"368.21, NOT_NEEDED, false", "368.55, DOUBTFUL, true", "367.90, DOUBTFUL, true"})
    void groundedMetalIsCheckedByItsOwnLine(double silverEv, ChargeVerdict verdict, boolean found) {
        // Ag 3d5/2 at 368.21 eV: ISO 15472:2010. Limit 0.2 eV: common practice, no source.
        BindingScan silver = Made.noisy(
                "Ag 3d scan",
                360,
                382,
                List.of(new Made.Peak(silverEv, 20000, 0.6), new Made.Peak(silverEv + 6, 13300, 0.6)),
                300,
                14);
        ChargeInput input = Made.input(Made.GROUNDED_METAL, 0, "Ag 3d", silver);
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isEqualTo(verdict);
        assertThat(charge.shiftEv()).hasValue(0);
        assertThat(charge.referenceLine()).isEqualTo("Ag 3d5/2");
        assertThat(charge.measuredEv().orElseThrow()).isCloseTo(silverEv, within(0.01));
        assertThat(Made.rules(Made.byRecord(), input).contains("grounded-conductor-off"))
                .isEqualTo(found);
    }

    @Test
    void fluoropolymerIsNeverReferencedToAdventitiousCarbon() {
        SpotCondition own = new SpotCondition(Conduction.INSULATOR, Contact.ISOLATED, CarbonOrigin.OWN);
        BindingScan carbon = Made.noisy(
                "C 1s scan",
                280,
                305,
                List.of(new Made.Peak(295.1, 8000, 1.2), new Made.Peak(287.9, 1500, 1.2)),
                300,
                15);
        ChargeInput input = Made.input(own, carbon, -3.1);
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(charge.shiftEv()).isEmpty();
        assertThat(charge.referenced(295.1)).isEmpty();
        assertThat(Made.decide(Made.byRecord(), input).allFindings())
                .allMatch(f -> f.severity() != Severity.STOP, "no charge finding withholds a composition")
                .anyMatch(f -> f.rule().equals("charge-reference-failed"));
    }

    @Test
    void ownCarbonIsUsedWithAStatedReference() {
        SpotCondition own = new SpotCondition(Conduction.INSULATOR, Contact.ISOLATED, CarbonOrigin.OWN);
        BindingScan carbon = Made.noisy("C 1s scan", 278, 298, List.of(new Made.Peak(287.0, 9000, 1.1)), 300, 16);
        ChargeReference charge = Made.reference(
                Made.settings(
                        ChargeMethod.SAMPLE_CARBON,
                        OptionalDouble.of(285.0), // Beamson and Briggs, 1992, from memory
                        OptionalDouble.of(0.1),
                        "",
                        "polyethylene"),
                Made.input(own, carbon, -2));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(-2.0, within(0.02));
        assertThat(charge.referenceU()).hasValue(0.1);
        assertThat(charge.sentence()).contains("polyethylene");
    }

    @Test
    void undeclaredElectricalStateIsDoubtful() {
        SpotCondition unknown = new SpotCondition(Conduction.INSULATOR, Contact.UNKNOWN, CarbonOrigin.ADVENTITIOUS);
        ChargeReference charge =
                Made.reference(Made.byRecord(), Made.input(unknown, Made.carbonScan(287.35, 17), -2.5));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(-2.55, within(0.03));
        assertThat(charge.sentence()).contains("electrical state is not declared");
    }

    @Test
    void groundedInsulatorIsDoubtful() {
        SpotCondition odd = new SpotCondition(Conduction.INSULATOR, Contact.GROUNDED, CarbonOrigin.ADVENTITIOUS);
        ChargeReference charge = Made.reference(Made.byRecord(), Made.input(odd, Made.carbonScan(287.35, 18), -2.5));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
    }

    @Test
    void fewCountsMakeTheReferenceWeak() {
        BindingScan carbon = Made.noisy("C 1s scan", 277, 302, Made.carbon(287, 25, 1.2), 60, 20);
        ChargeInput input = Made.input(Made.ISOLATED, carbon, -2.2);
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isNotEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(Made.rules(Made.byRecord(), input)).containsAnyOf("reference-line-weak", "charge-reference-failed");
    }

    @Test
    void aBroadReferenceLineIsDoubtful() {
        BindingScan carbon = Made.noisy("C 1s scan", 277, 302, Made.carbon(287, 20000, 2.4), 400, 20);
        ChargeInput input = Made.input(Made.ISOLATED, carbon, -2.2);
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(Made.rules(Made.byRecord(), input)).contains("reference-line-broad");
    }

    @ParameterizedTest
    @CsvSource({"287.35, false", "287.57, true", "287.13, true"})
    void firstAndLastCarbonTellADrift(double lastEv, boolean found) {
        ChargeInput input = Made.input(
                Made.ISOLATED,
                -2.5,
                Made.line("C 1s", Made.carbonScan(287.35, 21)),
                Made.line("C 1s", Made.carbonScan(lastEv, 22)));
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(Made.rules(Made.byRecord(), input).contains("surface-potential-drifted"))
                .isEqualTo(found);
        assertThat(charge.verdict()).isEqualTo(found ? ChargeVerdict.DOUBTFUL : ChargeVerdict.ACCEPTED);
        assertThat(charge.measuredEv().orElseThrow())
                .as("the first scan is the reference")
                .isCloseTo(287.35, within(0.03));
    }

    @Test
    void anInternalLineIsSetToTheStatedEnergy() {
        BindingScan oxygen = Made.noisy("O 1s scan", 525, 547, List.of(new Made.Peak(535.6, 20000, 1.5)), 500, 23);
        ChargeReference charge = Made.reference(
                Made.settings(
                        ChargeMethod.INTERNAL_LINE,
                        OptionalDouble.of(532.9), // O 1s of SiO2: common practice, from memory
                        OptionalDouble.of(0.15),
                        "O 1s",
                        "silica"),
                Made.input(Made.ISOLATED, -2.7, "O 1s", oxygen));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(charge.referenceLine()).isEqualTo("O 1s");
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(-2.7, within(0.02));
    }

    @Test
    void anInternalLineThatWasNotMeasuredFails() {
        ChargeReference charge = Made.reference(
                Made.settings(ChargeMethod.INTERNAL_LINE, OptionalDouble.of(103.5), NONE, "Si 2p", "silica"),
                Made.input(Made.ISOLATED, Made.carbonScan(287.35, 24), -2.5));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(charge.sentence()).contains("Si 2p");
    }

    @Test
    void aFixedShiftCarriesItsReason() {
        ChargeSettings fixed = new ChargeSettings(
                ChargeMethod.FIXED,
                NONE,
                OptionalDouble.of(0.1),
                "",
                OptionalDouble.of(-2.4),
                Optional.empty(),
                300,
                Optional.empty(),
                Optional.empty(),
                false,
                "gold dots on the same film",
                ChargeLimits.USUAL);
        ChargeReference charge = Made.reference(fixed, Made.input(Made.ISOLATED, Made.carbonScan(287.35, 25), -2.5));
        assertThat(charge.shiftEv()).hasValue(-2.4);
        assertThat(charge.sentence()).contains("gold dots on the same film");
        assertThatThrownBy(() -> Made.settings(ChargeMethod.FIXED, NONE, NONE, "", ""))
                .hasMessageContaining("shiftEv")
                .hasMessageContaining("reason");
    }

    @Test
    void noCarbonScanFailsWithoutAStop() {
        ChargeInput input = Made.input(Made.ISOLATED, -2.5);
        assertThat(Made.reference(Made.byRecord(), input).verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(Made.decide(Made.byRecord(), input).allFindings()).allMatch(f -> f.severity() == Severity.CAUTION);
    }
}
