package spotline.formats.iso14976;

import java.io.BufferedWriter;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/**
 * Writes an experiment in the one spelling of this program: lines end with LF, numbers are the shortest that read back
 * as the same double, "not known" is 1E37. What it writes reads back equal in every field. ASCII as far as the texts are,
 * else UTF-8.
 */
public final class Iso14976Writer {
    private Iso14976Writer() {}

    /** The stream is flushed, not closed. */
    public static void write(Experiment experiment, OutputStream out) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 16);
        try {
            append(experiment, writer);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        writer.flush();
    }

    public static String text(Experiment experiment) {
        StringBuilder text = new StringBuilder();
        append(experiment, text);
        return text.toString();
    }

    private static void append(Experiment experiment, Appendable out) {
        ExperimentHeader header = experiment.header();
        WriterPort port = new WriterPort(out);
        try {
            port.line(header.formatIdentifier());
            HeaderItems.exchange(port, header.formatIdentifier(), header);
            port.line(Integer.toString(experiment.blocks().size()));
            for (ExperimentBlock block : experiment.blocks()) {
                BlockItems.exchange(header, port, block);
                port.carry(header.inclusion().carried());
            }
            port.line(Iso14976Parser.END);
        } catch (ReadException impossible) {
            throw new IllegalStateException("a value in memory cannot fail to be read", impossible);
        }
    }

    /** Whether a block that carries these items alone reads back equal behind the block before. */
    static boolean readsBack(ExperimentHeader header, ExperimentBlock block, ExperimentBlock before, BitSet carried)
            throws ReadException {
        // A block never begins a file: the line before it says how lines end.
        StringBuilder text = new StringBuilder("\n");
        WriterPort writer = new WriterPort(text);
        writer.carry(carried);
        BlockItems.exchange(header, writer, block);
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        LineSource lines = new LineSource("block", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT);
        ParserPort parser = new ParserPort(lines, ReadLimits.DEFAULT, new Warnings("block"));
        parser.carry(carried);
        try {
            lines.next();
            return BlockItems.exchange(header, parser, before).equals(block) && !lines.next();
        } catch (ReadException unlikeAnyBlock) {
            return false;
        }
    }
}
