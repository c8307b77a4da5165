package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes the records out of a JSON object that the schema and the cross-checks have accepted. */
final class HolderRunBinding {
    private HolderRunBinding() {}

    static HolderRunFile bind(ObjectNode root) {
        Fields file = new Fields(root);
        return new HolderRunFile(
                file.mustText("format"),
                file.text("title"),
                file.date("date"),
                file.text("operator"),
                file.must("holder").text("template"),
                instrument(file),
                SpecimenBinding.specimens(file),
                SpotBinding.spots(file),
                file.patch("treatment"),
                families(file.must("families")),
                silence(file),
                review(file),
                stage(file),
                file.patch("planCheck"));
    }

    private static Map<String, ObjectNode> families(Fields families) {
        Map<String, ObjectNode> patches = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> family : families.node().properties()) {
            patches.put(family.getKey(), families.patch(family.getKey()));
        }
        return patches;
    }

    private static Instrument instrument(Fields file) {
        if (!file.has("instrument")) return Instrument.UNKNOWN;
        Fields fields = file.must("instrument");
        return new Instrument(
                fields.text("name"),
                excitation(fields),
                fields.area("analysisAreaMm"),
                fields.number("positionUncertaintyMm"),
                fields.number("emissionAngleDeg"),
                fields.number("sourceAnalyserAngleDeg"),
                fields.word("chargeNeutraliser", NeutraliserState.UNKNOWN),
                transmission(fields),
                fields.text("energyCalibration"),
                conditions(fields));
    }

    private static MeasuringConditions conditions(Fields instrument) {
        if (!instrument.has("conditions")) return MeasuringConditions.UNKNOWN;
        Fields fields = instrument.must("conditions");
        return new MeasuringConditions(
                fields.number("xRayPowerW"),
                fields.text("analyserMode"),
                fields.text("lens"),
                fields.number("pressureMbar"),
                fields.number("sampleTemperatureC"),
                fields.text("ionGun"),
                fields.text("neutraliser"),
                fields.number("linearToCountsPerSecond"));
    }

    private static Instrument.DeclaredExcitation excitation(Fields instrument) {
        if (!instrument.has("excitation")) return Instrument.DeclaredExcitation.UNKNOWN;
        Fields fields = instrument.must("excitation");
        return new Instrument.DeclaredExcitation(
                fields.word("source", ExcitationSource.UNKNOWN),
                fields.number("photonEnergyEv"),
                fields.truth("monochromated"));
    }

    private static DeclaredTransmission transmission(Fields instrument) {
        if (!instrument.has("transmission")) return new DeclaredTransmission.Unknown();
        Fields form = instrument.must("transmission");
        if (form.node().isTextual()) {
            return form.node().asText().equals("flat")
                    ? new DeclaredTransmission.Flat()
                    : new DeclaredTransmission.AsRecorded();
        }
        OptionalDouble power = form.number("power");
        return power.isPresent()
                ? new DeclaredTransmission.PowerLaw(power.getAsDouble())
                : new DeclaredTransmission.FromFile(form.mustText("file"));
    }

    private static List<Silence> silence(Fields file) {
        List<Silence> silenced = new ArrayList<>();
        for (Fields fields : file.entries("silence")) {
            silenced.add(new Silence(fields.mustText("rule"), fields.text("spot"), fields.mustText("reason")));
        }
        return silenced;
    }

    private static Optional<LocalRiskReview> review(Fields file) {
        if (!file.has("localRiskReview")) return Optional.empty();
        Fields fields = file.must("localRiskReview");
        return Optional.of(new LocalRiskReview(fields.mustText("by"), fields.date("date"), fields.text("reference")));
    }

    private static StagePlan stage(Fields file) {
        if (!file.has("stage")) return StagePlan.NONE;
        Fields fields = file.must("stage");
        List<StagePlan.SetPoint> setPoints = new ArrayList<>();
        for (Fields point : fields.entries("setPoints")) {
            setPoints.add(new StagePlan.SetPoint(
                    point.text("name"),
                    point.mustNumber("temperatureC"),
                    point.number("rampCPerMinute"),
                    point.number("holdMinutes")));
        }
        return new StagePlan(setPoints, fields.number("biasV"), fields.number("turnsPerMinute"));
    }
}
