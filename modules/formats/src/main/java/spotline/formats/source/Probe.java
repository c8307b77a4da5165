package spotline.formats.source;

import static java.util.Objects.requireNonNull;

/**
 * How sure a reader is that a file is its own, from the file's head alone.
 *
 * @param format name of the format, as messages and files give it
 * @param reason what was seen, one clause
 */
public record Probe(String format, Verdict verdict, String reason) {
    /** Rising certainty. */
    public enum Verdict {
        NO,
        MAYBE,
        SURE
    }

    /** Bytes of a file that a probe looks at. */
    public static final int HEAD_BYTES = 64 << 10;

    public Probe {
        requireNonNull(format, "format");
        requireNonNull(verdict, "verdict");
        requireNonNull(reason, "reason");
    }
}
