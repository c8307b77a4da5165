package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.OptionalDouble;
import spotline.analysis.background.Background;
import spotline.analysis.background.Constant;
import spotline.analysis.background.DataCappedShirley;
import spotline.analysis.background.EndpointPlacement;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Polynomial;
import spotline.analysis.background.Shirley;
import spotline.analysis.background.TougaardThree;
import spotline.analysis.background.TougaardTwo;
import spotline.reference.InelasticCrossSection;
import spotline.reference.ReferenceData;

/** A background by the words of a treatment. */
final class BackgroundBinding {
    private static final String UNIVERSAL = "universal (theory)";

    private BackgroundBinding() {}

    /** Errors: {@link IllegalArgumentException} for a setting out of its range or a material without a cross section. */
    static Background of(JsonNode json) {
        int m = json.path("endpointChannels").asInt(5);
        EndpointPlacement placement =
                json.path("endpointPlacement").asText("inside").equals("outside")
                        ? EndpointPlacement.OUTSIDE
                        : EndpointPlacement.INSIDE;
        String kind = json.path("kind").asText();
        return switch (kind) {
            case "constant" -> new Constant(m, placement);
            case "linear" -> new Linear(m, placement);
            case "polynomial" -> new Polynomial(json.path("degree").asInt(2), m, placement);
            case "shirley" -> shirley(m, placement);
            case "shirley-data-capped" -> capped(m, placement);
            case "tougaard-two" -> {
                InelasticCrossSection k = crossSection(json.path("material").asText(UNIVERSAL));
                yield new TougaardTwo(m, placement, b(json), k.c());
            }
            case "tougaard-three" -> {
                InelasticCrossSection k = crossSection(json.path("material").asText("polymers"));
                yield new TougaardThree(m, placement, b(json), k.c(), k.d().orElseThrow(() -> twoParameters(k)), 0);
            }
            default -> throw new IllegalArgumentException("no background of kind \"" + kind + "\"");
        };
    }

    private static Shirley shirley(int m, EndpointPlacement placement) {
        Shirley usual = Shirley.of(m);
        return new Shirley(m, placement, usual.relativeTolerance(), usual.maxIterations());
    }

    private static DataCappedShirley capped(int m, EndpointPlacement placement) {
        DataCappedShirley usual = DataCappedShirley.of(m);
        return new DataCappedShirley(m, placement, usual.relativeTolerance(), usual.maxIterations());
    }

    private static InelasticCrossSection crossSection(String material) {
        return ReferenceData.shipped()
                .inelasticCrossSection(material)
                .orElseThrow(() ->
                        new IllegalArgumentException("no inelastic cross section of \"" + material + "\" is known"));
    }

    private static OptionalDouble b(JsonNode json) {
        return json.path("b").isNumber() ? OptionalDouble.of(json.path("b").doubleValue()) : OptionalDouble.empty();
    }

    private static IllegalArgumentException twoParameters(InelasticCrossSection k) {
        return new IllegalArgumentException("the cross section of " + k.name() + " has two parameters");
    }
}
