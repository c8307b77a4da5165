package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.core.Finding;
import spotline.holder.HolderTemplates;

/** Plans that are wrong in one way each: what they fire is that one thing and nothing else. Severities: PlanRule. */
class BadPlansTest {
    /** A plan that is right in every way is made wrong by replacing one of its words. */
    private record Bad(String what, String rule, String holder, String body, String said) {
        @Override
        public String toString() {
            return what;
        }
    }

    private static final String CLIP =
            "\"clips\": [ { \"material\": \"copper\", \"centreMm\": { \"x\": %s, \"y\": 10 }, \"outlineMm\": { \"width\": 2, \"height\": 6 } } ]";

    /** The plan that all bad ones come from: it must fire nothing on any holder it is used with. */
    private static String good(String specimen, String spot, String more) {
        return """
                "specimens": [ { "id": "A", "centreMm": { "x": 20, "y": 10 }, "outlineMm": { "width": 9, "height": 8 }, "thicknessMm": 1,
                  "sample": { "name": "plate", "form": "solid", "conductivity": "conductor" },
                  "mount": { "method": "screwed", "electricalState": "grounded" } %s } ],
                "spots": [ { "id": "1", "specimen": "A", "xMm": 20, "yMm": 10, "zMm": 1 %s } ] %s""".formatted(comma(specimen), comma(spot), comma(more));
    }

    private static String comma(String text) {
        return text.isEmpty() ? "" : ", " + text;
    }

    private static Bad bad(String what, String rule, String body, String said) {
        return new Bad(what, rule, "flat-bar", body, said);
    }

    private static Bad on(String holder, String what, String rule, String body, String said) {
        return new Bad(what, rule, holder, body, said);
    }

    private static String swap(String from, String to) {
        String good = good("", "", "");
        assertThat(good).contains(from);
        return good.replace(from, to);
    }

    private static String sample(String fields) {
        return swap("\"form\": \"solid\"", "\"form\": \"solid\", " + fields);
    }

    private static String mount(String fields) {
        return swap("\"method\": \"screwed\", \"electricalState\": \"grounded\"", fields);
    }

    private static String powder(String mount) {
        return good("", "", "")
                .replace("\"form\": \"solid\"", "\"form\": \"powder\"")
                .replace("\"method\": \"screwed\"", "\"method\": \"powder-on-tape\", " + mount);
    }

    private static String neighbour(String x, String mount) {
        return good(
                "\"rotationDeg\": 0 }, { \"id\": \"B\", \"centreMm\": { \"x\": " + x
                        + ", \"y\": 10 }, \"outlineMm\": { \"width\": 9, \"height\": 8 }, \"mount\": { " + mount + " }",
                "",
                "");
    }

    private static final String COVERED = "\"powder\": { \"quantity\": \"covering\", \"looseGrainsRemoved\": true }";

    static Stream<Bad> plans() {
        return Stream.concat(Stream.concat(places(), rooms()), Stream.concat(mounts(), stages()));
    }

