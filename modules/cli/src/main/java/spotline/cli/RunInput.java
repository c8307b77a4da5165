package spotline.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.RunSource;
import spotline.run.TreatmentStack;
import spotline.run.document.Edits;
import spotline.run.document.History;
import spotline.run.document.RunDocument;
import spotline.run.findings.RuleBook;
import spotline.run.project.Project;

/** A holder run to treat: its own file with the files beside it, or a project. */
final class RunInput implements AutoCloseable {
    private final Path file;
    private final RunSource source;
    private final Optional<Project> project;

    private RunInput(Path file, RunSource source, Optional<Project> project) {
        this.file = file;
        this.source = source;
        this.project = project;
    }

    static RunInput open(Path file, TreatmentOptions options) throws ReadException {
        if (!isProject(file)) {
            return new RunInput(file, RunSource.of(file, options.treatment(), options.seed()), Optional.empty());
        }
        Optional<ObjectNode> treatment = Optional.empty();
        if (options.treatment().isPresent()) {
            treatment = Optional.of(TreatmentStack.read(options.treatment().get()));
        }
        Project project = Project.open(file);
        RunSource saved = project.source();
        return new RunInput(
                file,
                new RunSource(
                        saved.name(),
                        saved.file(),
                        treatment,
                        saved.inputs(),
                        options.statedSeed().orElse(saved.seed())),
                Optional.of(project));
    }

    /** A project is told by its first bytes, whatever it is called. */
    static boolean isProject(Path file) {
        if (!Files.isRegularFile(file)) return false;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(4);
            return head.length == 4 && head[0] == 'P' && head[1] == 'K' && head[2] == 3 && head[3] == 4;
        } catch (IOException e) {
            return false;
        }
    }

    RunSource source() {
        return source;
    }

    RunResult treat(int threads, Work work) throws ReadException {
        ReferenceData reference = ReferenceData.shipped();
        HolderRun run = new HolderRunLoader(reference).load(source, work);
        return new RunPipeline(reference, ProgramVersion.text(), RuleBook.standard())
                .treat(run.with(project.map(Project::findings).orElse(List.of())), threads, work);
    }

    /** The document that gives this run's numbers, with its history where it has one. */
    History history(TreatmentOptions options) throws ReadException {
        if (project.isPresent()) {
            History kept = project.get().history();
            long seed = options.statedSeed().orElse(kept.document().seed());
            if (seed != kept.document().seed()) {
                throw new ReadException(
                        Place.file(file.toString()),
                        "seed " + seed + " for a project whose seed is "
                                + kept.document().seed(),
                        "no --seed beside --project: a project keeps its own");
            }
            if (source.treatment().isEmpty()) return kept;
            return kept.apply(
                    Edits.treatmentUnder(kept.document(), source.treatment().get()));
        }
        if (options.treatment().isEmpty()) return History.of(RunDocument.read(file, options.seed()));
        ObjectNode treatment = TreatmentStack.read(options.treatment().get());
        return History.of(RunDocument.read(file, treatment, options.seed()));
    }

    @Override
    public void close() throws IOException {
        if (project.isPresent()) project.get().close();
    }
}
