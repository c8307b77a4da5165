package spotline.run.project;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.run.InputFiles;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.History;
import spotline.run.document.RunDocument;
import spotline.run.document.Scope;

/** Small projects made up for tests. */
final class Projects {
    static final Writer WRITER =
            new Writer("A. Analyst", "bench-pc", 4711, OffsetDateTime.parse("2026-05-12T09:00:00+02:00"));
    static final Stamp STAMP = new Stamp("test", OffsetDateTime.parse("2026-05-12T10:30:00+02:00"), Optional.empty());

    private Projects() {}

    /** A document of three spots whose spectrum files, of a few lines, are written into a folder. */
    static RunDocument document(Path folder) throws ReadException, IOException {
        StringBuilder spots = new StringBuilder();
        for (int i = 1; i <= 3; i++) {
            Files.writeString(folder.resolve("spot " + i + ".txt"), "invented bytes of spot " + i + "\n");
            spots.append(i == 1 ? "" : ", ")
                    .append("{\"id\": \"" + i + "\", \"sample\": {\"name\": \"s" + i + "\"},")
                    .append("\"spectra\": [{\"file\": \"spot " + i + ".txt\"}]}");
        }
        String text = "{\"format\": \"spotline-holder-run/1\", \"spots\": [" + spots + "]}";
        ObjectNode tree = ProjectText.tree("made", text.getBytes(StandardCharsets.UTF_8));
        return RunDocument.of("made.json", tree, 7);
    }

    static ProjectSession create(Path project, Path folder, RawFiles keeping) throws ReadException, IOException {
        return create(project, folder, keeping, Storage.DISK);
    }

    static ProjectSession create(Path project, Path folder, RawFiles keeping, Storage storage)
            throws ReadException, IOException {
        return ProjectSession.create(
                project,
                History.of(document(folder)),
                InputFiles.in(folder),
                keeping,
                Map.of("composition.csv", "invented\n".getBytes(StandardCharsets.UTF_8)),
                WRITER,
                STAMP,
                storage);
    }

    /** An edit whose result differs for each number. */
    static Edit edit(RunDocument document, int number) {
        return Edits.setting(
                document,
                number % 2 == 0 ? Scope.holder() : Scope.spot("" + (1 + number % 3)),
                "/identify/minimumSignificance",
                com.fasterxml.jackson.databind.node.DoubleNode.valueOf(5 + number / 1024.0));
    }
}