    private static Stream<Bad> places() {
        return Stream.of(
                bad(
                        "no sample",
                        "spot-record",
                        "\"spots\": [ { \"id\": \"1\", \"xMm\": 20, \"yMm\": 10, \"mount\": { \"method\": \"screwed\","
                                + " \"electricalState\": \"grounded\", \"outlineMm\": { \"width\": 9, \"height\": 8 } } } ]",
                        "Spot 1 has no declared sample."),
                bad(
                        "no electrical state",
                        "spot-record",
                        mount("\"method\": \"stub\""),
                        "no declared electrical state: the charge method"),
                bad(
                        "no mount",
                        "spot-record",
                        mount("\"electricalState\": \"grounded\""),
                        "no declared mount: signals of the mount"),
                bad("no position", "spot-record", swap("\"xMm\": 20, \"yMm\": 10,", ""), "no declared position."),
                bad(
                        "spot labels alike",
                        "labels-alike",
                        good("", "", "")
                                .replace(
                                        "\"zMm\": 1  }",
                                        "\"zMm\": 1 }, { \"id\": \"01\", \"specimen\": \"A\", \"xMm\": 21, \"yMm\": 10 }"),
                        "Spots 1 and 01 have labels"),
                bad(
                        "specimen labels alike",
                        "labels-alike",
                        neighbour("50", "\"method\": \"stub\", \"electricalState\": \"grounded\"")
                                .replace("\"id\": \"B\"", "\"id\": \"a\""),
                        "Specimens A and a have labels"),
                bad(
                        "over the end",
                        "holder-overhang",
                        swap("\"x\": 20, \"y\": 10 }", "\"x\": 3.5, \"y\": 10 }")
                                .replace("\"xMm\": 20", "\"xMm\": 4"),
                        "by 1.0 mm on the -x side"),
                bad(
                        "over the side",
                        "holder-overhang",
                        swap("\"x\": 20, \"y\": 10 }", "\"x\": 20, \"y\": 16.5 }")
                                .replace("\"yMm\": 10", "\"yMm\": 16"),
                        "by 0.5 mm on the +y side"),
                bad(
                        "turned over the side",
                        "holder-overhang",
                        swap("\"width\": 9, \"height\": 8", "\"width\": 21, \"height\": 3")
                                .replace("\"thicknessMm\": 1", "\"thicknessMm\": 1, \"rotationDeg\": 90"),
                        "by 0.5 mm on the +y side and by 0.5 mm on the -y side"),
                bad(
                        "a clip over the side",
                        "holder-overhang",
                        mount(
                                "\"method\": \"metal-clip\", \"electricalState\": \"grounded\", \"clips\": [ { \"name\": \"brass strip\", \"centreMm\": { \"x\": 24, \"y\": 15 }, \"outlineMm\": { \"width\": 1, \"height\": 12 } } ]"),
                        "The brass strip of specimen A (plate) overhangs the holder by 1.0 mm on the +y side"),
                bad(
                        "beyond the usable area",
                        "outside-usable-area",
                        swap("\"x\": 20, \"y\": 10 }", "\"x\": 6, \"y\": 10 }").replace("\"xMm\": 20", "\"xMm\": 6"),
                        "usable area by 0.5 mm on the -x side"),
                on(
                        "stub-end-bar",
                        "on a screw",
                        "keep-out",
                        swap("\"x\": 20, \"y\": 10 }", "\"x\": 55, \"y\": 9 }")
                                .replace("\"xMm\": 20, \"yMm\": 10", "\"xMm\": 53, \"yMm\": 9"),
                        "of the area kept free for the stub set screw"),
                bad(
                        "too thick",
                        "specimen-thickness",
                        swap("\"thicknessMm\": 1", "\"thicknessMm\": 3.2"),
                        "is 3.2 mm thick; the holder allows 3 mm"),
                bad("too high", "spot-height", swap("\"zMm\": 1", "\"zMm\": 3.4"), "3.4 mm from the reference height"),
                bad("too low", "spot-height", swap("\"zMm\": 1", "\"zMm\": -0.9"), "-0.9 mm from the reference height"),
                bad(
                        "spot beside its specimen",
                        "spot-off-specimen",
                        swap("\"xMm\": 20", "\"xMm\": 26"),
                        "lies 1.5 mm beside specimen A"),
                bad(
                        "overlap",
                        "specimen-overlap",
                        neighbour("28", "\"method\": \"stub\", \"electricalState\": \"grounded\""),
                        "overlap over 8.0 mm2"),
                bad(
                        "clip on a neighbour",
                        "clip-on-neighbour",
                        neighbour("32", "\"method\": \"stub\", \"electricalState\": \"grounded\"")
                                .replace("\"screwed\"", "\"screwed\", " + CLIP.formatted("27")),
                        "The copper clip of specimen A (plate) covers"));
    }

