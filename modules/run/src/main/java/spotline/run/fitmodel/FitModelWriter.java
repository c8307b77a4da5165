package spotline.run.fitmodel;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.Satellite;

/**
 * A fit model as the file that {@link FitModelFile} reads: how a model that was used gets into a record.
 *
 * <p>Errors: {@link IllegalArgumentException} for a component in the shape of a template, whose samples are not kept.
 */
public final class FitModelWriter {
    private FitModelWriter() {}

    public static ObjectNode json(FitModel model) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("format", FitModelFile.FORMAT);
        ObjectNode window = root.putObject("window");
        JsonNumber.put(window, "lowEv", model.window().lowEv());
        JsonNumber.put(window, "highEv", model.window().highEv());
        ObjectNode background = root.putObject("background");
        BackgroundJson.write(model.background().background(), background);
        background.put("fitted", model.background().fitted());
        ArrayNode components = root.putArray("components");
        for (ComponentModel component : model.components()) ComponentJson.write(component, components.addObject());
        if (!model.satellites().isEmpty()) {
            ArrayNode satellites = root.putArray("xraySatellites");
            for (Satellite s : model.satellites()) {
                ObjectNode node = satellites.addObject();
                JsonNumber.put(node, "displacementEv", s.displacementEv());
                JsonNumber.put(node, "relativeArea", s.relativeArea());
            }
        }
        return root;
    }
}
