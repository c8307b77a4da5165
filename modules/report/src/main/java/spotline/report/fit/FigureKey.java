package spotline.report.fit;

import java.util.ArrayList;
import java.util.List;
import spotline.report.figure.CurveStyle;

/** Where the entries of a drawing's key stand: two columns, a row of its own for what is longer, broken between words. */
final class FigureKey {
    /** Room before a text for the sample of its curve, px. */
    static final int SAMPLE = 30;

    /** Widest usual mean advance of a sans-serif face at 11 px; the reader's face is not known. Common practice, no source. */
    private static final double CHARACTER = 6.4;

    private FigureKey() {}

    record Entry(String meaning, CurveStyle style) {}

    /** An entry with its lines; rows count from the top, x from the left edge of the key. */
    record Placed(int x, int row, List<String> lines, CurveStyle style) {}

    static List<Placed> placed(List<Entry> entries, int width) {
        int column = width / 2;
        List<Placed> placed = new ArrayList<>();
        int row = 0;
        int used = 0;
        for (Entry entry : entries) {
            boolean whole = width(entry.meaning()) > column - SAMPLE;
            if (used > 0 && (whole || used == 2)) {
                row++;
                used = 0;
            }
            List<String> lines = lines(entry.meaning(), width - SAMPLE);
            placed.add(new Placed(used * column, row, lines, entry.style()));
            if (whole) row += lines.size();
            else used++;
        }
        return placed;
    }

    static int rows(List<Placed> placed) {
        return placed.stream().mapToInt(p -> p.row() + p.lines().size()).max().orElse(0);
    }

    /** Broken before the words, and inside those longer than a line, that would not fit. */
    static List<String> lines(String text, int width) {
        int most = (int) (width / CHARACTER);
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0 && length(line) + 1 + length(word) > most) {
                lines.add(line.toString());
                line.setLength(0);
            }
            if (line.length() > 0) line.append(' ');
            line.append(word);
            while (length(line) > most) {
                int end = line.offsetByCodePoints(0, most);
                lines.add(line.substring(0, end));
                line.delete(0, end);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    private static double width(String text) {
        return CHARACTER * length(text);
    }

    private static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