    private static Stream<Bad> rooms() {
        return Stream.of(
                // derived: 4.5 mm to the edge, 0.35 mm half width, 3 x 0.1 mm
                bad(
                        "near the edge",
                        "small-clearance",
                        swap("\"xMm\": 20", "\"xMm\": 23.65"),
                        "Spot 1 has 0.2 mm left between the analysis area and the edge of specimen A (plate), with 0.3 mm kept free"),
                bad(
                        "over the edge",
                        "no-clearance",
                        swap("\"xMm\": 20", "\"xMm\": 24"),
                        "may reach 0.2 mm over the edge of specimen A (plate)"),
                bad(
                        "near a clip",
                        "small-clearance",
                        mount("\"method\": \"metal-clip\", \"electricalState\": \"grounded\", "
                                + CLIP.formatted("21.85")),
                        "0.2 mm left between the analysis area and the copper clip"),
                bad(
                        "under a clip",
                        "no-clearance",
                        mount("\"method\": \"metal-clip\", \"electricalState\": \"grounded\", "
                                + CLIP.formatted("20.5")),
                        "over the copper clip"),
                // derived: half of 0.3 mm at 80 degrees is 0.8638 mm; 4 - 2.5 - 0.8638 - 0.3 = 0.336
                bad(
                        "lengthened by its tilt",
                        "small-clearance",
                        swap("\"yMm\": 10, \"zMm\": 1", "\"yMm\": 12.5, \"zMm\": 1, \"tiltDeg\": 80"),
                        "has 0.3 mm left between the analysis area and the edge of specimen A (plate), with 0.3 mm kept free for the position and the area 0.7 x 1.73 mm wide at 80 degrees"),
                bad(
                        "not known well enough",
                        "no-clearance",
                        good("", "\"positionUncertaintyMm\": 1.5", ""),
                        "with 4.5 mm kept free"),
                bad(
                        "own analysis area",
                        "no-clearance",
                        good("", "\"analysisAreaMm\": { \"x\": 9, \"y\": 1 }", ""),
                        "may reach 0.3 mm over the edge"),
                bad(
                        "near the edge of its tape",
                        "small-clearance",
                        powder("\"tapePatchMm\": { \"width\": 1.9, \"height\": 8 }, " + COVERED),
                        "the edge of the tape patch"));
    }

    private static Stream<Bad> mounts() {
        return Stream.of(
                bad(
                        "insulator clipped",
                        "partly-grounded",
                        swap("\"conductor\"", "\"insulator\""),
                        "grounds it at one face only"),
                bad(
                        "mixed sample with a clip on tape",
                        "partly-grounded",
                        mount("\"method\": \"carbon-tape\", \"electricalState\": \"grounded\", " + CLIP.formatted("24"))
                                .replace("\"conductor\"", "\"mixed\""),
                        "declared of mixed conductivity"),
                bad(
                        "resistance too high",
                        "conduction-path",
                        mount("\"method\": \"screwed\", \"electricalState\": \"grounded\", \"resistanceOhm\": 1e8"),
                        "would leave its surface at 1 V with 10 nA"),
                bad(
                        "isolated but conducting",
                        "conduction-path",
                        mount("\"method\": \"screwed\", \"electricalState\": \"isolated\", \"resistanceOhm\": 1000"),
                        "declared isolated, but only 1000 ohm"),
                bad(
                        "grounded through glass",
                        "conduction-path",
                        mount("\"method\": \"cover-slip\", \"electricalState\": \"grounded\""),
                        "its mount, cover-slip, insulates it"),
                bad(
                        "clip that touches nothing",
                        "conduction-path",
                        mount("\"method\": \"metal-clip\", \"electricalState\": \"grounded\", " + CLIP.formatted("30")),
                        "no declared clip touches it"),
                bad(
                        "resistive film",
                        "expected-potential",
                        sample("\"resistivityOhmCm\": 1e10, \"filmThicknessUm\": 1"),
                        "would leave its surface at 3.3 V"),
                bad(
                        "unlike neighbours",
                        "unlike-neighbours",
                        neighbour("29.6", "\"method\": \"cover-slip\", \"electricalState\": \"isolated\""),
                        "0.6 mm away, is isolated"),
                bad(
                        "powder before the ion gun",
                        "powder-sputter",
                        powder("\"tapePatchMm\": { \"width\": 9, \"height\": 9 }, " + COVERED)
                                .replace("\"zMm\": 1", "\"zMm\": 1, \"etchSteps\": [ { \"projectile\": \"Ar\" } ]"),
                        "has a sputter step"),
                bad(
                        "wide patch of powder",
                        "powder-patch",
                        powder("\"tapePatchMm\": { \"width\": 12, \"height\": 9 }, " + COVERED),
                        "on a patch 12.0 mm across; under 10.0 mm is usual"),
                // derived: 75 x 0.1
                bad(
                        "tape showing",
                        "powder-quantity",
                        powder(COVERED.replace("\"covering\"", "\"sparse\", \"tapeShowing\": 0.1")),
                        "Tape over 10 % of the area adds about 7.5 at.% C"),
                bad(
                        "heap of powder",
                        "powder-quantity",
                        powder(COVERED.replace("covering", "heaped")),
                        "more powder than covers the tape"),
                bad(
                        "loose grains",
                        "powder-loose-grains",
                        powder(COVERED.replace("true", "false")),
                        "were not removed"),
                bad(
                        "powder without a record",
                        "powder-record",
                        powder("\"materials\": [ \"carbon tape\" ]"),
                        "does not say how much powder there is or whether loose grains were removed"));
    }

