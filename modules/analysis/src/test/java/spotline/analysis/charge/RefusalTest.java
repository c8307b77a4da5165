package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.analysis.charge.SpotCondition.CarbonOrigin;
import spotline.analysis.charge.SpotCondition.Conduction;
import spotline.analysis.charge.SpotCondition.Contact;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.spectra.BindingScan;

class RefusalTest {
    private static final double SHIFT = -2.6;

    private static final MeasuredLine CARBON = Made.line("C 1s", Made.carbonScan(284.8 - SHIFT, 81));
    private static final MeasuredLine SILICON = Made.line(
            "Si 2p", Made.noisy("Si 2p scan", 98, 114, List.of(new Made.Peak(103.5 - SHIFT, 9000, 1.3)), 200, 82));

    private static ChargeInput input(SpotCondition condition, boolean sputtered, String... elements) {
        return new ChargeInput(
                condition,
                List.of(CARBON, SILICON),
                List.of(),
                Optional.empty(),
                new TreeSet<>(List.of(elements)),
                sputtered,
                true,
                SHIFT);
    }

    private static ChargeSettings carbon(String reason) {
        return Made.settings(
                ChargeMethod.ADVENTITIOUS_CARBON, OptionalDouble.empty(), OptionalDouble.empty(), "", reason);
    }

    private static void refused(ChargeInput input, String why) {
        ChargeReference charge = Made.reference(Made.byRecord(), input);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(charge.shiftEv()).isEmpty();
        assertThat(charge.sentence()).contains(why);
        List<Finding> findings = Made.decide(Made.byRecord(), input).allFindings();
        assertThat(findings).extracting(Finding::severity).doesNotContain(Severity.STOP);
        assertThat(findings)
                .anyMatch(f -> f.rule().equals("charge-reference-failed")
                        && f.message().contains(why));
    }

    @Test
    void rutheniumUnderCarbonIsARefusal() {
        refused(input(Made.ISOLATED, false, "Ru", "Si"), "Ru 3d lies under C 1s");
    }

    @Test
    void sputteringIsARefusal() {
        refused(input(Made.ISOLATED, true, "Si"), "sputtered");
    }

    @Test
    void ownCarbonIsARefusal() {
        SpotCondition own = new SpotCondition(Conduction.INSULATOR, Contact.ISOLATED, CarbonOrigin.OWN);
        refused(input(own, false, "Si"), "sample's own");
    }

    @Test
    void potassiumAndStrontiumBesideCarbonAreADoubt() {
        for (String element : List.of("K", "Sr")) {
            ChargeReference charge = Made.reference(Made.byRecord(), input(Made.ISOLATED, false, element, "Si"));
            assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
            assertThat(charge.shiftEv().orElseThrow()).isCloseTo(SHIFT, within(0.03));
            assertThat(charge.sentence()).contains(element + " ").contains("beside C 1s");
        }
    }

    @Test
    void theNextBestReferenceComesWithItsNumbers() {
        ChargeReference charge = Made.reference(Made.byRecord(), input(Made.ISOLATED, true, "Si"));
        Candidate best = charge.evidence().candidates().get(0);
        assertThat(best.line()).startsWith("Si 2p");
        assertThat(best.state()).isEqualTo("SiO2");
        assertThat(best.method()).isEqualTo(ChargeMethod.INTERNAL_LINE);
        assertThat(best.shiftEv()).isCloseTo(SHIFT, within(0.35));
        assertThat(best.standardUncertainty().orElseThrow()).isBetween(0.2, 0.6);
        assertThat(charge.sentence()).contains("Next best: Si 2p", "SiO2", "would give a shift of -2.");
    }

    @Test
    void aStatedReasonTurnsTheRefusalIntoADoubt() {
        ChargeInput sputtered = input(Made.ISOLATED, true, "Si");
        assertThat(Made.reference(carbon(""), sputtered).verdict()).isEqualTo(ChargeVerdict.FAILED);
        ChargeReference justified = Made.reference(carbon("carbon regrew overnight"), sputtered);
        assertThat(justified.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(justified.shiftEv().orElseThrow()).isCloseTo(SHIFT, within(0.03));
        assertThat(justified.sentence()).contains("carbon regrew overnight").contains("sputtered");
    }

    @Test
    void carbonOnAGroundedConductorIsADoubtWhenAskedFor() {
        ChargeInput grounded = Made.input(Made.GROUNDED_METAL, Made.carbonScan(284.3, 83), 0);
        ChargeReference charge = Made.reference(carbon(""), grounded);
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
        assertThat(charge.sentence()).contains("grounded conductor");
    }

    @Test
    void noCarbonLineIsTooLittleCarbon() {
        BindingScan none = Made.noisy("C 1s scan", 277, 302, List.of(new Made.Peak(287, 1, 1.2)), 300, 84);
        ChargeReference charge = Made.reference(Made.byRecord(), Made.input(Made.ISOLATED, none, -2.2));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(charge.sentence()).contains("Too little carbon");
    }
}
