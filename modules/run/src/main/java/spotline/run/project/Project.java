package spotline.run.project;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.run.InputFiles;
import spotline.run.RunSource;
import spotline.run.document.History;
import spotline.run.document.RunDocument;

/**
 * A project file, opened to read: the document with its history, the journal's operations since the last save done again,
 * and the files that the document names. Nothing on the disk is changed.
 */
public final class Project implements AutoCloseable {
    private final Path file;
    private final ProjectFormat contents;
    private final Replay replayed;
    private final FileSystem inside;
    private final Map<String, byte[]> results;
    private final List<Finding> findings;

    private Project(
            Path file,
            ProjectFormat contents,
            Replay replayed,
            FileSystem inside,
            Map<String, byte[]> results,
            List<Finding> findings) {
        this.file = file;
        this.contents = contents;
        this.replayed = replayed;
        this.inside = inside;
        this.results = results;
        this.findings = List.copyOf(findings);
    }

    /** Errors: {@link ReadException} when the file is no whole project, or a newer program's. */
    public static Project open(Path file) throws ReadException {
        return open(file, ProjectLimits.DEFAULT);
    }

    /** Errors: {@link ReadException} when the file is no whole project, asks for too much, or is a newer program's. */
    public static Project open(Path file, ProjectLimits limits) throws ReadException {
        String name = file.toString();
        List<Finding> findings = new ArrayList<>();
        ProjectFormat contents;
        History saved;
        Map<String, byte[]> results = new LinkedHashMap<>();
        try (ProjectZip zip = ProjectZip.open(file, limits)) {
            contents = ProjectFormat.read(name + "!" + ProjectFormat.PROJECT, zip.read(ProjectFormat.PROJECT));
            Set<String> changed = changed(name, zip);
            for (RawFile raw : contents.raw()) {
                raw.inside()
                        .filter(place -> changed.contains(place) || !zip.has(place))
                        .ifPresent(place -> findings.add(differs(raw)));
            }
            String holderRun = name + "!" + ProjectFormat.HOLDER_RUN;
            RunDocument document = RunDocument.of(
                    contents.name(), ProjectText.tree(holderRun, zip.read(ProjectFormat.HOLDER_RUN)), contents.seed());
            String history = name + "!" + ProjectFormat.HISTORY;
            saved = HistoryJson.read(history, ProjectText.tree(history, zip.read(ProjectFormat.HISTORY)), document);
            for (String member : zip.names()) {
                if (!member.startsWith(ProjectFormat.RESULTS)) continue;
                results.put(member.substring(ProjectFormat.RESULTS.length()), zip.read(member));
            }
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "a file that cannot be read", "a readable project file");
        }
        Replay replayed = Replay.of(file, saved, contents.sequence());
        findings.addAll(replayed.findings());
        try {
            FileSystem inside = FileSystems.newFileSystem(file, (ClassLoader) null);
            Project project = new Project(file, contents, replayed, inside, results, findings);
            List<Finding> all = new ArrayList<>(findings);
            all.addAll(project.outsideFindings());
            return new Project(file, contents, replayed, inside, results, all);
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "a file that cannot be read", "a readable project file");
        }
    }

    /** Members whose sums are not the manifest's. Only raw files and results may differ and still be told of. */
    private static Set<String> changed(String name, ProjectZip zip) throws ReadException {
        Map<String, String> sums = new HashMap<>();
        String manifest = new String(zip.read(ProjectFormat.MANIFEST), StandardCharsets.UTF_8);
        for (String line : manifest.lines().toList()) {
            if (line.length() > 66) sums.put(line.substring(66), line.substring(0, 64));
        }
        Set<String> changed = new HashSet<>();
        for (String member : zip.names()) {
            if (member.equals(ProjectFormat.MANIFEST)) continue;
            String found = zip.sha256(member);
            if (found.equals(sums.get(member))) continue;
            if (!member.startsWith(ProjectFormat.RAW)) {
                throw new ReadException(
                        Place.file(name + "!" + member),
                        "another SHA-256 sum than the project's manifest gives",
                        "what the program saved");
            }
            changed.add(member);
        }
        return changed;
    }

    private static Finding differs(RawFile raw) {
        return Finding.caution(
                        "raw-file-changed",
                        raw.name() + " is not what it was when the project was saved: its SHA-256 sum was "
                                + raw.sha256().orElse("not known") + ".")
                .in(raw.name());
    }

    private List<Finding> outsideFindings() throws ReadException {
        List<Finding> all = new ArrayList<>();
        for (RawFile raw : contents.raw()) {
            if (raw.inside().isPresent()) continue;
            Optional<String> now;
            try {
                now = Optional.of(Sums.of(inputs().path(raw.name())));
            } catch (IOException e) {
                now = Optional.empty();
            }
            if (now.equals(raw.sha256())) continue;
            if (now.isPresent()) all.add(differs(raw));
            else {
                all.add(Finding.caution(
                                "raw-file-missing",
                                raw.name() + " is not where it was when the project was saved ("
                                        + raw.outside().orElse("unknown") + ").")
                        .in(raw.name()));
            }
        }
        return all;
    }

    public Path file() {
        return file;
    }

    /** The history with all that was journalled since the project was saved. */
    public History history() {
        return replayed.history();
    }

    public RunDocument document() {
        return replayed.history().document();
    }

    /** What there is to know about the opening: changed raw files, operations taken from the journal. */
    public List<Finding> findings() {
        return findings;
    }

    public String programVersion() {
        return contents.programVersion();
    }

    public OffsetDateTime saved() {
        return contents.saved();
    }

    public RawFiles keeping() {
        return contents.keeping();
    }

    public List<RawFile> raw() {
        return contents.raw();
    }

    /** Bytes of the results that were saved along, by name; copied out. */
    public Map<String, byte[]> results() {
        Map<String, byte[]> copies = new LinkedHashMap<>();
        results.forEach((name, bytes) -> copies.put(name, bytes.clone()));
        return copies;
    }

    /** The files that the document names, inside the project or where they were; usable until the project is closed. */
    public InputFiles inputs() {
        Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(Path.of("."));
        Map<String, RawFile> byName = new HashMap<>();
        contents.raw().forEach(raw -> byName.put(raw.name(), raw));
        return name -> {
            RawFile raw = byName.get(name);
            try {
                if (raw != null && raw.inside().isPresent())
                    return inside.getPath(raw.inside().get());
                String path = raw == null ? name : raw.outside().orElse(name);
                return folder.resolve(path);
            } catch (InvalidPathException e) {
                throw new ReadException(Place.file(name), "not a file name on this system", "a readable file");
            }
        };
    }

    /** What the run of this project starts from. */
    public RunSource source() {
        RunDocument document = document();
        return new RunSource(document.name(), document.file(), Optional.empty(), inputs(), document.seed());
    }

    Replay replayed() {
        return replayed;
    }

    @Override
    public void close() throws IOException {
        inside.close();
    }
}
