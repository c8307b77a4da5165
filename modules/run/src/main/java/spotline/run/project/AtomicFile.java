package spotline.run.project;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Replaces a file as a whole: after a crash at any moment either the old one stands there or the new one. */
final class AtomicFile {
    private AtomicFile() {}

    /** Writes a file's bytes. */
    @FunctionalInterface
    interface Body {
        void writeTo(OutputStream to) throws IOException;
    }

    /** Errors: {@link IOException} in one sentence; what stood there before then still stands. */
    static void write(Path target, Storage storage, Body body) throws IOException {
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            try (Storage.Target file = storage.create(part)) {
                OutputStream buffered = new BufferedOutputStream(Channels.newOutputStream(file), 1 << 16);
                body.writeTo(buffered);
                buffered.flush();
                file.force();
            }
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            forceFolder(target);
        } catch (IOException e) {
            try {
                Files.deleteIfExists(part);
            } catch (IOException left) {
                e.addSuppressed(left);
            }
            String still = Files.exists(target) ? "; what was saved there before still stands" : "";
            throw new IOException(target + ": could not be saved, " + reason(e) + still, e);
        }
    }

    /** What an exception of the file system says, without the file's name. */
    static String reason(IOException e) {
        if (e instanceof AccessDeniedException) return "it may not be written";
        if (e instanceof NoSuchFileException) return "its folder is not there";
        if (e instanceof java.nio.file.FileSystemException fs && fs.getReason() != null) return fs.getReason();
        return String.valueOf(e.getMessage());
    }

    /** A name is only safe when its folder is on the disk too; systems that cannot do that with folders do it by themselves. */
    private static void forceFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) return;
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            return;
        }
    }
}
