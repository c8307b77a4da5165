package spotline.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** A file too large to be made in memory, written beside its place and moved in: nobody ever reads half of it. */
final class StreamedFile {
    /** What fills the file. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private StreamedFile() {}

    /** Errors: {@link IOException} when it cannot be written; what stood there before then still stands. */
    static void write(Path target, Content content) throws IOException {
        // Not made of the target's name, which may fill what a name may have already.
        Path beside = target.resolveSibling(".spotline-" + UUID.randomUUID() + ".part");
        try {
            try (OutputStream out =
                    new BufferedOutputStream(Files.newOutputStream(beside, StandardOpenOption.CREATE_NEW))) {
                content.writeTo(out);
            }
            try {
                Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
