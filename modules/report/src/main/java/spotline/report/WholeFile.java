package spotline.report;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file beside its place and moves it in: nobody ever reads half of it. */
public final class WholeFile {
    private WholeFile() {}

    /** Errors: {@link IOException} when it cannot be written; what stood there before then still stands. */
    public static void write(Path target, byte[] bytes) throws IOException {
        Path beside = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            Files.write(beside, bytes);
        } catch (IOException e) {
            Files.deleteIfExists(beside);
            // What the system says of a full disk names no file.
            boolean named = e instanceof FileSystemException;
            throw named ? e : new IOException(target + " cannot be written: " + e.getMessage(), e);
        }
        try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            Files.deleteIfExists(beside);
            throw e;
        }
    }
}
