package spotline.run.document;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.run.MergePatch;
import spotline.run.Treatment;
import spotline.run.TreatmentStack;

/**
 * A holder run as a document: everything that decides a result but the spectra themselves. One value, never altered; an
 * edit makes another.
 *
 * <p>It is the holder-run file's own JSON, in which all settings are (patches of holder, families and spots, silences,
 * overrides), and the seed of the random streams. A document that exists is valid: its reader has accepted it and every
 * spot's treatment is inside its limits.
 */
public final class RunDocument {
    private final String name;
    private final ObjectNode tree;
    private final long seed;
    private final HolderRunFile file;
    private final List<Treatment> treatments;

    private RunDocument(String name, ObjectNode tree, long seed) throws ReadException {
        this.name = name;
        this.tree = tree;
        this.seed = seed;
        this.file = HolderRunReader.read(name, tree);
        HolderPlan plan = HolderPlan.of(file);
        TreatmentStack stack = new TreatmentStack(file, name, Optional.empty());
        List<Treatment> resolved = new ArrayList<>();
        for (int i = 0; i < plan.spots().size(); i++) {
            resolved.add(stack.of(plan.spots().get(i), i));
        }
        this.treatments = List.copyOf(resolved);
    }

    /**
     * Errors: {@link ReadException} with every fault of the holder run or its treatments.
     *
     * @param name what to call the document in errors
     * @param tree a holder-run file's object; copied
     */
    public static RunDocument of(String name, ObjectNode tree, long seed) throws ReadException {
        return new RunDocument(name, tree.deepCopy(), seed);
    }

    /** Errors: {@link ReadException} with every fault of the file. */
    public static RunDocument read(Path holderRunFile, long seed) throws ReadException {
        return new RunDocument(holderRunFile.toString(), HolderRunReader.tree(holderRunFile), seed);
    }

    /**
     * Errors: {@link ReadException} with every fault of the file or of the treatment.
     *
     * @param treatment laid over the defaults before the holder's own: it becomes a part of that
     */
    public static RunDocument read(Path holderRunFile, ObjectNode treatment, long seed) throws ReadException {
        ObjectNode tree = HolderRunReader.tree(holderRunFile);
        ObjectNode under = treatment.deepCopy().without(List.of("format"));
        tree.set(
                "treatment",
                MergePatch.over(under, tree.path("treatment").isObject() ? tree.path("treatment") : tree.objectNode()));
        return new RunDocument(holderRunFile.toString(), tree, seed);
    }

    public String name() {
        return name;
    }

    public long seed() {
        return seed;
    }

    /** What the document says, as the holder-run reader gives it. */
    public HolderRunFile file() {
        return file;
    }

    /** The settings in force at each spot, in the order of the holder run. */
    public List<Treatment> treatments() {
        return treatments;
    }

    /** The holder-run file's object; a copy. */
    public ObjectNode tree() {
        return tree.deepCopy();
    }

    /**
     * What stands at a JSON pointer; a copy, empty where nothing does.
     *
     * <p>Errors: {@link IllegalArgumentException} for text that is no JSON pointer.
     */
    public Optional<JsonNode> at(String pointer) {
        return Trees.at(tree, JsonPointer.compile(pointer)).map(JsonNode::deepCopy);
    }

    /** SHA-256 of what the document says and of its seed, lower-case hex: the order of fields does not count. */
    public String hash() {
        return Trees.sha256(Trees.canonical(tree) + "\n" + seed);
    }

    /** Errors: {@link IllegalArgumentException} for an id that no spot has. */
    public int indexOf(String spot) {
        for (int i = 0; i < file.spots().size(); i++) {
            if (file.spots().get(i).id().equals(spot)) return i;
        }
        throw new IllegalArgumentException("there is no spot " + spot);
    }

    RunDocument with(ObjectNode changed) throws ReadException {
        return new RunDocument(name, changed, seed);
    }

    ObjectNode shared() {
        return tree;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RunDocument that && seed == that.seed && Trees.same(tree, that.tree);
    }

    @Override
    public int hashCode() {
        return Trees.canonical(tree).hashCode();
    }

    @Override
    public String toString() {
        return name + " " + hash();
    }
}
