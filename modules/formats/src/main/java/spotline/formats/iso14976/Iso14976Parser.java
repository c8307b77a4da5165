package spotline.formats.iso14976;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/**
 * Reads a file of ISO 14976 block by block.
 *
 * <p>Errors: {@link ReadException} with file and line for a fault that leaves the rest of the file without meaning. What
 * can be lived with is told by {@link #warnings()}. A file that ends too early keeps its whole blocks, with a caution
 * that says which are lost; without a whole block it is refused.
 *
 * <p>Source: ISO 14976:1998; W.A. Dench, L.B. Hazell, M.P. Seah, Surf. Interface Anal. 13 (1988) 63.
 */
public final class Iso14976Parser {
    static final String END = "end of experiment";

    private final LineSource lines;
    private final ParserPort port;
    private final Warnings warnings;
    private final ExperimentHeader header;
    private final int blocks;

    private ExperimentBlock previous = ExperimentBlock.UNKNOWN;
    private int read;
    private int blockLine;
    private boolean finished;

    /** A file read to its end. */
    public record Parsed(Experiment experiment, List<Integer> blockLines, List<Finding> warnings) {
        public Parsed {
            blockLines = List.copyOf(blockLines);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Reads the experiment header.
     *
     * @param name of the file, as messages give it
     * @param size bytes of the whole file; a negative number when not known
     */
    public Iso14976Parser(String name, InputStream in, long size, ReadLimits limits) throws ReadException {
        this.lines = new LineSource(name, in, size, limits);
        this.warnings = new Warnings(name);
        this.port = new ParserPort(lines, limits, warnings);
        this.header = HeaderItems.exchange(port, formatIdentifier(), ExperimentHeader.norm("", "", "", "", List.of()));
        this.blocks = port.whole("number of blocks", 0, 0, limits.blocks());
        if (blocks == 0) throw port.fault("found no block", "1 or more: number of blocks");
    }

    /** The whole file at once. */
    public static Parsed parse(String name, InputStream in, long size, ReadLimits limits) throws ReadException {
        Iso14976Parser parser = new Iso14976Parser(name, in, size, limits);
        List<ExperimentBlock> blocks = new ArrayList<>();
        List<Integer> blockLines = new ArrayList<>();
        Optional<ExperimentBlock> block = parser.next();
        while (block.isPresent()) {
            blocks.add(block.get());
            blockLines.add(parser.blockLine());
            block = parser.next();
        }
        return new Parsed(new Experiment(parser.header(), blocks), blockLines, parser.warnings());
    }

    private String formatIdentifier() throws ReadException {
        String identifier = port.text("format identifier", ExperimentHeader.FORMAT_IDENTIFIER);
        String plain = identifier.startsWith("\uFEFF") ? identifier.substring(1) : identifier;
        if (plain.equals(ExperimentHeader.FORMAT_IDENTIFIER)) return plain;
        if (!startsLikeFormat(plain)) {
            throw port.fault("found " + lines.quoted(), "\"" + ExperimentHeader.FORMAT_IDENTIFIER + "\"");
        }
        warnings.note(
                "iso14976-format-identifier",
                lines.line(),
                "the format identifier is " + LineSource.quote(plain) + ", in the standard \""
                        + ExperimentHeader.FORMAT_IDENTIFIER + "\"; read as that edition");
        return plain;
    }

    /** Whether a first line names the format, whatever the edition's date and the case of the letters. */
    static boolean startsLikeFormat(String line) {
        return line.strip().toLowerCase(Locale.ROOT).startsWith(ExperimentHeader.FORMAT_WORDS.toLowerCase(Locale.ROOT));
    }

    public ExperimentHeader header() {
        return header;
    }

    /** Number of blocks that the header announces. */
    public int announcedBlocks() {
        return blocks;
    }

    /** Line of the block identifier of the block last read, counted from 1. */
    public int blockLine() {
        return blockLine;
    }

    /** What could be lived with, so far. */
    public List<Finding> warnings() {
        return warnings.findings();
    }

    /** The next block; empty after the last, when the end of the file has been checked too. */
    public Optional<ExperimentBlock> next() throws ReadException {
        if (finished) return Optional.empty();
        if (read == blocks) {
            finished = true;
            readEnd();
            return Optional.empty();
        }
        if (read == 1) port.carry(header.inclusion().carried());
        int line = lines.line() + 1;
        try {
            ExperimentBlock block = BlockItems.exchange(header, port, previous);
            if (!lines.terminated() && read + 1 < blocks) {
                throw port.fault("the file ends here, perhaps within a value", "block " + (read + 2) + " of " + blocks);
            }
            previous = block;
        } catch (ReadException fault) {
            if (read == 0 || !fileHasEnded()) throw fault;
            finished = true;
            tellTruncation(line);
            return Optional.empty();
        }
        blockLine = line;
        read++;
        return Optional.of(previous);
    }

    /** A fault in a line that the file's end has cut is the file's end, not the line's fault. */
    private boolean fileHasEnded() {
        return lines.ended() || (!lines.terminated() && !lines.text().strip().equalsIgnoreCase(END));
    }

    private void tellTruncation(int blockStart) {
        int lost = blocks - read;
        String which =
                lost == 1 ? "block " + blocks + " is lost" : "blocks " + (read + 1) + " to " + blocks + " are lost";
        warnings.caution(
                "iso14976-truncated",
                lines.line(),
                "the file ends here, within block " + (read + 1) + " of " + blocks + ", which begins at line "
                        + blockStart + "; " + which);
    }

    private void readEnd() throws ReadException {
        boolean cut = !lines.terminated();
        int lastValue = lines.line();
        boolean more = nextNotBlank();
        if (!more) {
            String doubt = cut ? "; the last value has no line end and may be cut short" : "";
            warnings.caution(
                    "iso14976-no-end-marker", lastValue, "the file ends without the line \"" + END + "\"" + doubt);
            return;
        }
        String found = lines.text().strip();
        if (found.equals(END) || found.equalsIgnoreCase(END)) {
            if (!lines.text().equals(END)) {
                warnings.note(
                        "iso14976-end-marker",
                        lines.line(),
                        "the end marker is spelled " + lines.quoted() + ", in the standard \"" + END + "\"");
            }
        } else if (!lines.terminated() && END.startsWith(found.toLowerCase(Locale.ROOT))) {
            warnings.caution("iso14976-no-end-marker", lines.line(), "the file ends within the line \"" + END + "\"");
        } else {
            throw port.fault("found " + lines.quoted(), "\"" + END + "\" after block " + blocks);
        }
        readRest();
    }

    /** Moves over blank lines; false at the end of the file. */
    private boolean nextNotBlank() throws ReadException {
        while (lines.next()) {
            port.watchLineEnd();
            if (!lines.text().isBlank()) return true;
            warnings.note("iso14976-blank-line", lines.line(), "a blank line where none belongs");
        }
        return false;
    }

    private void readRest() throws ReadException {
        while (nextNotBlank()) {
            warnings.caution(
                    "iso14976-text-after-end",
                    lines.line(),
                    "text after the end of the experiment, " + lines.quoted() + "; it is not read");
        }
    }
}
