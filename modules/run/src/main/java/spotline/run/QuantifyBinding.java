package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.Anisotropy;
import spotline.analysis.quantify.DerivedQuantity;
import spotline.analysis.quantify.FactorKind;
import spotline.analysis.quantify.FactorSettings;
import spotline.analysis.quantify.MeanFreePathModel;
import spotline.reference.Line;
import spotline.reference.Material;
import spotline.reference.ReferenceData;
import spotline.run.QuantifySettings.Blank;
import spotline.run.QuantifySettings.Doublets;
import spotline.run.QuantifySettings.FactorChoice;

/** Turns the part of a merged treatment that is about counts and compositions into settings. */
final class QuantifyBinding {
    private QuantifyBinding() {}

    /** Errors: {@link IllegalArgumentException} for a setting out of its range. */
    static QuantifySettings quantify(JsonNode json) {
        return new QuantifySettings(
                choice(json.path("factors")),
                new Doublets(number(json, "widestDoubletEv"), doublets(json.path("doublets"))),
                number(json, "linkRelativeU"),
                number(json, "overlapRelativeU"),
                json.path("claimsConformity").asBoolean(false),
                texts(json.path("derived")).stream().map(DerivedQuantity::parse).toList(),
                texts(json.path("without")),
                blank(json.path("blank")),
                json.path("angleInPlaceOfRecordDeg").isNumber()
                        ? OptionalDouble.of(json.path("angleInPlaceOfRecordDeg").doubleValue())
                        : OptionalDouble.empty());
    }

    static FactorSettings factors(JsonNode json) {
        JsonNode anisotropy = json.path("anisotropy");
        return new FactorSettings(
                json.at("/factors/kind").asText().equals("average-matrix")
                        ? FactorKind.AVERAGE_MATRIX
                        : FactorKind.THEORETICAL,
                meanFreePath(json),
                new Anisotropy(
                        Anisotropy.Kind.of(anisotropy.path("kind").asText())
                                .orElseThrow(() -> new IllegalArgumentException(
                                        "the treatment has no \"anisotropy\" of a known kind")),
                        number(anisotropy, "meanAtomicNumber"),
                        number(anisotropy, "reductionU")),
                number(json, "crossSectionRelativeU"),
                number(json, "meanFreePathExponentU"),
                number(json, "transmissionExponentU"),
                number(json, "sourceAnalyserAngleDeg"));
    }

    static PreparationSettings prepare(JsonNode json) {
        JsonNode dead = json.path("deadTimeSeconds");
        return new PreparationSettings(
                json.path("sumScans").asBoolean(false),
                dead.isNumber() ? OptionalDouble.of(dead.doubleValue()) : OptionalDouble.empty(),
                json.path("removeSpikes").asBoolean(false),
                number(json, "spikeSignificance"));
    }

    private static MeanFreePathModel meanFreePath(JsonNode json) {
        JsonNode model = json.path("meanFreePath");
        return switch (model.path("kind").asText()) {
            case "organic" -> new MeanFreePathModel.Organic();
            case "material" -> new MeanFreePathModel.Tpp2m(material(model.path("material")));
            default -> new MeanFreePathModel.Power(number(json, "meanFreePathExponent"));
        };
    }

    private static Material material(JsonNode json) {
        if (json.isObject()) {
            return new Material(
                    json.path("name").asText("the stated material"),
                    number(json, "densityGPerCm3"),
                    number(json, "molarMassGPerMol"),
                    number(json, "valenceElectrons"),
                    number(json, "bandGapEv"));
        }
        String name = json.asText();
        return ReferenceData.shipped()
                .material(name)
                .orElseThrow(() ->
                        new IllegalArgumentException("no material \"" + name + "\" is known, expected one of "
                                + String.join(
                                        ", ",
                                        ReferenceData.shipped().materials().stream()
                                                .map(Material::name)
                                                .toList())));
    }

    private static FactorChoice choice(JsonNode json) {
        return switch (json.path("kind").asText()) {
            case "file" -> new FactorChoice.FromFile(json.path("file").asText());
            case "reference-spots" -> {
                Map<String, Double> percent = new LinkedHashMap<>();
                json.path("atomicPercent")
                        .properties()
                        .forEach(e -> percent.put(e.getKey(), e.getValue().doubleValue()));
                Optional<Line> relativeTo = json.path("relativeTo").isTextual()
                        ? Optional.of(Line.parse(json.path("relativeTo").asText()))
                        : Optional.empty();
                yield new FactorChoice.FromSpots(
                        texts(json.path("spots")),
                        percent,
                        json.path("relativeU").asDouble(0),
                        relativeTo);
            }
            default -> new FactorChoice.Computed();
        };
    }

    private static Map<Line, Boolean> doublets(JsonNode json) {
        Map<Line, Boolean> whole = new LinkedHashMap<>();
        json.properties()
                .forEach(e -> whole.put(
                        Line.parse(e.getKey()).whole(), e.getValue().asText().equals("whole")));
        return whole;
    }

    private static Optional<Blank> blank(JsonNode json) {
        return json.isObject()
                ? Optional.of(new Blank(
                        json.path("spot").asText(),
                        json.path("element").asText(),
                        json.path("share").asDouble(1)))
                : Optional.empty();
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(text -> texts.add(text.asText()));
        return texts;
    }

    private static double number(JsonNode json, String field) {
        JsonNode value = json.path(field);
        if (!value.isNumber()) throw new IllegalArgumentException("the treatment has no number \"" + field + "\"");
        return value.doubleValue();
    }
}
