package spotline.run.fitmodel;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import spotline.core.Decimal;
import spotline.core.Problem;
import spotline.reference.InelasticCrossSection;
import spotline.reference.ReferenceData;

/** A background as the fields of a fit model or a treatment: kind, end points, and what belongs to the kind. */
public final class BackgroundJson {
    private static final int USUAL_ENDPOINTS = 5;
    private static final int USUAL_DEGREE = 2;
    private static final String UNIVERSAL = "universal (theory)";
    private static final String USUAL_CLASS = "polymers";

    private BackgroundJson() {}

    /**
     * @param json valid against its schema
     * @param field JSON pointer of the object, for problems
     * @param problems receives what is wrong beyond the schema
     * @return empty where something is
     */
    public static Optional<Background> read(JsonNode json, String field, List<Problem> problems) {
        int m = json.path("endpointChannels").asInt(USUAL_ENDPOINTS);
        EndpointPlacement placement = json.path("endpointPlacement").asText().equals("outside")
                ? EndpointPlacement.OUTSIDE
                : EndpointPlacement.INSIDE;
        OptionalDouble b =
                json.path("b").isNumber() ? OptionalDouble.of(json.path("b").doubleValue()) : OptionalDouble.empty();
        String kind = json.path("kind").asText();
        List<Problem> found = new ArrayList<>();
        if (kind.equals("polynomial")) {
            found.addAll(Polynomial.check(json.path("degree").asInt(USUAL_DEGREE), m));
        } else {
            found.addAll(Linear.check(m));
        }
        Optional<InelasticCrossSection> material = Optional.empty();
        if (kind.startsWith("tougaard")) {
            String usual = kind.equals("tougaard-two") ? UNIVERSAL : USUAL_CLASS;
            material = material(json.path("material").asText(usual), kind, found);
        }
        for (Problem p : found) problems.add(new Problem(field + "/" + p.field(), p.found(), p.expected()));
        if (!found.isEmpty()) return Optional.empty();
        return Optional.of(
                switch (kind) {
                    case "constant" -> new Constant(m, placement);
                    case "linear" -> new Linear(m, placement);
                    case "polynomial" -> new Polynomial(json.path("degree").asInt(USUAL_DEGREE), m, placement);
                    case "shirley" -> {
                        Shirley usual = Shirley.of(m);
                        yield new Shirley(m, placement, usual.relativeTolerance(), usual.maxIterations());
                    }
                    case "shirley-data-capped" -> {
                        DataCappedShirley usual = DataCappedShirley.of(m);
                        yield new DataCappedShirley(m, placement, usual.relativeTolerance(), usual.maxIterations());
                    }
                    case "tougaard-two" ->
                        new TougaardTwo(m, placement, b, material.orElseThrow().c());
                    case "tougaard-three" ->
                        new TougaardThree(
                                m,
                                placement,
                                b,
                                material.orElseThrow().c(),
                                material.orElseThrow().d().orElseThrow(),
                                0);
                    default -> throw new IllegalArgumentException("no background of kind \"" + kind + "\"");
                });
    }

    private static Optional<InelasticCrossSection> material(String name, String kind, List<Problem> problems) {
        Optional<InelasticCrossSection> found = ReferenceData.shipped().inelasticCrossSection(name);
        boolean three = kind.equals("tougaard-three");
        if (found.isPresent() && found.get().d().isPresent() == three) return found;
        List<String> names = ReferenceData.shipped().inelasticCrossSections().stream()
                .filter(c -> c.d().isPresent() == three)
                .map(InelasticCrossSection::name)
                .toList();
        problems.add(new Problem("material", "\"" + name + "\"", "one of " + String.join(", ", names)));
        return Optional.empty();
    }

    /** The fields that {@link #read} makes the same background of. */
    public static void write(Background background, ObjectNode to) {
        to.put("kind", kind(background));
        to.put("endpointChannels", background.endpointChannels());
        if (background.placement() == EndpointPlacement.OUTSIDE) to.put("endpointPlacement", "outside");
        if (background instanceof Polynomial polynomial) to.put("degree", polynomial.degree());
        if (background instanceof TougaardTwo two) {
            loss(to, two.b(), two.c(), OptionalDouble.empty());
        } else if (background instanceof TougaardThree three) {
            loss(to, three.b(), three.c(), OptionalDouble.of(three.d()));
        }
    }

    private static String kind(Background background) {
        if (background instanceof Constant) return "constant";
        if (background instanceof Linear) return "linear";
        if (background instanceof Polynomial) return "polynomial";
        if (background instanceof Shirley) return "shirley";
        if (background instanceof DataCappedShirley) return "shirley-data-capped";
        return background instanceof TougaardTwo ? "tougaard-two" : "tougaard-three";
    }

    private static void loss(ObjectNode to, OptionalDouble b, double c, OptionalDouble d) {
        ReferenceData.shipped().inelasticCrossSections().stream()
                .filter(k -> k.c() == c && k.d().equals(d))
                .findFirst()
                .ifPresent(k -> to.put("material", k.name()));
        if (b.isPresent()) to.put("b", new BigDecimal(Decimal.text(b.getAsDouble())));
    }
}
