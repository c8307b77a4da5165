package spotline.run.project;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Steps from older project formats to the newest.
 *
 * @param steps the first turns version 1 into 2, the next 2 into 3
 */
record Migrations(String kind, List<UnaryOperator<ObjectNode>> steps) {
    /** There is one version so far. */
    static final Migrations PROJECT = new Migrations("spotline-project", List.of());

    Migrations {
        steps = List.copyOf(steps);
    }

    int newest() {
        return steps.size() + 1;
    }

    /** A copy in the newest version; a tree of no known version is given back as it is, for its reader to refuse. */
    ObjectNode newest(ObjectNode tree) {
        ObjectNode migrated = tree.deepCopy();
        for (int version = 1; version <= steps.size(); version++) {
            if (migrated.path("format").asText().equals(kind + "/" + version)) {
                migrated = steps.get(version - 1).apply(migrated).put("format", kind + "/" + (version + 1));
            }
        }
        return migrated;
    }
}
