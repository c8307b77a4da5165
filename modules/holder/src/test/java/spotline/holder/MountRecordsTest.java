package spotline.holder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.ReadException;
import spotline.holder.check.PlanCheckSettings;

/** What a holder-run file can say of mounts, clips, powders, transfers, etch steps and the stage. */
class MountRecordsTest {
    private static HolderRunFile full() throws Exception {
        try (InputStream in = MountRecordsTest.class.getResourceAsStream("full-holder-run.json")) {
            return HolderRunReader.read("full.json", Objects.requireNonNull(in).readAllBytes());
        }
    }

    @Test
    void readsEveryFieldOfASpecimen() throws Exception {
        Specimen specimen = full().specimens().get(0);
        Outline outline = specimen.outline().orElseThrow();
        assertThat(outline).isInstanceOf(Outline.Polygon.class);
        assertThat(outline.width()).isEqualTo(6);
        assertThat(outline.height()).isEqualTo(6);
        Sample sample = specimen.sample().orElseThrow();
        assertThat(sample.surface()).contains("the cut face");
        assertThat(sample.sensitivities()).containsExactly(Sensitivity.AIR, Sensitivity.X_RAYS);
        assertThat(sample.airSensitive()).isTrue();
        assertThat(sample.stability())
                .isEqualTo(new StabilityLimits(
                        OptionalDouble.of(-40),
                        OptionalDouble.of(180),
                        Optional.of("turns grey above, says the owner")));
        assertThat(sample.resistivityOhmCm()).hasValue(2e3);
        assertThat(sample.filmThicknessUm()).hasValue(0.4);
        Mount mount = specimen.mount();
        assertThat(mount.strapped()).isTrue();
        assertThat(mount.maxTemperatureC()).hasValue(150);
        assertThat(mount.seat()).contains("end");
        assertThat(mount.tapePatch()).contains(new Outline.Ellipse(5, 4));
        assertThat(mount.clips())
                .containsExactly(
                        new Clip(
                                Optional.of("left clip"),
                                Optional.of("brass"),
                                Optional.of(new PointMm(66.5, 9)),
                                Optional.of(new Outline.Rectangle(1, 4)),
                                -10),
                        new Clip(Optional.empty(), Optional.of("copper"), Optional.empty(), Optional.empty(), 0));
        assertThat(mount.clips()).extracting(Clip::label).containsExactly("left clip", "copper clip");
        assertThat(specimen.transfer())
                .contains(new Transfer(
                        Optional.of("small vessel"),
                        Optional.of("argon"),
                        OptionalDouble.of(0.4),
                        OptionalDouble.of(0.6),
                        OptionalDouble.of(0),
                        OptionalDouble.of(2e-3),
                        Optional.of("c")));
    }

    @Test
    void readsEveryFieldOfASpot() throws Exception {
        HolderPlan plan = HolderPlan.of(full());
        Spot first = plan.spot("1").orElseThrow();
        assertThat(first.azimuthDeg()).hasValue(45);
        assertThat(first.analysisArea()).contains(new AreaMm(0.2, 0.1));
        assertThat(first.positionUncertaintyMm()).hasValue(0.02);
        assertThat(first.sputtered()).isTrue();
        assertThat(first.etchCycles()).isEqualTo(13);
        EtchStep step = first.etchSteps().get(0);
        assertThat(step.projectile()).contains("Ar cluster");
        assertThat(step.energyEv()).hasValue(5000);
        assertThat(step.seconds()).hasValue(20);
        assertThat(step.raster()).contains(new AreaMm(2, 1.5));
        assertThat(step.incidenceDeg()).hasValue(45);
        assertThat(step.rotation()).contains(true);
        Spot blank = plan.spot("b").orElseThrow();
        assertThat(blank.purpose()).isEqualTo(SpotPurpose.BLANK);
        assertThat(blank.mount().powder())
                .contains(new PowderRecord(PowderRecord.Quantity.COVERING, Optional.of(true), OptionalDouble.of(0.05)));
        Spot control = plan.spot("c").orElseThrow();
        assertThat(control.specimen().transfer().orElseThrow().vessel()).contains("small vessel");
        assertThat(plan.analysisArea(control)).contains(new AreaMm(0.4, 0.4));
    }

