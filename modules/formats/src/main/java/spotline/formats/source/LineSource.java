package spotline.formats.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.regex.Pattern;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * The lines of a file as bytes, one at a time, from a buffer of bounded size: a line of numbers never becomes a string.
 *
 * <p>A line ends with LF or CR LF, or with CR alone in a file whose first line does; the last may end with the file. Not
 * thread-safe.
 */
public final class LineSource {
    private static final int CHUNK = 64 << 10;

    /** Characters that move a cursor, break a line or turn the direction of the text around them. */
    private static final Pattern UNSEEN =
            Pattern.compile("[\\p{Cntrl}\\x80-\\x9f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ufeff]");

    private static final int SHOWN = 60;

    private enum LineEnds {
        NOT_MET,
        LF,
        CR
    }

    private final String name;
    private final InputStream in;
    private final long size;
    private final ReadLimits limits;

    private byte[] buffer = new byte[CHUNK];
    private int filled;
    private int next;
    private long read;

    private int start;
    private int end;
    private int line;
    private boolean terminated;
    private boolean crLf;
    private boolean ended;
    private LineEnds lineEnds = LineEnds.NOT_MET;

    /**
     * @param name as messages give it
     * @param size bytes of the whole file as far as known; a negative number when not
     */
    public LineSource(String name, InputStream in, long size, ReadLimits limits) {
        this.name = name;
        this.in = in;
        this.size = size;
        this.limits = limits;
    }

    /**
     * Moves to the next line; false when the file has ended, then the place stays at the last line.
     *
     * <p>Errors: {@link ReadException} when a line or the file is longer than the limits, or cannot be read.
     */
    public boolean next() throws ReadException {
        int scan = next;
        while (true) {
            while (scan < filled && buffer[scan] != '\n') scan++;
            if (scan < filled) {
                accept(scan, scan + 1, true);
                return true;
            }
            if (filled - next > limits.lineBytes()) throw tooLong();
            int kept = filled - next;
            if (!fill()) {
                if (kept == 0) {
                    ended = true;
                    return false;
                }
                accept(filled, filled, false);
                return true;
            }
            scan = next + kept;
        }
    }

    private void accept(int lineEnd, int nextLine, boolean ended) throws ReadException {
        start = next;
        end = lineEnd;
        line++;
        terminated = ended;
        crLf = ended && end > start && buffer[end - 1] == '\r';
        while (end > start && buffer[end - 1] == '\r') end--;
        next = nextLine;
        if (end - start > limits.lineBytes()) {
            line--;
            throw tooLong();
        }
    }

    private ReadException tooLong() {
        return new ReadException(
                Place.line(name, line + 1),
                "a line longer than " + limits.lineBytes() + " bytes",
                "lines of at most that length");
    }

    private boolean fill() throws ReadException {
        if (next > 0) {
            System.arraycopy(buffer, next, buffer, 0, filled - next);
            filled -= next;
            next = 0;
        }
        if (filled == buffer.length) buffer = Arrays.copyOf(buffer, buffer.length * 2);
        int got;
        try {
            got = in.read(buffer, filled, buffer.length - filled);
        } catch (IOException e) {
            throw new ReadException(
                    Place.line(name, line + 1), "the file could not be read on", "a file that can be read to its end");
        }
        if (got <= 0) return false;
        filled += got;
        read += got;
        if (lineEnds != LineEnds.LF) turnLoneCarriageReturns(filled - got);
        if (read > limits.fileBytes()) {
            throw new ReadException(
                    Place.file(name),
                    "a file longer than " + limits.fileBytes() + " bytes",
                    "a file of at most that length");
        }
        return true;
    }

    /** In a file whose first line ends with CR alone, every CR is made the LF it stands for. */
    private void turnLoneCarriageReturns(int from) {
        int at = Math.max(0, from - 1);
        while (lineEnds == LineEnds.NOT_MET && at < filled) {
            if (buffer[at] == '\n') lineEnds = LineEnds.LF;
            boolean alone = buffer[at] == '\r' && at + 1 < filled && buffer[at + 1] != '\r' && buffer[at + 1] != '\n';
            if (alone) lineEnds = LineEnds.CR;
            else at++;
        }
        if (lineEnds != LineEnds.CR) return;
        for (int i = Math.min(at, from); i < filled; i++) if (buffer[i] == '\r') buffer[i] = '\n';
    }

    /** Whether the file's lines end with CR alone. */
    public boolean loneCarriageReturns() {
        return lineEnds == LineEnds.CR;
    }

    /** Number of the current line, counted from 1; 0 before the first. */
    public int line() {
        return line;
    }

    public Place place() {
        return line > 0 ? Place.line(name, line) : Place.file(name);
    }

    /** The place of an earlier line. */
    public Place placeOf(int earlierLine) {
        return Place.line(name, earlierLine);
    }

    /** False when the file ended within the current line. */
    public boolean terminated() {
        return terminated;
    }

    /** Whether a line was asked for after the last. */
    public boolean ended() {
        return ended;
    }

    /** Whether the current line ended with CR LF. */
    public boolean crLf() {
        return crLf;
    }

    /** The bytes the current line lies in, from {@link #start()} to {@link #end()}: to read, never to keep. */
    public byte[] bytes() {
        return buffer;
    }

    public int start() {
        return start;
    }

    public int end() {
        return end;
    }

    public boolean sizeKnown() {
        return size >= 0;
    }

    /** So many bytes follow the current line, as far as the size is known. */
    public long bytesLeft() {
        return Math.max(size, read) - read + (filled - next);
    }

    /** Whether the current line has a byte beyond ASCII. */
    public boolean beyondAscii() {
        for (int i = start; i < end; i++) if (buffer[i] < 0) return true;
        return false;
    }

    /** The current line word for word: UTF-8 where its bytes are that (ASCII is), else ISO 8859-1. */
    public String text() {
        if (!beyondAscii()) return new String(buffer, start, end - start, StandardCharsets.US_ASCII);
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(buffer, start, end - start))
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            return new String(buffer, start, end - start, StandardCharsets.ISO_8859_1);
        }
    }

    /** The current line for a message: quoted, cut to a readable length, control characters shown as a question mark. */
    public String quoted() {
        return quote(text());
    }

    /** A text from a file as a message shows it: quoted and cut to a readable length. */
    public static String quote(String text) {
        String cut = text;
        if (text.length() > SHOWN) {
            boolean half = Character.isHighSurrogate(text.charAt(SHOWN - 1));
            cut = text.substring(0, half ? SHOWN - 1 : SHOWN) + "...";
        }
        return "\"" + UNSEEN.matcher(cut).replaceAll("?") + "\"";
    }
}
