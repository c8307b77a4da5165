package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Finding;
import spotline.core.Severity;

class PlanCheckTest {
    private static final String GROUNDED = "\"method\": \"metal-clip\", \"electricalState\": \"grounded\"";

    private static Finding only(String body) {
        List<Finding> findings = Plans.check(body);
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    @Test
    void aCleanPlanRaisesNothing() {
        assertThat(Plans.check(Plans.rectangle(50, 10, 0))).isEmpty();
        assertThat(Plans.check(Plans.shorthand("\"conductivity\": \"conductor\"", GROUNDED, "")))
                .isEmpty();
        assertThat(Plans.check("\"spots\": []")).isEmpty();
    }

    /** Derived: half of 12 mm is 6 mm, 1 mm more than the 5 mm to the edge. */
    @Test
    void theLongSideOutwardsOverhangsByOneMillimetre() {
        Finding finding = only(Plans.rectangle(5, 10, 0));
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.rule()).isEqualTo("holder-overhang");
        assertThat(finding.spot()).isEqualTo("1");
        assertThat(finding.sample()).isEqualTo("sample B");
        assertThat(finding.message()).isEqualTo("Specimen B (sample B) overhangs the holder by 1.0 mm on the -x side.");
    }

    /** Derived: half of 8 mm is 4 mm, inside the 5 mm to the edge, but the usable area starts at 2 mm. */
    @Test
    void turnedByNinetyDegreesItOnlyLeavesTheUsableArea() {
        Finding finding = only(Plans.rectangle(5, 10, 90));
        assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
        assertThat(finding.rule()).isEqualTo("outside-usable-area");
        assertThat(finding.message())
                .isEqualTo("Specimen B (sample B) reaches beyond the usable area by 1.0 mm on the -x side.");
        assertThat(Plans.check(Plans.rectangle(6, 10, 90))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            50,  15,  90, by 1.0 mm on the +y side
            50,   5,  90, by 1.0 mm on the -y side
            50,   5, -90, by 1.0 mm on the -y side
            # derived: the diagonal of 12 x 8 is 14.4222 mm, turned upright reaches 7.2111 mm
            50,   5, 56.30993247402021, by 2.2 mm on the -y side
            50,  -3,   0, by 7.0 mm on the -y side
            50, 5.98,  90, by 0.02 mm on the -y side
            """)
    void overhangHandlesSidesAndRotation(double x, double y, double rotation, String text) {
        assertThat(Plans.check(Plans.rectangle(x, y, rotation)))
                .filteredOn(finding -> finding.rule().equals("holder-overhang"))
                .singleElement()
                .extracting(Finding::message)
                .asString()
                .contains(text);
    }

    @Test
    void aPieceWiderThanTheBarOverhangsOnBothSides() {
        String body = Plans.piece("W", 50, 10.5, 0, "\"width\": 4, \"height\": 24", "") + ", \"spots\": []";
        assertThat(only(body).message())
                .isEqualTo(
                        "Specimen W (sample W) overhangs the holder by 2.5 mm on the +y side and by 1.5 mm on the -y side.");
    }

    @Test
    void anEllipseIsSmallerThanItsRectangle() {
        String corner = "\"width\": 6, \"height\": 6";
        // The bar's corner at (112, 20) is cut off by 3 mm: a disc fits there where a square does not.
        assertThat(Plans.check(Plans.piece("D", 107.5, 16.5, 0, corner, "") + ", \"spots\": []"))
                .anyMatch(finding -> finding.rule().equals("holder-overhang"));
        assertThat(Plans.check(
                        Plans.piece("D", 107.5, 16.5, 0, "\"shape\": \"ellipse\", " + corner, "") + ", \"spots\": []"))
                .noneMatch(finding -> finding.rule().equals("holder-overhang"));
    }

    @Test
    void aLimitAboveZeroLetsASmallOverhangPassAndIsNamedOtherwise() {
        PlanCheckSettings lenient = settings(new PlanCheckSettings.Placement(1.5, 9, 0, 0));
        assertThat(PlanCheck.check(Plans.plan(Plans.rectangle(5, 10, 0)), Plans.BAR, lenient))
                .isEmpty();
        assertThat(PlanCheck.check(Plans.plan(Plans.rectangle(4, 10, 0)), Plans.BAR, lenient))
                .singleElement()
                .extracting(Finding::message)
                .asString()
                .endsWith("by 2.0 mm on the -x side. The limit is 1.5 mm.");
    }

    @Test
    void aSpecimenOnAKeepOutAreaIsTold() {
        // Derived: 12 x 8 mm centred on (104, 10) reaches 110 mm; of the hole from 105.5 mm on, 4.5 x 8 mm is covered.
        List<Finding> findings = Plans.check(Plans.rectangle(104, 10, 0));
        assertThat(findings).extracting(Finding::rule).containsExactly("outside-usable-area", "keep-out");
        assertThat(findings.get(1).message())
                .isEqualTo("Specimen B (sample B) covers 36.0 mm2 of the area kept free for the grip hole.");
    }

    @Test
    void aSpotBesideItsSpecimenStops() {
        String body = Plans.piece("B", 50, 10, 0, "\"width\": 12, \"height\": 8", "") + ", \"spots\": [ "
                + Plans.spot("1", "B", 57.5, 10, "") + ", " + Plans.spot("2", "B", 54.5, 12.5, "") + " ]";
        Finding finding = only(body);
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.rule()).isEqualTo("spot-off-specimen");
        assertThat(finding.spot()).isEqualTo("1");
        assertThat(finding.message()).isEqualTo("Spot 1 lies 1.5 mm beside specimen B (sample B).");
    }

    @Test
    void aSpotOfUnknownOutlineBesideTheHolderStops() {
        String body = """
                "spots": [ { "id": "1", "xMm": 50, "yMm": 22, "sample": { "name": "s" }, "mount": { %s } } ]""".formatted(GROUNDED);
        List<Finding> findings = Plans.check(body);
        assertThat(findings).extracting(Finding::rule).containsExactly("spot-off-holder", "geometry-unchecked");
        assertThat(findings.get(0).message()).isEqualTo("Spot 1 lies 2.0 mm beside the holder.");
        assertThat(findings.get(1).severity()).isEqualTo(Severity.NOTE);
        assertThat(findings.get(1).message()).contains("sample s (spot 1)");
    }

    @Test
    void overlappingSpecimensAreToldAndTouchingOnesAreNot() {
        String size = "\"width\": 12, \"height\": 8";
        String a = Plans.specimen("A", 30, 10, 0, size, "");
        assertThat(Plans.check("\"specimens\": [ " + a + ", " + Plans.specimen("B", 42, 10, 0, size, "") + " ]"))
                .isEmpty();
        // Derived: 0.5 mm of 8 mm.
        Finding finding = only("\"specimens\": [ " + a + ", " + Plans.specimen("B", 41.5, 10, 0, size, "") + " ]");
        assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
        assertThat(finding.message())
                .isEqualTo("Specimen A (sample A) and specimen B (sample B) overlap over 4.0 mm2.");
    }

    @Test
    void twoShorthandSpotsOnOnePieceAreToldHowToSayIt() {
        String spot = """
                { "id": "%s", "xMm": %s, "yMm": 10, "sample": { "name": "strip" },
                  "mount": { "outlineMm": { "width": 6, "height": 5 }, %s } }""";
        Finding finding = only("\"spots\": [ " + spot.formatted("1", "40", GROUNDED) + ", "
                + spot.formatted("2", "43", GROUNDED) + " ]");
        assertThat(finding.rule()).isEqualTo("specimen-overlap");
        assertThat(finding.message()).endsWith("If they are one piece, declare it once and let both spots name it.");
    }

    @Test
    void whatASpotDoesNotDeclareIsNamedAtOnce() {
        Finding finding = only(Plans.shorthand("", "\"method\": \"stub\"", ""));
        assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
        assertThat(finding.message())
                .isEqualTo("Spot 7 has no declared electrical state: the charge method cannot be defended.");
        List<Finding> bare = Plans.check("\"spots\": [ { \"id\": \"3\" } ]");
        assertThat(bare).extracting(Finding::rule).containsExactly("spot-record", "geometry-unchecked");
        assertThat(bare.get(0).message())
                .isEqualTo("Spot 3 has no declared sample, position, mount or electrical state: signals of the mount"
                        + " cannot be told from the sample's, and the charge method cannot be defended.");
    }

    @Test
    void heightAndThicknessOutsideTheHoldersLimitsStop() {
        String thick = Plans.piece("B", 50, 10, 0, "\"width\": 12, \"height\": 8", "\"thicknessMm\": 3.5")
                + ", \"spots\": [ " + Plans.spot("1", "B", 50, 10, "\"zMm\": 3.2") + " ]";
        assertThat(Plans.check(thick)).extracting(Finding::severity).containsOnly(Severity.STOP);
        assertThat(Plans.check(thick))
                .extracting(Finding::message)
                .containsExactly(
                        "Specimen B (sample B) is 3.5 mm thick; the holder allows 3 mm.",
                        "Spot 1 lies 3.2 mm from the reference height; the holder's window is -0.5 to 3 mm.");
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            insulator,     metal-clip,  grounded, true
            insulator,     metal-clip,  isolated, false
            insulator,     screwed,     grounded, true
            insulator,     carbon-tape, grounded, false
            insulator,     carbon-tape, isolated, false
            mixed,         metal-clip,  grounded, true
            mixed,         metal-clip,  isolated, false
            mixed,         carbon-tape, grounded, false
            semiconductor, metal-clip,  grounded, false
            conductor,     metal-clip,  grounded, false
            unknown,       metal-clip,  grounded, false
            """)
    void anInsulatorPartlyGroundedIsTold(String conductivity, String method, String state, boolean told) {
        List<Finding> findings = Plans.check(Plans.shorthand(
                "\"conductivity\": \"" + conductivity + "\"",
                "\"method\": \"" + method + "\", \"electricalState\": \"" + state + "\"",
                ""));
        if (told) {
            assertThat(findings).singleElement().satisfies(finding -> {
                assertThat(finding.rule()).isEqualTo("partly-grounded");
                assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
                assertThat(finding.spot()).isEqualTo("7");
                assertThat(finding.message()).contains("Isolate the whole of it or bridge it.");
            });
        } else {
            assertThat(findings).isEmpty();
        }
    }

    @Test
    void aMixedSampleUnderAClipOfUnknownStateIsNotTakenForPartlyGrounded() {
        assertThat(Plans.check(Plans.shorthand("\"conductivity\": \"mixed\"", "\"method\": \"metal-clip\"", "")))
                .extracting(Finding::rule)
                .containsExactly("spot-record");
        assertThat(Plans.check(Plans.shorthand("\"conductivity\": \"insulator\"", "\"method\": \"metal-clip\"", "")))
                .extracting(Finding::rule)
                .containsExactly("spot-record", "partly-grounded");
    }

    @Test
    void aMeasuredPathToTheSurfaceSettlesIt() {
        assertThat(Plans.check(
                        Plans.shorthand("\"conductivity\": \"mixed\"", GROUNDED + ", \"resistanceOhm\": 2000", "")))
                .isEmpty();
    }

    /** Derived, Ohm's law: 10 nA x 100 Mohm = 1 V; 10 nA x 10 Mohm = 0.1 V is just allowed. */
    @Test
    void aResistanceThatContradictsTheDeclaredStateIsTold() {
        String conductor = "\"conductivity\": \"conductor\"";
        assertThat(only(Plans.shorthand(conductor, GROUNDED + ", \"resistanceOhm\": 1e8", ""))
                        .message())
                .isEqualTo("Sample s (spot 7) is declared grounded, but 100000000 ohm to the holder would leave its"
                        + " surface at 1 V with 10 nA; the limit is 0.1 V.");
        assertThat(Plans.check(Plans.shorthand(conductor, GROUNDED + ", \"resistanceOhm\": 1e7", "")))
                .isEmpty();
        String isolated = "\"method\": \"stub\", \"electricalState\": \"isolated\", \"resistanceOhm\": ";
        assertThat(only(Plans.shorthand(conductor, isolated + "50", "")).rule()).isEqualTo("conduction-path");
        assertThat(Plans.check(Plans.shorthand(conductor, isolated + "1e9", "")))
                .isEmpty();
    }

    @Test
    void loosePowderBeforeAnIonGunStops() {
        String tape = "\"method\": \"powder-on-tape\", \"electricalState\": \"isolated\"";
        String etched = "\"spectra\": [ { \"file\": \"a.txt\", \"role\": \"etch\" } ]";
        Finding finding = only(Plans.shorthand("\"form\": \"powder\"", tape, etched));
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.rule()).isEqualTo("powder-sputter");
        assertThat(Plans.check(Plans.shorthand("\"form\": \"powder\"", tape, "")))
                .extracting(Finding::rule)
                .containsExactly("powder-record");
        assertThat(Plans.check(Plans.shorthand(
                        "\"form\": \"powder\"", "\"method\": \"pellet\", \"electricalState\": \"isolated\"", etched)))
                .isEmpty();
    }

