package spotline.holder;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;

/** The holder templates that ship with the program, whose dimensions are invented, and the lab's own files. */
public final class HolderTemplates {
    /** Names of the shipped templates. */
    public static final List<String> SHIPPED =
            List.of("flat-bar", "stub-end-bar", "temperature-stage", "cold-stub-bar", "rotating-stage");

    /** The published schema on the class path. */
    public static final String SCHEMA = "/spotline/schema/holder-template-1.schema.json";

    private HolderTemplates() {}

    /** Whether a template is named by a file of the lab's own. */
    public static boolean namesFile(String template) {
        return template.toLowerCase(Locale.ROOT).endsWith(".json");
    }

    /**
     * What the build holds to the schema and the checks is not checked again.
     *
     * <p>Errors: {@link IllegalArgumentException} for a name that is not in {@link #SHIPPED}.
     */
    public static HolderTemplate shipped(String name) {
        if (!SHIPPED.contains(name)) {
            throw new IllegalArgumentException("no holder template is called " + name + ", only " + SHIPPED);
        }
        return TemplateBinding.bind(CheckedJson.ownResource("/spotline/holders/" + name + ".json"));
    }

    /** Errors: {@link ReadException} with every fault at once. */
    public static HolderTemplate read(Path file) throws ReadException {
        return bind(file.toString(), json().read(file));
    }

    /** @param name what to call the input in errors */
    public static HolderTemplate read(String name, byte[] bytes) throws ReadException {
        return bind(name, json().read(name, bytes));
    }

    /**
     * The template that a holder run names; empty when it names none.
     *
     * @param holderRunFile where the run was read from; a lab's own template is found relative to it
     */
    public static Optional<HolderTemplate> of(HolderRunFile run, Path holderRunFile) throws ReadException {
        if (run.holderTemplate().isEmpty()) return Optional.empty();
        String template = run.holderTemplate().get();
        if (SHIPPED.contains(template)) return Optional.of(shipped(template));
        try {
            return Optional.of(read(holderRunFile.resolveSibling(template)));
        } catch (InvalidPathException e) {
            throw new ReadException(
                    Place.pointer(holderRunFile.toString(), "/holder/template"),
                    "a name no file can have",
                    "the name of a .json file");
        }
    }

    private static CheckedJson json() {
        return CheckedJson.of("spotline-holder-template", 1, SCHEMA, JsonLimits.DEFAULT);
    }

    private static HolderTemplate bind(String name, ObjectNode root) throws ReadException {
        List<ReadException> faults = TemplateChecks.faults(name, root);
        if (!faults.isEmpty()) throw ReadException.all(faults);
        return TemplateBinding.bind(root);
    }
}
