package spotline.run.fitmodel;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.background.Background;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.Satellite;
import spotline.core.Place;
import spotline.core.Problem;
import spotline.core.ReadException;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Reads a fit-model file.
 *
 * <p>Shape: one JSON file in, its model out. Units: binding energies as measured, eV; areas in counts eV. Errors:
 * {@link ReadException} that carries every fault at once, each with its JSON pointer: what the schema does not allow, or
 * else names given twice, unknown and cyclic ties, values outside bounds, doublets and sources that no table has, and
 * fewer channels than free parameters. Source: the schema {@value #SCHEMA}.
 */
public final class FitModelFile {
    /** The one format written, and the newest read. */
    public static final String FORMAT = "spotline-fit-model/1";

    /** The published schema on the class path. */
    public static final String SCHEMA = "/spotline/schema/fit-model-1.schema.json";

    private static final CheckedJson JSON = CheckedJson.of("spotline-fit-model", 1, SCHEMA, JsonLimits.DEFAULT);

    private FitModelFile() {}

    /** @param scan what the model is for: its channels and photon energy decide some of what can be wrong */
    public static FitModel read(Path file, BindingScan scan, ReferenceData reference) throws ReadException {
        return bind(file.toString(), JSON.read(file), Optional.of(scan), reference);
    }

    /** @param name what to call the input in errors */
    public static FitModel read(String name, byte[] bytes, Optional<BindingScan> scan, ReferenceData reference)
            throws ReadException {
        return bind(name, JSON.read(name, bytes), scan, reference);
    }

    private static FitModel bind(String name, ObjectNode root, Optional<BindingScan> scan, ReferenceData reference)
            throws ReadException {
        List<Problem> problems = new ArrayList<>();
        Optional<Window> window = window(root.path("window"), problems);
        JsonNode ground = root.path("background");
        Optional<BackgroundModel> background = BackgroundJson.read(ground, "/background", problems)
                .map(b -> new BackgroundModel(b, ground.path("fitted").asBoolean(false)));
        background.ifPresent(b -> fittedOutside(b, problems));
        List<ComponentModel> components = new ArrayList<>();
        boolean complete = true;
        for (int c = 0; c < root.path("components").size(); c++) {
            Optional<ComponentModel> component =
                    ComponentJson.read(root.path("components").path(c), "/components/" + c, problems);
            component.ifPresent(components::add);
            complete &= component.isPresent();
        }
        List<Satellite> satellites = satellites(root.path("xraySatellites"), reference, problems);
        // With a component missing, ties to it and the numbers of the others would be told wrongly.
        if (complete) {
            problems.addAll(FitModel.check(window, components));
            if (window.isPresent() && background.isPresent() && scan.isPresent()) {
                problems.addAll(FitModel.check(window.get(), background.get(), components, scan.get(), reference));
            }
        }
        if (!problems.isEmpty()) {
            throw ReadException.all(problems.stream()
                    .map(p -> new ReadException(Place.pointer(name, p.field()), p.found(), p.expected()))
                    .toList());
        }
        return new FitModel(window.orElseThrow(), background.orElseThrow(), components, satellites);
    }

    private static Optional<Window> window(JsonNode json, List<Problem> problems) {
        double low = json.path("lowEv").asDouble();
        double high = json.path("highEv").asDouble();
        if (low < high) return Optional.of(new Window(low, high));
        problems.add(new Problem(
                "/window",
                "lowEv " + json.path("lowEv").asText() + " and highEv "
                        + json.path("highEv").asText(),
                "lowEv below highEv"));
        return Optional.empty();
    }

    private static void fittedOutside(BackgroundModel model, List<Problem> problems) {
        Background background = model.background();
        if (model.fitted() && background.placement() == spotline.analysis.background.EndpointPlacement.OUTSIDE) {
            problems.add(new Problem(
                    "/background/endpointPlacement",
                    "outside for a background that is fitted along",
                    "inside, or \"fitted\": false"));
        }
    }

    private static List<Satellite> satellites(JsonNode json, ReferenceData reference, List<Problem> problems) {
        List<Satellite> satellites = new ArrayList<>();
        if (json.isTextual()) {
            Optional<XraySource> source = reference.source(json.asText(), false);
            source.ifPresent(s -> satellites.addAll(Satellite.of(s, reference)));
            if (satellites.isEmpty()) {
                problems.add(new Problem(
                        "/xraySatellites",
                        "\"" + json.asText() + "\", whose satellites are not tabulated",
                        "an unmonochromated source with satellites, such as Mg Ka or Al Ka, or a list"));
            }
        }
        for (JsonNode one : json) {
            satellites.add(new Satellite(
                    one.path("displacementEv").asDouble(),
                    one.path("relativeArea").asDouble()));
        }
        return satellites;
    }
}
