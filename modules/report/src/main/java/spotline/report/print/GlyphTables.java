package spotline.report.print;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A TrueType font without what joins and kerns its letters: a PDF's reader that searches the text must find them single, and
 * to read those tables takes longer than to write a page.
 *
 * <p>Source: ISO/IEC 14496-22 (OpenType), the table directory.
 */
final class GlyphTables {
    private static final Set<String> LEFT_OUT = Set.of("GSUB", "GPOS", "GDEF", "kern", "gasp", "FFTM");
    private static final int HEADER = 12;
    private static final int ENTRY = 16;

    private GlyphTables() {}

    static byte[] of(byte[] font) {
        ByteBuffer in = ByteBuffer.wrap(font);
        int count = in.getShort(4);
        List<Integer> kept = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int entry = HEADER + i * ENTRY;
            if (!LEFT_OUT.contains(new String(font, entry, 4, StandardCharsets.US_ASCII))) kept.add(entry);
        }
        // The tables stay where they are: the directory alone grows shorter.
        byte[] same = font.clone();
        ByteBuffer out = ByteBuffer.wrap(same);
        out.putShort(4, (short) kept.size());
        for (int i = 0; i < kept.size(); i++) {
            System.arraycopy(font, kept.get(i), same, HEADER + i * ENTRY, ENTRY);
        }
        return same;
    }
}
