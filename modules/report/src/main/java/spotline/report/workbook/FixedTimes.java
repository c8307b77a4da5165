package spotline.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A workbook with the time of day taken out of it, so that the same result gives the same bytes. */
final class FixedTimes {
    /** The earliest a ZIP entry can carry. */
    private static final LocalDateTime EARLIEST = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final String CORE = "docProps/core.xml";

    private FixedTimes() {}

    static byte[] of(byte[] workbook, Optional<Instant> made) {
        LocalDateTime told = made.map(time -> LocalDateTime.ofInstant(time, ZoneOffset.UTC))
                .filter(time -> time.isAfter(EARLIEST))
                .orElse(EARLIEST);
        String text =
                told.truncatedTo(ChronoUnit.SECONDS).toInstant(ZoneOffset.UTC).toString();
        ByteArrayOutputStream out = new ByteArrayOutputStream(workbook.length);
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts(workbook).entrySet()) {
                byte[] bytes = part.getValue();
                if (part.getKey().equals(CORE)) {
                    String core = new String(bytes, StandardCharsets.UTF_8);
                    bytes = core.replaceAll("(<dcterms:(?:created|modified)[^>]*>)[^<]*", "$1" + text)
                            .getBytes(StandardCharsets.UTF_8);
                }
                ZipEntry same = new ZipEntry(part.getKey());
                same.setTimeLocal(told);
                zip.putNextEntry(same);
                zip.write(bytes);
                zip.closeEntry();
            }
        } catch (IOException | DataFormatException e) {
            throw new IllegalStateException("a workbook in memory could not be read", e);
        }
        return out.toByteArray();
    }

    /**
     * The entries by the central directory: the local headers of a ZIP that was written as a stream do not tell sizes, and
     * the class library reads such a ZIP from a file only.
     *
     * <p>Source: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16.
     */
    private static Map<String, byte[]> parts(byte[] zip) throws DataFormatException {
        ByteBuffer in = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
        int end = zip.length - 22;
        while (in.getInt(end) != 0x06054b50) end--;
        int entries = in.getShort(end + 10) & 0xFFFF;
        int at = in.getInt(end + 16);
        Map<String, byte[]> parts = new LinkedHashMap<>();
        for (int i = 0; i < entries; i++) {
            int compressed = in.getInt(at + 20);
            int nameLength = in.getShort(at + 28);
            String name = new String(zip, at + 46, nameLength, StandardCharsets.UTF_8);
            int local = in.getInt(at + 42);
            int data = local + 30 + in.getShort(local + 26) + in.getShort(local + 28);
            byte[] bytes = new byte[in.getInt(at + 24)];
            if (in.getShort(at + 10) == 0) {
                System.arraycopy(zip, data, bytes, 0, bytes.length);
            } else {
                Inflater inflater = new Inflater(true);
                inflater.setInput(zip, data, compressed);
                int read = 0;
                while (read < bytes.length && !inflater.finished())
                    read += inflater.inflate(bytes, read, bytes.length - read);
                inflater.end();
            }
            parts.put(name, bytes);
            at += 46 + nameLength + in.getShort(at + 30) + in.getShort(at + 32);
        }
        return parts;
    }
}