    private static Stream<Bad> stages() {
        String centred = good("", "", "")
                .replace("\"x\": 20, \"y\": 10 }", "\"x\": 20, \"y\": 16 }")
                .replace("\"yMm\": 10", "\"yMm\": 16");
        String heated = centred + ", \"stage\": { \"setPoints\": [ { \"temperatureC\": 250 } ] }";
        String stable = heated.replace(
                "\"form\": \"solid\"", "\"form\": \"solid\", \"stability\": { \"minC\": -60, \"maxC\": 400 }");
        String turning = good("", "\"etchSteps\": [ { \"projectile\": \"Ar\", \"cycles\": 20 } ]", "")
                .replace("\"x\": 20, \"y\": 10 }", "\"x\": 15, \"y\": 15 }")
                .replace("\"xMm\": 20, \"yMm\": 10", "\"xMm\": 15, \"yMm\": 15");
        String stub = sample("\"sensitivities\": [ \"air\" ]")
                .replace("} } ],", "}, \"transfer\": { \"secondsInAir\": 0 } } ],")
                .replace(
                        "\"electricalState\": \"grounded\" }  }",
                        "\"electricalState\": \"grounded\" }, \"transfer\": { \"secondsInAir\": 0 } }");
        String seated = stub.replace("\"x\": 20, \"y\": 10 }", "\"x\": 70, \"y\": 9 }")
                .replace("\"xMm\": 20, \"yMm\": 10", "\"xMm\": 70, \"yMm\": 9");
        return Stream.of(
                on(
                        "temperature-stage",
                        "too hot for the stage",
                        "stage-out-of-range",
                        stable.replace("250", "650").replace("400", "900"),
                        "Planned 650 C; the holder's record allows"),
                bad(
                        "no stage to heat",
                        "stage-out-of-range",
                        sample("\"stability\": { \"maxC\": 400 }")
                                + ", \"stage\": { \"setPoints\": [ { \"temperatureC\": 250 } ] }",
                        "no temperature range is on record"),
                on(
                        "temperature-stage",
                        "too hot for the sample",
                        "stage-beyond-limit",
                        stable.replace("400", "200"),
                        "stable to 200 C only"),
                on(
                        "temperature-stage",
                        "too hot for the tape",
                        "stage-beyond-limit",
                        stable.replace("\"screwed\"", "\"carbon-tape\""),
                        "is declared stable to 400 C (margin 150 C), and its mount stands 100 C only"),
                on(
                        "temperature-stage",
                        "near the sample's limit",
                        "stage-margin",
                        stable.replace("400", "280"),
                        "Planned 250 C; specimen A (plate) is declared stable to 280 C (margin 30 C). 50 C are asked for."),
                on(
                        "temperature-stage",
                        "near the mount's limit",
                        "stage-margin",
                        stable.replace("\"screwed\"", "\"screwed\", \"maxTemperatureC\": 260"),
                        "and its mount stands 260 C (margin 10 C)"),
                on(
                        "temperature-stage",
                        "too cold for the sample",
                        "stage-beyond-limit",
                        stable.replace("250", "-90"),
                        "stable down to -60 C only"),
                on(
                        "temperature-stage",
                        "no limit declared",
                        "stage-limit-unknown",
                        heated,
                        "declares no temperature up to which it is stable"),
                bad(
                        "bias without a contact",
                        "stage-bias",
                        good("", "", "\"stage\": { \"biasV\": -20 }"),
                        "Planned bias -20 V"),
                on(
                        "stub-end-bar",
                        "seat that is not there",
                        "stub-seat",
                        mount("\"method\": \"stub\", \"electricalState\": \"grounded\", \"seat\": \"left\""),
                        "seat left; the holder has end"),
                on(
                        "stub-end-bar",
                        "larger than its seat",
                        "stub-seat",
                        mount("\"method\": \"stub\", \"electricalState\": \"grounded\", \"seat\": \"end\"")
                                .replace("\"x\": 20, \"y\": 10 }", "\"x\": 70, \"y\": 9 }")
                                .replace("\"xMm\": 20, \"yMm\": 10", "\"xMm\": 70, \"yMm\": 9"),
                        "beyond the seat end"),
                bad("no seat for a transfer", "transfer-seat", stub, "the holder has no stub seat for its transfer"),
                on("stub-end-bar", "not in the seat", "transfer-seat", stub, "does not sit in a stub seat"),
                on(
                        "stub-end-bar",
                        "broken chain",
                        "transfer-broken",
                        seated.replace("\"secondsInAir\": 0", "\"secondsInAir\": 12"),
                        "is 12 s in air between vessel and load lock"),
                on(
                        "stub-end-bar",
                        "chain without a record",
                        "transfer-record",
                        seated.replace("\"secondsInAir\": 0", "\"vessel\": \"small one\""),
                        "does not say how long it is in air"),
                on(
                        "rotating-stage",
                        "profile off the axis",
                        "profile-off-axis",
                        turning.replace("\"xMm\": 15", "\"xMm\": 16.2"),
                        "1.2 mm off the rotation axis"),
                on(
                        "rotating-stage",
                        "profile without rotation",
                        "profile-unrotated",
                        turning.replace("\"cycles\": 20", "\"cycles\": 20, \"rotation\": false"),
                        "without rotation"),
                bad(
                        "profile on a bar",
                        "profile-unrotated",
                        good("", "\"etchSteps\": [ { \"cycles\": 5 } ]", ""),
                        "the holder does not rotate"));
    }

