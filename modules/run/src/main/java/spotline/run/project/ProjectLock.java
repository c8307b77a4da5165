package spotline.run.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * One writer a project. The system takes the lock away from a process that dies, whatever the file says.
 *
 * <p>One byte far behind the text is locked, so that others can read who holds it.
 */
final class ProjectLock implements AutoCloseable {
    private static final long LOCKED_BYTE = 1L << 30;
    private static final int TRIES = 10;

    private final Path file;
    private final FileChannel channel;

    private ProjectLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    static Path beside(Path project) {
        return project.resolveSibling(project.getFileName() + ".lock");
    }

    /** Errors: {@link ReadException} that names the other writer. */
    static ProjectLock take(Path project, Writer writer) throws ReadException {
        Path file = beside(project);
        byte[] text = ProjectText.bytes(JsonNodeFactory.instance
                .objectNode()
                .put("who", writer.who())
                .put("host", writer.host())
                .put("process", writer.process())
                .put("since", writer.since().toString()));
        try {
            for (int i = 0; i < TRIES; i++) {
                FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                if (!locked(channel)) {
                    channel.close();
                    throw held(project, file);
                }
                channel.truncate(0);
                channel.write(ByteBuffer.wrap(text), 0);
                // The holder before may have deleted the file between its opening here and its locking.
                if (Files.exists(file) && Arrays.equals(Files.readAllBytes(file), text)) {
                    return new ProjectLock(file, channel);
                }
                channel.close();
            }
            throw held(project, file);
        } catch (IOException e) {
            throw new ReadException(
                    Place.file(file.toString()),
                    "a lock that cannot be taken (" + AtomicFile.reason(e) + ")",
                    "a folder that may be written");
        }
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            @Nullable FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    private static ReadException held(Path project, Path file) {
        String by = "another program";
        try {
            JsonNode json = ProjectText.tree(file.toString(), Files.readAllBytes(file));
            by = json.path("who").asText("somebody") + " on "
                    + json.path("host").asText("an unknown machine")
                    + " since " + json.path("since").asText("an unknown time") + " (process "
                    + json.path("process").asText("unknown") + ")";
        } catch (ReadException | IOException e) {
            by = "another program that has just opened it";
        }
        return new ReadException(
                Place.file(project.toString()), "a project that is open for " + by, "one writer at a time");
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(file);
        channel.close();
    }
}
