package spotline.run.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.run.document.Operation;

/**
 * Operations on a document since its project was saved, one JSON line each, appended and on the disk before the operation
 * counts as done.
 *
 * <p>A line holds its sequence number, the hash of the document it was done to and, last, the sum of all before it in the
 * line. A last line that a crash tore is no line.
 */
final class Journal implements AutoCloseable {
    private static final String SUM = ",\"sum\":\"";
    private static final int TAIL = SUM.length() + 64 + 2;

    /** @param before hash of the document that the operation was done to */
    record Entry(long sequence, String before, Operation operation) {}

    /**
     * What stands in a journal.
     *
     * @param bytes length of the lines that are whole
     * @param damage the first line that is not, where it is not merely the torn end
     */
    record Contents(List<Entry> entries, long bytes, Optional<ReadException> damage) {
        Contents {
            entries = List.copyOf(entries);
        }
    }

    private final Path file;
    private final Storage.Target target;
    private long length;
    private boolean usable = true;

    private Journal(Path file, Storage.Target target, long length) {
        this.file = file;
        this.target = target;
        this.length = length;
    }

    static Path beside(Path project) {
        return project.resolveSibling(project.getFileName() + ".journal");
    }

    /** Errors: {@link ReadException} when the file is there but cannot be read. */
    static Contents read(Path file) throws ReadException {
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(file);
        } catch (NoSuchFileException e) {
            return new Contents(List.of(), 0, Optional.empty());
        } catch (IOException e) {
            throw new ReadException(Place.file(file.toString()), "a journal that cannot be read", "a readable file");
        }
        List<Entry> entries = new ArrayList<>();
        int start = 0;
        for (int line = 1; start < bytes.length; line++) {
            int end = start;
            while (end < bytes.length && bytes[end] != '\n') end++;
            boolean last = end >= bytes.length - 1;
            Optional<Entry> entry = end < bytes.length
                    ? entry(new String(bytes, start, end - start, StandardCharsets.UTF_8))
                    : Optional.empty();
            if (entry.isEmpty()) {
                ReadException fault = new ReadException(
                        Place.line(file.toString(), line),
                        "a line that is not what was written",
                        "an operation with its sum");
                return new Contents(entries, start, last ? Optional.empty() : Optional.of(fault));
            }
            entries.add(entry.get());
            start = end + 1;
        }
        return new Contents(entries, start, Optional.empty());
    }

    private static Optional<Entry> entry(String line) {
        int tail = line.length() - TAIL;
        if (tail < 1 || !line.startsWith(SUM, tail)) return Optional.empty();
        String text = line.substring(0, tail);
        if (!line.endsWith(Sums.of(text) + "\"}")) return Optional.empty();
        try {
            JsonNode json = ProjectText.tree("journal", (text + "}").getBytes(StandardCharsets.UTF_8));
            return Optional.of(new Entry(
                    json.path("seq").asLong(), json.path("before").asText(), EditJson.operation(json.path("op"))));
        } catch (ReadException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** @param length of the lines that are whole; what follows is taken away */
    static Journal open(Path file, Storage storage, long length) throws IOException {
        Storage.Target target = storage.append(file);
        target.cut(length);
        return new Journal(file, target, length);
    }

    /** Errors: {@link IOException} in one sentence; the journal then is as it was. */
    void append(Entry entry) throws IOException {
        if (!usable)
            throw new IOException(file + ": the journal could not be repaired after a failure; save the project");
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("seq", entry.sequence()).put("before", entry.before());
        json.set("op", EditJson.of(entry.operation()));
        String text = json.toString();
        String open = text.substring(0, text.length() - 1);
        byte[] bytes = (open + SUM + Sums.of(open) + "\"}\n").getBytes(StandardCharsets.UTF_8);
        try {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) target.write(buffer);
            target.force();
            length += bytes.length;
        } catch (IOException e) {
            try {
                target.cut(length);
            } catch (IOException worse) {
                usable = false;
                e.addSuppressed(worse);
            }
            throw new IOException(file + ": the edit could not be journalled, " + AtomicFile.reason(e), e);
        }
    }

    /** All of it stands in the project now. */
    void clear() throws IOException {
        target.cut(0);
        target.force();
        length = 0;
        usable = true;
    }

    @Override
    public void close() throws IOException {
        target.close();
    }
}
