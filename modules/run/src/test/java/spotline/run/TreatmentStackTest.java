package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.reference.ReferenceData;

class TreatmentStackTest {
    private static HolderRunFile file(String holder, String family, String spot) throws ReadException {
        String json = """
                {"format": "spotline-holder-run/1", "treatment": %s, "families": {"polymer/film": %s},
                 "spots": [{"id": "1", "sample": {"name": "a", "family": "polymer/film"}, "treatment": %s},
                           {"id": "2", "sample": {"name": "b"}}]}
                """.formatted(holder, family, spot);
        return HolderRunReader.read("run.json", json.getBytes(StandardCharsets.UTF_8));
    }

    private static String exponent(double value) {
        return "{\"quantify\": {\"meanFreePathExponent\": " + value + "}}";
    }

    private static double exponent(HolderRunFile file, Optional<ObjectNode> commandLine, int spot) throws Exception {
        HolderPlan plan = HolderPlan.of(file);
        return new TreatmentStack(file, "run.json", commandLine)
                .of(plan.spots().get(spot), spot)
                .json()
                .at("/quantify/meanFreePathExponent")
                .doubleValue();
    }

    private static Optional<ObjectNode> patch(double value) throws Exception {
        return Optional.of((ObjectNode) new ObjectMapper().readTree(exponent(value)));
    }

    @Test
    void theNearestPatchWins() throws Exception {
        HolderRunFile all = file(exponent(0.71), exponent(0.72), exponent(0.73));
        assertThat(exponent(all, patch(0.70), 0)).isEqualTo(0.73);
        assertThat(exponent(all, patch(0.70), 1)).isEqualTo(0.71);
        assertThat(exponent(file(exponent(0.71), exponent(0.72), "{}"), patch(0.70), 0))
                .isEqualTo(0.72);
        assertThat(exponent(file("{}", "{}", "{}"), patch(0.70), 0)).isEqualTo(0.70);
        assertThat(exponent(file("{}", "{}", "{}"), Optional.empty(), 0)).isEqualTo(0.75);
    }

    @Test
    void aPatchChangesOnlyWhatItNames() throws Exception {
        HolderRunFile file = file("{}", "{}", "{\"narrow\": {\"background\": {\"kind\": \"linear\"}}}");
        Treatment treatment = new TreatmentStack(file, "run.json", Optional.empty())
                .of(HolderPlan.of(file).spots().get(0), 0);
        assertThat(treatment.narrow().background().describe())
                .contains("linear")
                .contains("5");
        assertThat(treatment.survey()).isEqualTo(DefaultTreatment.treatment().survey());
    }

    @Test
    void aSpotHasItsOwnAngleAndMaterial() throws Exception {
        HolderRunFile file = file("{}", "{}", """
                {"quantify": {"angleInPlaceOfRecordDeg": 90, "meanFreePath": {"kind": "material", "material": {
                 "name": "rutile", "densityGPerCm3": 4.23, "molarMassGPerMol": 79.87, "valenceElectrons": 16, "bandGapEv": 3}}}}
                """);
        Treatment own = new TreatmentStack(file, "run.json", Optional.empty())
                .of(HolderPlan.of(file).spots().get(0), 0);
        assertThat(own.quantify().angleDeg()).hasValue(90);
        assertThat(own.factors().meanFreePath().describe()).isEqualTo("TPP-2M of rutile");
        assertThat(DefaultTreatment.treatment().quantify().angleDeg()).isEmpty();
        SpotInput made = SimulatedHolder.draw(ReferenceData.shipped(), 3, new SimulatedHolder.Spread(0, false))
                .input();
        SpotTreatment treatment = new SpotTreatment(ReferenceData.shipped());
        SpotInput stated =
                new SpotInput(made.spot(), made.spectra(), made.sourceAnalyserAngleDeg(), true, own, made.findings());
        SpotInput recorded = new SpotInput(
                made.spot(), made.spectra(), OptionalDouble.of(90), true, withoutAngle(own), made.findings());
        assertThat(treatment.treat(stated, Work.UNWATCHED).composition())
                .isEqualTo(treatment.treat(recorded, Work.UNWATCHED).composition())
                .isNotEqualTo(treatment.treat(made, Work.UNWATCHED).composition());
    }

    private static Treatment withoutAngle(Treatment treatment) {
        ObjectNode json = treatment.json().deepCopy();
        ((ObjectNode) json.path("quantify")).remove("angleInPlaceOfRecordDeg");
        return TreatmentBinding.bind(json);
    }

    @Test
    void everyFaultHasItsPointer() throws Exception {
        HolderRunFile file = file(
                "{\"quantify\": {\"exponent\": 1}}",
                "{\"narrow\": {\"background\": {\"kind\": \"best\"}}}",
                "{\"survey\": {\"searchFwhmEv\": \"wide\"}}");
        ReadException fault =
                catchThrowableOfType(ReadException.class, () -> new TreatmentStack(file, "run.json", Optional.empty()));
        assertThat(fault.others()).hasSize(2);
        assertThat(fault.place().pointer()).isEqualTo("/treatment/quantify/exponent");
        assertThat(fault.others().get(0).place().pointer()).isEqualTo("/families/polymer~1film/narrow/background/kind");
        assertThat(fault.others().get(1).place().pointer()).isEqualTo("/spots/0/treatment/survey/searchFwhmEv");
    }

    @Test
    void aSettingOutOfItsRangeIsRefusedAtItsSpot() throws Exception {
        HolderRunFile file = file("{}", "{}", exponent(9));
        TreatmentStack stack = new TreatmentStack(file, "run.json", Optional.empty());
        assertThatThrownBy(() -> stack.of(HolderPlan.of(file).spots().get(0), 0))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("/spots/0")
                .hasMessageContaining("meanFreePathExponent");
    }

    @Test
    void removingASettingIsRefusedNotGuessed() throws Exception {
        HolderRunFile file = file("{}", "{}", "{\"quantify\": {\"meanFreePathExponent\": null}}");
        assertThatThrownBy(() -> new TreatmentStack(file, "run.json", Optional.empty())
                        .of(HolderPlan.of(file).spots().get(0), 0))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("meanFreePathExponent");
    }

    @Test
    void aTreatmentFileNamesItsFormat(@TempDir Path folder) throws Exception {
        Path good = folder.resolve("good.json");
        Files.writeString(good, "{\"format\": \"spotline-treatment/1\", \"charge\": {\"method\": \"none\"}}");
        assertThat(TreatmentStack.read(good).at("/charge/method").asText()).isEqualTo("none");
        Path newer = folder.resolve("newer.json");
        Files.writeString(newer, "{\"format\": \"spotline-treatment/2\"}");
        assertThatThrownBy(() -> TreatmentStack.read(newer)).isInstanceOf(ReadException.class);
    }

    @Test
    void theDefaultsObeyTheirOwnSchema(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("defaults.json");
        Files.writeString(file, DefaultTreatment.json().toString());
        assertThat(TreatmentStack.read(file)).isEqualTo(DefaultTreatment.json());
    }
}
