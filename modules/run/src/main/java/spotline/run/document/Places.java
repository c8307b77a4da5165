package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Changes at pointers whose way may not be there yet. */
final class Places {
    private Places() {}

    static String segment(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }

    /** A value at a pointer: the change stands at the first place that is missing on the way, so that its inverse clears it. */
    static Change set(JsonNode tree, String pointer, JsonNode value) {
        List<String> way = way(pointer);
        JsonNode at = tree;
        for (int i = 0; i < way.size(); i++) {
            Optional<JsonNode> next = child(at, way.get(i));
            boolean last = i == way.size() - 1;
            if (next.isEmpty() || last || !next.get().isContainerNode()) {
                JsonNode after = value;
                for (int k = way.size() - 1; k > i; k--) {
                    ObjectNode around = JsonNodeFactory.instance.objectNode();
                    around.set(way.get(k), after);
                    after = around;
                }
                return new Change(pointer(way, i), next, Optional.of(after));
            }
            at = next.get();
        }
        throw new IllegalArgumentException("a change needs a place inside the document");
    }

    /**
     * Nothing at a pointer; objects that would be left empty go with it, up to and with {@code top}.
     *
     * <p>Errors: {@link IllegalArgumentException} when nothing stands there.
     */
    static Change cleared(JsonNode tree, String pointer, String top) {
        List<String> way = way(pointer);
        List<JsonNode> nodes = new ArrayList<>(List.of(tree));
        for (String name : way) {
            JsonNode parent = nodes.get(nodes.size() - 1);
            nodes.add(child(parent, name)
                    .orElseThrow(() -> new IllegalArgumentException("nothing is set at " + pointer)));
        }
        int last = way.size() - 1;
        int least = Math.max(way(top).size() - 1, 0);
        while (last > least && nodes.get(last).isObject() && nodes.get(last).size() == 1) last--;
        return new Change(pointer(way, last), Optional.of(nodes.get(last + 1)), Optional.empty());
    }

    private static Optional<JsonNode> child(JsonNode node, String name) {
        if (node.isObject()) return Optional.ofNullable(node.get(name));
        if (node.isArray()) return Optional.ofNullable(node.get(Integer.parseInt(name)));
        return Optional.empty();
    }

    private static List<String> way(String pointer) {
        List<String> way = new ArrayList<>();
        for (String part : pointer.split("/", -1))
            way.add(part.replace("~1", "/").replace("~0", "~"));
        way.remove(0);
        return way;
    }

    private static String pointer(List<String> way, int last) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i <= last; i++) text.append('/').append(segment(way.get(i)));
        return text.toString();
    }
}