    @Test
    void readsTheStageTheReviewAndTheThresholds() throws Exception {
        HolderRunFile file = full();
        assertThat(file.stage())
                .isEqualTo(new StagePlan(
                        List.of(new StagePlan.SetPoint(
                                Optional.of("dry"), 80, OptionalDouble.of(5), OptionalDouble.of(30))),
                        OptionalDouble.of(-20),
                        OptionalDouble.of(1)));
        assertThat(file.localRiskReview().orElseThrow().reference()).contains("folder 12");
        assertThat(PlanCheckSettings.of(file.planCheck()))
                .isEqualTo(new PlanCheckSettings(
                        new PlanCheckSettings.Placement(0.2, 0.3, 0.1, 0.5),
                        new PlanCheckSettings.Clearance(0.8, 0.1, 0.2, 2),
                        new PlanCheckSettings.Electrical(2e-8, 0.5, 0.2, 1.5),
                        new PlanCheckSettings.Handling(8, 70, 30, 90, 22, 0.2)));
        file.planCheck().removeAll();
        assertThat(file.planCheck()).isNotEmpty();
    }

    @Test
    void oneThresholdLeavesTheOthersAtTheirDefaults() throws Exception {
        String text =
                "{ \"format\": \"spotline-holder-run/1\", \"planCheck\": { \"clearance\": { \"stopMm\": 0.7 } } }";
        PlanCheckSettings settings = PlanCheckSettings.of(
                HolderRunReader.read("h.json", text.getBytes(UTF_8)).planCheck());
        assertThat(settings)
                .isEqualTo(new PlanCheckSettings(
                        PlanCheckSettings.Placement.DEFAULT,
                        new PlanCheckSettings.Clearance(0.7, 0.7, 0.1, 3),
                        PlanCheckSettings.Electrical.DEFAULT,
                        PlanCheckSettings.Handling.DEFAULT));
    }