    @Test
    void withoutAHolderThePlanIsCheckedAsFarAsItGoes() {
        List<Finding> findings =
                PlanCheck.check(Plans.plan(Plans.rectangle(5, 10, 0)), Optional.empty(), PlanCheckSettings.DEFAULT);
        assertThat(findings).singleElement().extracting(Finding::rule).isEqualTo("geometry-unchecked");
    }

    private static PlanCheckSettings settings(PlanCheckSettings.Placement placement) {
        return new PlanCheckSettings(
                placement,
                PlanCheckSettings.Clearance.DEFAULT,
                PlanCheckSettings.Electrical.DEFAULT,
                PlanCheckSettings.Handling.DEFAULT);
    }

    @Test
    void theRulesIdentifiersStayPut() {
        assertThat(Arrays.stream(PlanRule.values()).map(PlanRule::id))
                .containsExactly(
                        "local-risk-review",
                        "spot-record",
                        "labels-alike",
                        "holder-overhang",
                        "outside-usable-area",
                        "keep-out",
                        "specimen-thickness",
                        "spot-height",
                        "spot-off-specimen",
                        "spot-off-holder",
                        "no-clearance",
                        "small-clearance",
                        "specimen-overlap",
                        "clip-on-neighbour",
                        "partly-grounded",
                        "conduction-path",
                        "expected-potential",
                        "unlike-neighbours",
                        "powder-sputter",
                        "powder-patch",
                        "powder-quantity",
                        "powder-loose-grains",
                        "powder-record",
                        "stage-out-of-range",
                        "stage-beyond-limit",
                        "stage-margin",
                        "stage-limit-unknown",
                        "stage-bias",
                        "stub-seat",
                        "transfer-seat",
                        "transfer-broken",
                        "transfer-record",
                        "profile-off-axis",
                        "profile-unrotated",
                        "geometry-unchecked");
    }

    @Test
    void settingsTellEveryProblemAtOnce() {
        assertThat(PlanCheckSettings.Placement.check(-1, Double.NaN, 0, 0)).hasSize(2);
        assertThat(PlanCheckSettings.Clearance.check(0.1, 0.2, -1, Double.NaN)).hasSize(3);
        assertThat(PlanCheckSettings.Electrical.check(0, 0.3, Double.POSITIVE_INFINITY, -1))
                .hasSize(3);
        assertThat(PlanCheckSettings.Handling.check(0, -1, -1, Double.NaN, Double.NaN, -1))
                .hasSize(6);
        assertThatIllegalArgumentException().isThrownBy(() -> new PlanCheckSettings.Placement(-1, 0, 0, 0));
    }

    @Test
    void hugePiecesAreMeasuredInBoundedTime() {
        String body = Plans.piece("H", 50, 10, 33, "\"width\": 10000, \"height\": 10000", "");
        assertThat(Plans.check(body)).extracting(Finding::rule).containsExactly("holder-overhang", "keep-out");
    }
}
