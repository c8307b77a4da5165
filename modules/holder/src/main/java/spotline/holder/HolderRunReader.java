package spotline.holder;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import spotline.core.ReadException;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;

/**
 * Reads a holder-run file.
 *
 * <p>Shape: one JSON file in, its records out. Units: as the fields' names say; mm, degrees, eV, s, ohm. Errors:
 * {@link ReadException} that carries every fault at once, each with its JSON pointer, or with its line where the text is
 * not JSON. Files up to 16 MiB and 64 levels of nesting are read ({@link JsonLimits#DEFAULT}). Only the one file is
 * touched: whether the files it names exist is not looked into. Source: the schema {@value #SCHEMA}.
 */
public final class HolderRunReader {
    /** The published schema on the class path. */
    public static final String SCHEMA = "/spotline/schema/holder-run-1.schema.json";

    private static final CheckedJson JSON = CheckedJson.of("spotline-holder-run", 1, SCHEMA, JsonLimits.DEFAULT);

    private HolderRunReader() {}

    public static HolderRunFile read(Path file) throws ReadException {
        return bind(file.toString(), JSON.read(file));
    }

    /** @param name what to call the input in errors */
    public static HolderRunFile read(String name, byte[] bytes) throws ReadException {
        return bind(name, JSON.read(name, bytes));
    }

    /** Of a tree that is in memory: a document being edited. The tree is left as it is and nothing of it is kept. */
    public static HolderRunFile read(String name, ObjectNode tree) throws ReadException {
        JSON.check(name, tree);
        return bind(name, tree);
    }

    /** The file as a tree, checked as {@link #read(Path)} checks it. */
    public static ObjectNode tree(Path file) throws ReadException {
        ObjectNode tree = JSON.read(file);
        bind(file.toString(), tree);
        return tree;
    }

    private static HolderRunFile bind(String name, ObjectNode root) throws ReadException {
        List<ReadException> faults = CrossChecks.faults(name, root);
        if (!faults.isEmpty()) throw ReadException.all(faults);
        return HolderRunBinding.bind(root);
    }
}