    private static List<Finding> check(Bad plan) {
        return PlanCheck.check(Plans.plan(plan.body()), Optional.of(HolderTemplates.shipped(plan.holder())));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void firesItsOwnFindingAndNoOther(Bad plan) {
        List<Finding> findings = check(plan);
        assertThat(findings).extracting(Finding::rule).containsExactly(plan.rule());
        assertThat(findings.get(0).message()).contains(plan.said());
    }

    @Test
    void thereAreFortyAndMoreAndTheyCoverAllButThreeRules() {
        assertThat(plans().count()).isGreaterThanOrEqualTo(40);
        Set<String> rules = new TreeSet<>();
        for (PlanRule rule : PlanRule.values()) rules.add(rule.id());
        plans().forEach(plan -> rules.remove(plan.rule()));
        // two need an outline that is not known, and stand in PlanCheckTest; the review stands in CautionsTest
        assertThat(rules).containsExactly("geometry-unchecked", "local-risk-review", "spot-off-holder");
    }

    @Test
    void thePlanTheyComeFromFiresNothing() {
        assertThat(Plans.check(good("", "", ""))).isEmpty();
        assertThat(PlanCheck.check(Plans.plan(good("", "", "")), Optional.of(HolderTemplates.shipped("stub-end-bar"))))
                .isEmpty();
    }
}
