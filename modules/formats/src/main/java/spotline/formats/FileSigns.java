package spotline.formats;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import spotline.formats.source.LineSource;

/** Files that are plainly something else: unsupported, not damaged. */
final class FileSigns {
    /** First bytes, as ISO 8859-1, of formats that announce themselves by them. */
    private static final Map<String, String> SIGNS = Map.of(
            "PK\u0003\u0004", "a ZIP archive",
            "\u0089HDF", "an HDF5 file",
            "%PDF", "a PDF document",
            "<?xml", "an XML document",
            "##", "labelled data records, perhaps of JCAMP-DX");

    private FileSigns() {}

    /** What a file seems to be, for a message. */
    static String describe(byte[] head) {
        if (head.length == 0) return "an empty file";
        String start = new String(head, 0, Math.min(head.length, 200), StandardCharsets.ISO_8859_1);
        for (Map.Entry<String, String> sign : SIGNS.entrySet()) {
            if (start.startsWith(sign.getKey())) return sign.getValue();
        }
        if (isBinary(head)) return "a binary file of an unknown kind";
        return "the first line " + LineSource.quote(start.lines().findFirst().orElse(""));
    }

    /** Whether a byte is there that no text has. */
    static boolean isBinary(byte[] head) {
        for (byte b : head) if (b == 0) return true;
        return false;
    }
}
