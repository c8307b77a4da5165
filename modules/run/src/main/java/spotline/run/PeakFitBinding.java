package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.peakfit.FitModel;
import spotline.core.ReadException;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.run.fitmodel.FitModelFile;

/** Turns the part of a merged treatment that is about peak fits into settings. */
final class PeakFitBinding {
    private PeakFitBinding() {}

    /** Errors: {@link IllegalArgumentException} for a name that is no line, and for a model with every fault of it. */
    static PeakFitSettings bind(JsonNode json) {
        Set<Line> without = new TreeSet<>();
        json.path("without").forEach(n -> without.add(line(n.asText())));
        Map<Line, FitModel> models = new LinkedHashMap<>();
        json.path("models").properties().forEach(e -> models.put(line(e.getKey()), model(e.getKey(), e.getValue())));
        return new PeakFitSettings(json.path("defaultModels").asBoolean(true), without, models);
    }

    private static Line line(String name) {
        return Line.find(name)
                .map(Line::whole)
                .orElseThrow(() -> new IllegalArgumentException(
                        "\"" + name + "\" among its peak fits, which names no line, such as \"Ti 2p\""));
    }

    private static FitModel model(String line, JsonNode json) {
        try {
            byte[] bytes = json.toString().getBytes(StandardCharsets.UTF_8);
            return FitModelFile.read("fit model of " + line, bytes, Optional.empty(), ReferenceData.shipped());
        } catch (ReadException e) {
            throw new IllegalArgumentException("a wrong " + e.getMessage(), e);
        }
    }
}
