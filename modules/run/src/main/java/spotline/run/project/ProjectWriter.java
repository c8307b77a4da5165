package spotline.run.project;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import spotline.core.ReadException;
import spotline.run.InputFiles;
import spotline.run.document.History;
import spotline.run.document.RunDocument;

/** Writes a project's zip: raw files first, then results, then what tells of them, the manifest last. */
final class ProjectWriter {
    private final Path project;
    private final History history;
    private final InputFiles inputs;
    private final List<String> names;
    private final RawFiles keeping;
    private final Map<String, byte[]> results;
    private final long sequence;
    private final Stamp stamp;
    private final Map<String, String> sums = new LinkedHashMap<>();

    /**
     * @param known files that the project kept so far: an edit that no longer names one may be undone
     * @param sequence number of the last journalled operation that the history holds
     */
    ProjectWriter(
            Path project,
            History history,
            InputFiles inputs,
            List<String> known,
            RawFiles keeping,
            Map<String, byte[]> results,
            long sequence,
            Stamp stamp) {
        this.project = project;
        this.history = history;
        this.inputs = inputs;
        Set<String> all = new LinkedHashSet<>(NamedInputs.of(history.document()));
        all.addAll(NamedInputs.of(history.first()));
        all.addAll(known);
        this.names = List.copyOf(all);
        this.keeping = keeping;
        this.results = results;
        this.sequence = sequence;
        this.stamp = stamp;
    }

    void writeTo(OutputStream to) throws IOException {
        RunDocument document = history.document();
        ZipOutputStream zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
        List<RawFile> raw = new ArrayList<>();
        for (String name : names) raw.add(raw(zip, raw.size(), name));
        for (Map.Entry<String, byte[]> result : results.entrySet()) {
            add(zip, ProjectFormat.RESULTS + ProjectFormat.checkedResultName(result.getKey()), result.getValue());
        }
        add(zip, ProjectFormat.HOLDER_RUN, ProjectText.bytes(document.tree()));
        add(zip, ProjectFormat.TREATMENT, ProjectText.bytes(treatments(document)));
        add(zip, ProjectFormat.HISTORY, ProjectText.bytes(HistoryJson.of(history)));
        add(zip, ProjectFormat.PROJECT, ProjectText.bytes(ProjectFormat.json(stamp, document, keeping, sequence, raw)));
        StringBuilder manifest = new StringBuilder();
        sums.forEach(
                (name, sum) -> manifest.append(sum).append("  ").append(name).append('\n'));
        add(zip, ProjectFormat.MANIFEST, manifest.toString().getBytes(StandardCharsets.UTF_8));
        zip.finish();
    }

    private static ObjectNode treatments(RunDocument document) {
        ObjectNode spots = JsonNodeFactory.instance.objectNode();
        for (int i = 0; i < document.treatments().size(); i++) {
            spots.set(
                    document.file().spots().get(i).id(),
                    document.treatments().get(i).json());
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.set("spots", spots);
        return node;
    }

    /** A file that is missing is listed without a sum: the project tells of it, and its spots say so in their findings. */
    private RawFile raw(ZipOutputStream zip, int index, String name) throws IOException {
        Path file;
        try {
            file = inputs.path(name);
        } catch (ReadException e) {
            return new RawFile(name, Optional.empty(), Optional.empty(), Optional.empty());
        }
        if (!Files.isRegularFile(file)) {
            return new RawFile(name, Optional.empty(), Optional.of(outside(file)), Optional.empty());
        }
        if (keeping == RawFiles.OUTSIDE) {
            return new RawFile(name, Optional.empty(), Optional.of(outside(file)), Optional.of(Sums.of(file)));
        }
        String place = NamedInputs.place(index, name);
        try (InputStream in = Files.newInputStream(file)) {
            return new RawFile(name, Optional.of(place), Optional.empty(), Optional.of(add(zip, place, in)));
        }
    }

    private String outside(Path file) {
        Path folder = project.toAbsolutePath().normalize().getParent();
        if (file.getFileSystem() != project.getFileSystem()) return file.toString();
        Path whole = file.toAbsolutePath().normalize();
        if (folder == null || !whole.startsWith(folder)) return whole.toString();
        return folder.relativize(whole).toString();
    }

    private void add(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
        try (InputStream in = new java.io.ByteArrayInputStream(bytes)) {
            add(zip, name, in);
        }
    }

    private String add(ZipOutputStream zip, String name, InputStream bytes) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(stamp.ofEntries());
        zip.putNextEntry(entry);
        MessageDigest digest = Sums.sha256();
        bytes.transferTo(new DigestOutputStream(zip, digest));
        zip.closeEntry();
        String sum = Sums.hex(digest);
        sums.put(name, sum);
        return sum;
    }
}
