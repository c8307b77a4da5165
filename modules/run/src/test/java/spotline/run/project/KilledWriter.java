package spotline.run.project;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import spotline.core.ReadException;
import spotline.run.document.History;
import spotline.run.document.Operation;

/**
 * A process that edits and saves a project until it is killed. It tells what it will have made of the document, and then
 * that it has: {@code will HASH}, {@code did HASH}.
 */
final class KilledWriter {
    private KilledWriter() {}

    public static void main(String[] args) throws ReadException, IOException {
        PrintStream out =
                new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.out), true, StandardCharsets.UTF_8);
        Random random = new Random(Long.parseLong(args[1]));
        Writer writer = new Writer(
                "killed writer", "here", ProcessHandle.current().pid(), OffsetDateTime.parse("2026-05-12T09:00:00Z"));
        ProjectSession session = ProjectSession.open(Path.of(args[0]), writer);
        Thread saving = new Thread(() -> saveOnAndOn(session, new Random(random.nextLong())));
        saving.setDaemon(true);
        saving.start();
        for (int i = 0; i < 100_000; i++) {
            Operation operation = operation(session.history(), random);
            out.println("will " + operation.on(session.history()).document().hash());
            out.println("did " + session.done(operation).document().hash());
        }
    }

    private static void saveOnAndOn(ProjectSession session, Random random) {
        try {
            while (true) {
                session.save(Map.of("some.bin", new byte[random.nextInt(50_000)]), Projects.STAMP);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static Operation operation(History history, Random random) {
        int kind = random.nextInt(10);
        if (kind == 0 && history.lastDone().isPresent()) return new Operation.Undo();
        if (kind == 1 && history.nextUndone().isPresent()) return new Operation.Redo();
        if (kind == 2) return new Operation.Mark("mark " + random.nextInt(4), Optional.empty());
        return new Operation.Apply(Projects.edit(history.document(), random.nextInt(1000)));
    }
}
