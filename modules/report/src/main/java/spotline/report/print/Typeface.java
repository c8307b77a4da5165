package spotline.report.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Widths of text in the typeface that ships with the program, and what of a text the typeface can show. */
public final class Typeface {
    private static final int REPLACEMENT = 0xFFFD;
    /** Latin and Greek. */
    private static final int COMMON = 0x400;

    /** A font with what is asked of it most. */
    private static final class Cut {
        private final TrueTypeFont font;
        private final CmapLookup glyphs;
        private final int unitsPerEm;
        private final int[] advances = new int[COMMON];

        Cut(TrueTypeFont font) throws IOException {
            this.font = font;
            glyphs = font.getUnicodeCmapLookup();
            unitsPerEm = font.getUnitsPerEm();
            for (int code = 0; code < COMMON; code++) advances[code] = font.getAdvanceWidth(glyphs.getGlyphId(code));
        }

        boolean has(int code) {
            return glyphs.getGlyphId(code) > 0;
        }

        int advance(int code) {
            if (code < COMMON) return advances[code];
            try {
                return font.getAdvanceWidth(glyphs.getGlyphId(code));
            } catch (IOException e) {
                throw new UncheckedIOException("a font that ships with the program cannot be read", e);
            }
        }
    }

    private final Map<Weight, Cut> cuts = new EnumMap<>(Weight.class);

    public Typeface() {
        for (Weight weight : Weight.values()) {
            try (InputStream in = open(weight)) {
                TrueTypeFont font =
                        new TTFParser().parse(new RandomAccessReadBuffer(GlyphTables.of(in.readAllBytes())));
                cuts.put(weight, new Cut(font));
            } catch (IOException e) {
                throw new UncheckedIOException("the font " + weight.resource() + " cannot be read", e);
            }
        }
    }

    public static InputStream open(Weight weight) {
        return Objects.requireNonNull(Typeface.class.getResourceAsStream(weight.resource()), weight.resource());
    }

    private Cut cut(Weight weight) {
        return Objects.requireNonNull(cuts.get(weight));
    }

    /** The text on one line, with a replacement character for what the typeface cannot show. */
    public String shown(String text, Weight weight) {
        if (plain(text)) return text;
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(code -> {
            boolean blank = Character.isWhitespace(code) || Character.isISOControl(code) || Character.isSpaceChar(code);
            if (blank) shown.append(' ');
            else if (cut(weight).has(code)) shown.appendCodePoint(code);
            else shown.appendCodePoint(REPLACEMENT);
        });
        return shown.toString();
    }

    private static boolean plain(String text) {
        for (int i = 0; i < text.length(); i++) if (text.charAt(i) < ' ' || text.charAt(i) > '~') return false;
        return true;
    }

    public double widthMm(String text, double sizeMm, Weight weight) {
        Cut cut = cut(weight);
        long units = 0;
        for (int i = 0; i < text.length(); ) {
            int code = text.codePointAt(i);
            units += cut.advance(code);
            i += Character.charCount(code);
        }
        return units * sizeMm / cut.unitsPerEm;
    }

    TrueTypeFont font(Weight weight) {
        return cut(weight).font;
    }

    /** Text broken into lines that fit a width: between words, or inside one that alone is too long. */
    public List<String> lines(String text, double widthMm, double sizeMm, Weight weight) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : shown(text, weight).strip().split(" +")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (widthMm(longer, sizeMm, weight) <= widthMm) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) lines.add(line);
            line = word;
            while (widthMm(line, sizeMm, weight) > widthMm && line.length() > 1) {
                int end = fitting(line, widthMm, sizeMm, weight);
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        if (!line.isEmpty()) lines.add(line);
        return lines;
    }

    private int fitting(String word, double widthMm, double sizeMm, Weight weight) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int next = word.offsetByCodePoints(end, 1);
            if (widthMm(word.substring(0, next), sizeMm, weight) > widthMm) break;
            end = next;
        }
        return end;
    }

    /** The text, cut with three dots where it would be wider than it may. */
    public String cut(String text, double widthMm, double sizeMm, Weight weight) {
        String shown = shown(text, weight).strip();
        if (widthMm(shown, sizeMm, weight) <= widthMm) return shown;
        String dots = "...";
        int end = shown.length();
        while (end > 0 && widthMm(shown.substring(0, end) + dots, sizeMm, weight) > widthMm) {
            end = shown.offsetByCodePoints(end, -1);
        }
        return shown.substring(0, end).stripTrailing() + dots;
    }
}
