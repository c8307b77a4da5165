package spotline.holder;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class HolderPlanTest {
    @Test
    void aSpotThatNamesASpecimenLiesOnIt() throws Exception {
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("good.json", HolderRunReaderTest.good()));

        Spot spot = plan.spot("1").orElseThrow();
        assertThat(spot.specimen()).isEqualTo(plan.specimens().get(0));
        assertThat(spot.specimen().label()).isEqualTo("specimen G1 (aged gasket)");
        assertThat(spot.position()).contains(new PointMm(13, 10));
        assertThat(spot.sampleName()).isEqualTo("aged gasket");
        assertThat(plan.emissionAngleDeg(spot)).hasValue(30);
        assertThat(plan.emissionAngleDeg(plan.spot("2").orElseThrow())).hasValue(0);
        assertThat(plan.spotsOn(plan.specimens().get(0))).containsExactly(spot);
        assertThat(plan.spotsOn(plan.specimens().get(1))).isEmpty();
    }

    @Test
    void theShorthandMakesASpecimenOfItsOwnCentredOnTheSpot() throws Exception {
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("good.json", HolderRunReaderTest.good()));

        Specimen own = plan.spot("2").orElseThrow().specimen();
        assertThat(own.ownSpot()).contains("2");
        assertThat(own.centre()).contains(new PointMm(60, 9));
        assertThat(own.outline()).contains(new Outline.Rectangle(8, 8));
        assertThat(own.thicknessMm()).hasValue(0.2);
        assertThat(own.mount().method()).isEqualTo(MountMethod.COVER_SLIP);
        assertThat(own.label()).isEqualTo("sample salt film (spot 2)");
        Specimen bare = plan.spot("3").orElseThrow().specimen();
        assertThat(bare.sample()).isEmpty();
        assertThat(bare.mount()).isEqualTo(Mount.UNKNOWN);
        assertThat(bare.centre()).isEmpty();
        assertThat(plan.specimens()).extracting(Specimen::id).containsExactly("G1", "R", "spot 2", "spot 3");
    }

    @Test
    void aSpotsOwnSpecimenNeverTakesADeclaredName() throws Exception {
        String text = """
                { "format": "spotline-holder-run/1", "specimens": [ { "id": "spot 1" }, { "thicknessMm": 1 } ],
                  "spots": [ { "id": "1" } ] }""";
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("h.json", text.getBytes(StandardCharsets.UTF_8)));
        assertThat(plan.specimens()).extracting(Specimen::id).containsExactly("spot 1", "number 2", "spot 1'");
        assertThat(plan.spot("1").orElseThrow().specimen().id()).isEqualTo("spot 1'");
    }
}
