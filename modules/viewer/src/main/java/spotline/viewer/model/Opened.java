package spotline.viewer.model;

import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.run.InputFiles;
import spotline.run.document.HandEdits;
import spotline.run.document.History;
import spotline.run.document.Keeper;
import spotline.run.document.LivingRun;
import spotline.run.document.RunDocument;
import spotline.run.project.ProjectSession;
import spotline.run.project.RawFiles;
import spotline.run.project.Stamp;
import spotline.run.project.Writer;

/**
 * A holder run or a project that was opened.
 *
 * @param session of a project; empty for a holder run, whose edits live in memory until they are saved as a project
 */
record Opened(
        Path file,
        LivingRun run,
        InputFiles inputs,
        HolderPicture picture,
        String title,
        Optional<ProjectSession> session) {
    private static final long SEED = 1;

    /** Errors: {@link ReadException} in one sentence; {@link IOException} when a project's files cannot be written. */
    static Opened of(Path file, Words words, String programVersion, int threads, OffsetDateTime now)
            throws ReadException, IOException {
        boolean project =
                String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(".spotline");
        if (!project) {
            RunDocument document = RunDocument.read(file, SEED);
            return of(
                    file,
                    History.of(document),
                    InputFiles.beside(file),
                    Optional.empty(),
                    words,
                    programVersion,
                    threads);
        }
        ProjectSession session = ProjectSession.open(file, writer(now));
        try {
            return of(file, session.history(), session.inputs(), Optional.of(session), words, programVersion, threads);
        } catch (ReadException | RuntimeException e) {
            session.close();
            throw e;
        }
    }

    static Writer writer(OffsetDateTime now) {
        return new Writer(
                System.getProperty("user.name", "somebody"),
                "this machine",
                ProcessHandle.current().pid(),
                now);
    }

    private static Opened of(
            Path file,
            History history,
            InputFiles inputs,
            Optional<ProjectSession> session,
            Words words,
            String programVersion,
            int threads)
            throws ReadException {
        RunDocument document = history.document();
        HolderPlan plan = HolderPlan.of(document.file());
        Optional<String> named = document.file().holderTemplate();
        Optional<HolderTemplate> template = Optional.empty();
        if (named.isPresent()) {
            template = Optional.of(
                    HolderTemplates.SHIPPED.contains(named.get())
                            ? HolderTemplates.shipped(named.get())
                            : HolderTemplates.read(inputs.path(named.get())));
        }
        Keeper keeper = session.<Keeper>map(s -> s).orElse(Keeper.NOBODY);
        LivingRun run = new LivingRun(history, inputs, HandEdits.WHO_AND_WHY, keeper, programVersion, threads);
        String title = document.file().title().orElse(String.valueOf(file.getFileName()));
        return new Opened(file, run, inputs, HolderPicture.of(plan, template, words), title, session);
    }

    /**
     * Saves as a project.
     *
     * @return whether it is the project that is open, and not a new one
     */
    boolean save(Path target, Map<String, byte[]> results, Stamp stamp) throws ReadException, IOException {
        if (session.isPresent() && file.equals(target)) {
            session.get().save(results, stamp);
            return true;
        }
        ProjectSession.create(target, run.history(), inputs, RawFiles.INSIDE, results, writer(stamp.saved()), stamp)
                .close();
        return false;
    }

    /** Errors: none that matter to what comes after; a journal that could not be closed stays beside its project. */
    void close() {
        run.close();
        try {
            if (session.isPresent()) session.get().close();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
