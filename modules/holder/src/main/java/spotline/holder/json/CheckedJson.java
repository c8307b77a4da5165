package spotline.holder.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * Reads one kind of JSON file, named by its {@code format} field as {@code spotline-KIND/N}.
 *
 * <p>Shape: a file in, its object out, valid against the schema. Errors: {@link ReadException} with every fault found:
 * text that is not JSON or not UTF-8, a kind or version that is not read, a field given twice, and whatever the schema
 * (JSON Schema, draft 2020-12) does not allow. Only the one file is touched.
 */
public final class CheckedJson {
    private static final Pattern FORMAT = Pattern.compile("([a-z-]+)/([1-9][0-9]{0,8})");

    private final String kind;
    private final int newest;
    private final JsonLimits limits;
    private final JsonNode schema;
    private final SchemaAcceptance acceptance;
    private final SchemaSentences sentences;

    private CheckedJson(String kind, int newest, JsonLimits limits, JsonNode schema) {
        this.kind = kind;
        this.newest = newest;
        this.limits = limits;
        this.schema = schema;
        this.acceptance = new SchemaAcceptance(schema);
        this.sentences = new SchemaSentences(schema);
    }

    /**
     * @param kind the kind's name with {@code spotline-} before it
     * @param newest the highest version read
     * @param schemaResource absolute name of the schema on the class path
     */
    public static CheckedJson of(String kind, int newest, String schemaResource, JsonLimits limits) {
        return new CheckedJson(kind, newest, limits, ownResource(schemaResource));
    }

    /**
     * The object in a JSON file that ships with the program, not checked against any schema. Errors:
     * {@link IllegalStateException} when it is not a JSON object.
     *
     * @param resource absolute name on the class path
     */
    public static ObjectNode ownResource(String resource) {
        try (InputStream stream = CheckedJson.class.getResourceAsStream(resource)) {
            byte[] bytes = Objects.requireNonNull(stream, resource).readAllBytes();
            return JsonText.ownTree(resource, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("resource " + resource + " cannot be read", e);
        }
    }

    public ObjectNode read(Path file) throws ReadException {
        String name = file.toString();
        byte[] bytes;
        try (InputStream stream = Files.newInputStream(file)) {
            bytes = stream.readNBytes(limits.maxBytes() + 1);
        } catch (NoSuchFileException e) {
            throw new ReadException(Place.file(name), "no such file", "a JSON file");
        } catch (AccessDeniedException e) {
            throw new ReadException(Place.file(name), "a file that may not be read", "a readable JSON file");
        } catch (IOException e) {
            String found = Files.isDirectory(file) ? "a directory" : "a file that cannot be read";
            throw new ReadException(Place.file(name), found, "a readable JSON file");
        }
        return read(name, bytes);
    }

    /** @param name what to call the input in errors */
    public ObjectNode read(String name, byte[] bytes) throws ReadException {
        if (bytes.length > limits.maxBytes()) {
            throw new ReadException(
                    Place.file(name),
                    "more than " + limits.maxBytes() + " bytes",
                    "a JSON file of at most " + limits.maxBytes() + " bytes");
        }
        JsonText text = JsonText.decode(name, bytes, limits);
        JsonText.Parsed parsed = text.parse();
        List<ReadException> faults = new ArrayList<>(parsed.faults());
        JsonNode tree = parsed.tree();
        if (!(tree instanceof ObjectNode root)) {
            throw new ReadException(Place.file(name), Shown.kind(tree), "an object { ... }");
        }
        checkFormat(name, root);
        Set<Place> told = new HashSet<>();
        for (ReadException fault : parsed.faults()) told.add(fault.place());
        for (ReadException fault : schemaFaults(name, root)) if (!told.contains(fault.place())) faults.add(fault);
        if (!faults.isEmpty()) throw ReadException.all(capped(name, faults));
        return root;
    }

    /** The same checks of a tree that is in memory already, whose text is not looked at again. */
    public void check(String name, ObjectNode root) throws ReadException {
        checkFormat(name, root);
        List<ReadException> faults = schemaFaults(name, root);
        if (!faults.isEmpty()) throw ReadException.all(capped(name, faults));
    }

    /**
     * What the schema does not allow in a part of another file: a patch inside a holder run.
     *
     * @param pointer where the part stands in its file
     */
    public List<ReadException> faultsOfPart(String name, String pointer, JsonNode part) {
        return schemaFaults(name, part).stream()
                .map(fault -> new ReadException(
                        Place.pointer(name, pointer + fault.place().pointer()), fault.found(), fault.expected()))
                .toList();
    }

    /** The schema library is only started for a value that is not certainly valid: it takes half a second. */
    private List<ReadException> schemaFaults(String name, JsonNode value) {
        return acceptance.accepts(value) ? List.of() : sentences.faults(name, value, libraryErrors(value));
    }

    List<Error> libraryErrors(JsonNode value) {
        SchemaRegistryConfig config = SchemaRegistryConfig.builder()
                .locale(Locale.ROOT)
                .formatAssertionsEnabled(true)
                .build();
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12, builder -> builder.schemaRegistryConfig(config))
                .getSchema(schema)
                .validate(value);
    }

    private void checkFormat(String name, ObjectNode root) throws ReadException {
        String wanted = "\"format\": \"" + kind + "/" + newest + "\"";
        Place place = Place.pointer(name, "/format");
        if (!root.has("format")) throw new ReadException(Place.file(name), "no field \"format\"", wanted);
        JsonNode format = root.path("format");
        OptionalInt version = version(format.asText());
        boolean known = format.isTextual() && version.isPresent();
        if (known && version.getAsInt() <= newest) return;
        String found = Shown.field("format", format);
        if (!known) throw new ReadException(place, found, wanted);
        throw new ReadException(
                place, found + ", which is newer than this program", wanted + " or older; a newer program reads it");
    }

    private OptionalInt version(String format) {
        Matcher matcher = FORMAT.matcher(format);
        boolean ours = matcher.matches() && matcher.group(1).equals(kind);
        return ours ? OptionalInt.of(Integer.parseInt(matcher.group(2))) : OptionalInt.empty();
    }

    private List<ReadException> capped(String name, List<ReadException> faults) {
        int max = limits.maxFaults();
        if (faults.size() <= max) return faults;
        List<ReadException> kept = new ArrayList<>(faults.subList(0, max));
        kept.add(new ReadException(Place.file(name), (faults.size() - max) + " more faults", "none"));
        return kept;
    }
}
