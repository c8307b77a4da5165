package spotline.formats.iso14976;

import java.nio.charset.StandardCharsets;
import spotline.formats.source.LineSource;
import spotline.formats.source.Probe;

/** Tells a file of ISO 14976 from its head: the first line names the format. */
public final class Iso14976Probe {
    private Iso14976Probe() {}

    /** @param head the first bytes of the file, as many as {@link Probe#HEAD_BYTES} */
    public static Probe probe(byte[] head) {
        int end = 0;
        while (end < head.length && end < 200 && head[end] != '\n' && head[end] != '\r') end++;
        String line = new String(head, 0, end, StandardCharsets.UTF_8);
        String plain = line.startsWith("\uFEFF") ? line.substring(1) : line;
        String format = "ISO 14976";
        if (Iso14976Parser.startsLikeFormat(plain)) {
            return new Probe(format, Probe.Verdict.SURE, "the first line is its format identifier");
        }
        if (plain.regionMatches(true, 0, ExperimentHeader.FORMAT_WORDS, 0, 5)) {
            return new Probe(format, Probe.Verdict.MAYBE, "the first line begins like its format identifier");
        }
        return new Probe(format, Probe.Verdict.NO, "the first line is " + LineSource.quote(plain));
    }
}
