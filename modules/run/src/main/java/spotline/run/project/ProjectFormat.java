package spotline.run.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;
import spotline.run.document.RunDocument;

/**
 * The project's table of contents, {@value #PROJECT}, and the names of what stands beside it.
 *
 * @param sequence number of the last journalled operation that the project holds
 */
record ProjectFormat(
        String programVersion,
        OffsetDateTime saved,
        String name,
        long seed,
        RawFiles keeping,
        long sequence,
        List<RawFile> raw) {
    static final String FORMAT = "spotline-project/1";
    static final String PROJECT = "project.json";
    static final String HOLDER_RUN = "holder-run.json";
    static final String TREATMENT = "treatment.json";
    static final String HISTORY = "history.json";
    static final String MANIFEST = "manifest.sha256";
    static final String RAW = "raw/";
    static final String RESULTS = "results/";

    private static final Pattern RESULT_NAME =
            Pattern.compile("[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*");
    private static final CheckedJson JSON =
            CheckedJson.of("spotline-project", 1, "/spotline/schema/project-1.schema.json", JsonLimits.DEFAULT);

    ProjectFormat {
        raw = List.copyOf(raw);
    }

    /** Errors: {@link IllegalArgumentException} for a name that is not made of plain letters, digits, {@code . _ - /}. */
    static String checkedResultName(String name) {
        if (!RESULT_NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("a result cannot be called " + name);
        }
        return name;
    }

    static ObjectNode json(Stamp stamp, RunDocument document, RawFiles keeping, long sequence, List<RawFile> raw) {
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("format", FORMAT);
        node.put("programVersion", stamp.programVersion())
                .put("saved", stamp.told().toString());
        node.put("name", document.name()).put("seed", document.seed()).put("sequence", sequence);
        node.put("rawFiles", keeping.name().toLowerCase(Locale.ROOT));
        node.putArray("raw");
        for (RawFile file : raw) {
            ObjectNode entry = node.withArray("raw").addObject().put("name", file.name());
            file.inside().ifPresent(place -> entry.put("inside", place));
            file.outside().ifPresent(path -> entry.put("outside", path));
            file.sha256().ifPresent(sum -> entry.put("sha256", sum));
        }
        return node;
    }

    /** Errors: {@link ReadException} when it is no table of contents, or a newer program's. */
    static ProjectFormat read(String name, byte[] bytes) throws ReadException {
        ObjectNode json = Migrations.PROJECT.newest(ProjectText.tree(name, bytes));
        JSON.check(name, json);
        List<RawFile> raw = new ArrayList<>();
        for (JsonNode entry : json.path("raw")) {
            raw.add(new RawFile(
                    entry.path("name").asText(), text(entry, "inside"), text(entry, "outside"), text(entry, "sha256")));
        }
        try {
            return new ProjectFormat(
                    json.path("programVersion").asText(),
                    OffsetDateTime.parse(json.path("saved").asText()),
                    json.path("name").asText(),
                    json.path("seed").asLong(),
                    json.path("rawFiles").asText().equals("outside") ? RawFiles.OUTSIDE : RawFiles.INSIDE,
                    json.path("sequence").asLong(),
                    raw);
        } catch (DateTimeException e) {
            throw new ReadException(Place.pointer(name, "/saved"), "no time", "a time with its offset");
        }
    }

    private static Optional<String> text(JsonNode node, String field) {
        return node.path(field).isTextual() ? Optional.of(node.path(field).asText()) : Optional.empty();
    }
}
