package spotline.run.project;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.run.InputFiles;
import spotline.run.document.History;
import spotline.run.document.Keeper;
import spotline.run.document.Operation;
import spotline.run.document.RunDocument;

/**
 * A project open to write: holds its lock, journals each operation, and saves.
 *
 * <p>Given as the {@link Keeper} of a {@link spotline.run.document.LivingRun}, no operation counts as done before it is on
 * the disk. May be used from any thread; edits need not wait for a save.
 */
public final class ProjectSession implements Keeper, AutoCloseable {
    private final Path file;
    private final Storage storage;
    private final ProjectLock lock;
    private final Optional<Project> opened;
    private final InputFiles inputs;
    private final RawFiles keeping;
    private final Journal journal;
    private final Object saving = new Object();
    private History current;
    private long sequence;

    private ProjectSession(
            Path file,
            Storage storage,
            ProjectLock lock,
            Optional<Project> opened,
            InputFiles inputs,
            RawFiles keeping,
            Journal journal,
            History current,
            long sequence) {
        this.file = file;
        this.storage = storage;
        this.lock = lock;
        this.opened = opened;
        this.inputs = inputs;
        this.keeping = keeping;
        this.journal = journal;
        this.current = current;
        this.sequence = sequence;
    }

    /**
     * A new project of a document; saved at once, over whatever project stood there.
     *
     * <p>Errors: {@link ReadException} when another writer has it open; {@link IOException} when it cannot be written.
     *
     * @param inputs where the files are that the document names
     * @param results bytes to keep along, by name
     */
    public static ProjectSession create(
            Path file,
            History history,
            InputFiles inputs,
            RawFiles keeping,
            Map<String, byte[]> results,
            Writer writer,
            Stamp stamp)
            throws ReadException, IOException {
        return create(file, history, inputs, keeping, results, writer, stamp, Storage.DISK);
    }

    static ProjectSession create(
            Path file,
            History history,
            InputFiles inputs,
            RawFiles keeping,
            Map<String, byte[]> results,
            Writer writer,
            Stamp stamp,
            Storage storage)
            throws ReadException, IOException {
        ProjectLock lock = ProjectLock.take(file, writer);
        try {
            // Numbers go on after those of an older project's journal, so that none of its lines can be taken for this
            // one's.
            long start = Journal.read(Journal.beside(file)).entries().stream()
                    .mapToLong(Journal.Entry::sequence)
                    .max()
                    .orElse(0);
            AtomicFile.write(
                    file,
                    storage,
                    new ProjectWriter(file, history, inputs, List.of(), keeping, results, start, stamp)::writeTo);
            Journal journal = Journal.open(Journal.beside(file), storage, 0);
            return new ProjectSession(file, storage, lock, Optional.empty(), inputs, keeping, journal, history, start);
        } catch (ReadException | IOException e) {
            lock.close();
            throw e;
        }
    }

    /** Errors: {@link ReadException} when another writer has it open, or it is no whole project. */
    public static ProjectSession open(Path file, Writer writer) throws ReadException, IOException {
        return open(file, writer, Storage.DISK);
    }

    static ProjectSession open(Path file, Writer writer, Storage storage) throws ReadException, IOException {
        if (!Files.isRegularFile(file)) {
            throw new ReadException(Place.file(file.toString()), "no such file", "a project file");
        }
        ProjectLock lock = ProjectLock.take(file, writer);
        try {
            Project project = Project.open(file);
            Replay replayed = project.replayed();
            Path beside = Journal.beside(file);
            long whole = replayed.journal().bytes();
            if (!replayed.clean()) {
                Files.copy(
                        beside,
                        beside.resolveSibling(beside.getFileName() + ".not-used"),
                        StandardCopyOption.REPLACE_EXISTING);
                whole = 0;
            }
            Journal journal = Journal.open(beside, storage, whole);
            ProjectSession session = new ProjectSession(
                    file,
                    storage,
                    lock,
                    Optional.of(project),
                    project.inputs(),
                    project.keeping(),
                    journal,
                    replayed.history(),
                    replayed.sequence());
            // What was used of a journal that is put aside must not be lost with it.
            if (!replayed.clean()) session.resave(project);
            return session;
        } catch (ReadException | IOException e) {
            lock.close();
            throw e;
        }
    }

    private void resave(Project project) throws IOException {
        save(project.results(), new Stamp(project.programVersion(), project.saved(), Optional.empty()));
    }

    public Path file() {
        return file;
    }

    /** The history with everything kept so far. */
    public synchronized History history() {
        return current;
    }

    public synchronized RunDocument document() {
        return current.document();
    }

    /** What there was to know about the opening. */
    public List<Finding> findings() {
        return opened.map(Project::findings).orElse(List.of());
    }

    /** Results that were saved along, by name. */
    public Map<String, byte[]> results() {
        return opened.map(Project::results).orElse(Map.of());
    }

    /** The files that the document names; usable until the session is closed. */
    public InputFiles inputs() {
        return inputs;
    }

    /** Errors: {@link ReadException} when the operation cannot be written; it then is not done. */
    @Override
    public synchronized void keep(Operation operation, History after) throws ReadException {
        try {
            journal.append(new Journal.Entry(sequence + 1, current.document().hash(), operation));
        } catch (IOException e) {
            throw new ReadException(
                    Place.file(Journal.beside(file).toString()),
                    String.valueOf(e.getMessage()),
                    "room for the journal; the edit was not made");
        }
        sequence++;
        current = after;
    }

    /** Does an operation and keeps it: for callers without a living run. */
    public synchronized History done(Operation operation) throws ReadException {
        History before = current;
        History next = operation.on(before);
        if (next != before) keep(operation, next);
        return next;
    }

    /**
     * Saves the history as it is now. Operations may go on meanwhile: they stay in the journal.
     *
     * <p>Errors: {@link IOException} in one sentence; the project saved before then still stands.
     *
     * @param results bytes to keep along, by name
     */
    public void save(Map<String, byte[]> results, Stamp stamp) throws IOException {
        synchronized (saving) {
            History history;
            long upTo;
            synchronized (this) {
                history = current;
                upTo = sequence;
            }
            List<String> known = opened.map(
                            p -> p.raw().stream().map(RawFile::name).toList())
                    .orElse(List.of());
            AtomicFile.write(
                    file,
                    storage,
                    new ProjectWriter(file, history, inputs, known, keeping, results, upTo, stamp)::writeTo);
            synchronized (this) {
                if (sequence == upTo) journal.clear();
            }
        }
    }

    @Override
    public void close() throws IOException {
        journal.close();
        if (journalIsEmpty()) Files.deleteIfExists(Journal.beside(file));
        if (opened.isPresent()) opened.get().close();
        lock.close();
    }

    private boolean journalIsEmpty() throws IOException {
        Path beside = Journal.beside(file);
        return Files.exists(beside) && Files.size(beside) == 0;
    }
}
