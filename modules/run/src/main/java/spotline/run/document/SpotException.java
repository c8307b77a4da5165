package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.Spot;
import spotline.run.TreatmentStack;

/**
 * A setting in which one spot differs from what its sample's family and the holder say.
 *
 * @param setting JSON pointer inside a treatment
 * @param here its value at the spot; empty where the spot's patch takes it away
 * @param elsewhere its value without the spot's own patch; empty where there is none
 */
public record SpotException(String spot, String setting, Optional<JsonNode> here, Optional<JsonNode> elsewhere) {
    /** Of a holder run that was accepted, in the order of its spots, then of the settings. */
    public static List<SpotException> of(HolderRunFile file) {
        List<SpotException> exceptions = new ArrayList<>();
        for (Spot spot : HolderPlan.of(file).spots()) {
            if (spot.treatment().isEmpty()) continue;
            JsonNode elsewhere = TreatmentStack.merged(file, spot, false);
            JsonNode here = TreatmentStack.merged(file, spot, true);
            compare(spot.id(), "", here, elsewhere, exceptions);
        }
        return List.copyOf(exceptions);
    }

    private static void compare(
            String spot, String pointer, JsonNode here, JsonNode elsewhere, List<SpotException> exceptions) {
        if (here.isObject() && elsewhere.isObject()) {
            TreeSet<String> names = new TreeSet<>();
            here.fieldNames().forEachRemaining(names::add);
            elsewhere.fieldNames().forEachRemaining(names::add);
            for (String name : names) {
                compare(
                        spot,
                        pointer + "/" + Places.segment(name),
                        child(here, name),
                        child(elsewhere, name),
                        exceptions);
            }
        } else if (here.isMissingNode() != elsewhere.isMissingNode() || !Trees.same(here, elsewhere)) {
            exceptions.add(new SpotException(spot, pointer, present(here), present(elsewhere)));
        }
    }

    private static JsonNode child(JsonNode node, String name) {
        JsonNode found = node.get(name);
        return found == null ? MissingNode.getInstance() : found;
    }

    private static Optional<JsonNode> present(JsonNode node) {
        return node.isMissingNode() ? Optional.empty() : Optional.of(node);
    }
}