    @Test
    void spotsOfOneSampleAreReplicatesAndABlankIsNone() throws Exception {
        String spot = "{ \"id\": \"%s\", \"purpose\": \"%s\", \"sample\": { \"id\": \"%s\", \"name\": \"%s\" } }";
        String text = "{ \"format\": \"spotline-holder-run/1\", \"spots\": [ "
                + spot.formatted("1", "sample", "x", "one") + "," + spot.formatted("2", "sample", "y", "one") + ","
                + spot.formatted("3", "sample", "x", "other words") + "," + spot.formatted("4", "blank", "x", "one")
                + ", { \"id\": \"5\" } ] }";
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("h.json", text.getBytes(UTF_8)));
        assertThat(plan.replicates(plan.spots().get(0))).extracting(Spot::id).containsExactly("1", "3");
        assertThat(plan.replicates(plan.spots().get(1))).extracting(Spot::id).containsExactly("2");
        assertThat(plan.replicates(plan.spots().get(3))).extracting(Spot::id).containsExactly("4");
        assertThat(plan.replicates(plan.spots().get(4))).extracting(Spot::id).containsExactly("5");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "outlineMm": {"shape": "polygon"}                    | /outlineMm: no field "cornersMm", expected "cornersMm" to be given here
            "outlineMm": {"width": 3}                            | /outlineMm: no field "height", expected "height" to be given here
            "outlineMm": {"shape": "disc", "width": 3, "height": 3} | /outlineMm/shape: "shape": "disc", expected one of rectangle, ellipse, polygon
            "outlineMm": {"shape": "polygon", "cornersMm": [{"x": 0, "y": 0}, {"x": 1, "y": 1}]} | /outlineMm/cornersMm: "cornersMm": [ ... ], expected a list of at least 3 entries
            "outlineMm": {"shape": "polygon", "cornersMm": [{"x": 0, "y": 0}, {"x": 2, "y": 2}, {"x": 2, "y": 0}, {"x": 0, "y": 2}]} | /outlineMm/cornersMm: corners whose sides cross or touch, expected corners in order around the area
            "outlineMm": {"shape": "polygon", "cornersMm": [{"x": 0, "y": 0}, {"x": 1, "y": 0}, {"x": 2, "y": 0}]} | /outlineMm/cornersMm: corners whose sides cross or touch, expected corners in order around the area
            "outlineMm": {"shape": "polygon", "width": 3, "cornersMm": [{"x": 0, "y": 0}, {"x": 2, "y": 2}, {"x": 2, "y": 0}]} | /outlineMm/width: "width" of a polygon, expected a polygon by its corners alone
            "outlineMm": {"width": 3, "height": 3, "cornersMm": [{"x": 0, "y": 0}, {"x": 2, "y": 2}, {"x": 2, "y": 0}]} | /outlineMm/cornersMm: corners of what is no polygon, expected "shape": "polygon" beside them
            "mount": {"clips": [{"outlineMm": {"width": 0, "height": 1}}]} | /mount/clips/0/outlineMm/width: "width": 0, expected a number above 0
            "mount": {"tapePatchMm": {"shape": "ellipse", "width": 1}} | /mount/tapePatchMm: no field "height", expected "height" to be given here
            "mount": {"powder": {"quantity": "lots"}}            | /mount/powder/quantity: "quantity": "lots", expected one of covering, sparse, heaped
            "mount": {"powder": {"tapeShowing": 12}}             | /mount/powder/tapeShowing: "tapeShowing": 12, expected a number of 1 or less
            "mount": {"strap": "yes"}                            | /mount/strap: "strap": "yes", expected true or false
            "sample": {"name": "x", "sensitivities": ["water"]}  | /sample/sensitivities/0: "water" in "sensitivities", expected one of air, moisture, heat, light, vacuum, x-rays, electrons, ions
            "sample": {"name": "x", "stability": {"minC": 9, "maxC": 8}} | /sample/stability: "minC": 9 above "maxC": 8, expected minC at or below maxC
            "sample": {"name": "x", "stability": {"maxC": -300}} | /sample/stability/maxC: "maxC": -300, expected a number of -273.15 or more
            "transfer": {"controlSpot": "9"}                     | /transfer/controlSpot: "controlSpot": "9", which is not declared, expected the id of a declared spot
            "transfer": {"secondsInAir": -1}                     | /transfer/secondsInAir: "secondsInAir": -1, expected a number of 0 or more
            """)
    void saysPlainlyWhatIsWrongInASpecimen(String fields, String sentence) {
        assertThat(fault("\"specimens\": [ { \"id\": \"A\", " + fields + " } ]"))
                .hasMessage("h.json:/specimens/0" + sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "stage": {"setPoints": [{}]}                         | h.json:/stage/setPoints/0: no field "temperatureC", expected "temperatureC" to be given here
            "stage": {"bias": 3}                                 | h.json:/stage/bias: unknown field "bias", expected one of setPoints, biasV, turnsPerMinute; did you mean "biasV"?
            "planCheck": {"clearance": {"cautionMm": 0.1, "stopMm": 0.2}} | h.json:/planCheck/clearance: "stopMm": 0.2 above "cautionMm": 0.1, expected stopMm at or below cautionMm
            "planCheck": {"electrical": {"sampleCurrentA": 0}}   | h.json:/planCheck/electrical/sampleCurrentA: "sampleCurrentA": 0, expected a number above 0
            "spots": [{"id": "1", "purpose": "look"}]            | h.json:/spots/0/purpose: "purpose": "look", expected one of sample, blank, control
            "spots": [{"id": "1", "etchSteps": [{"cycles": 0}]}] | h.json:/spots/0/etchSteps/0/cycles: "cycles": 0, expected a number of 1 or more
            "spots": [{"id": "1", "specimen": "A", "transfer": {}}], "specimens": [{"id": "A"}] | h.json:/spots/0/transfer: "transfer" beside "specimen": "A", expected either a specimen or the spot's own sample and mount
            "spots": [{"id": "1", "mount": {"outlineMm": {"shape": "polygon"}}}] | h.json:/spots/0/mount/outlineMm: no field "cornersMm", expected "cornersMm" to be given here
            "localRiskReview": {"by": "x", "reference": ""}      | h.json:/localRiskReview/reference: "reference": "", expected some text
            """)
    void saysPlainlyWhatIsWrongInTheRest(String body, String sentence) {
        assertThat(fault(body)).hasMessage(sentence);
    }

    private static ReadException fault(String body) {
        String text = "{ \"format\": \"spotline-holder-run/1\", " + body + " }";
        ReadException fault =
                catchThrowableOfType(ReadException.class, () -> HolderRunReader.read("h.json", text.getBytes(UTF_8)));
        assertThat(Objects.requireNonNull(fault).others()).isEmpty();
        return fault;
    }
}
