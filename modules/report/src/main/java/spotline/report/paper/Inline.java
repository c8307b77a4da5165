package spotline.report.paper;

import java.util.ArrayList;
import java.util.List;
import spotline.report.print.Canvas;
import spotline.report.print.Ink;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/** Text in a line: words in regular and bold, black and grey, broken where a line is full. */
final class Inline {
    /** A stretch of one look. */
    record Run(String text, Weight weight, Ink ink) {}

    /** Parts that no blank parts. */
    private static final class Word {
        private final List<Run> parts;
        /** Of type of 1 mm, mm. */
        private final double width;

        Word(Typeface typeface, List<Run> parts) {
            this.parts = parts;
            double sum = 0;
            for (Run run : parts) sum += typeface.widthMm(run.text(), 1, run.weight());
            width = sum;
        }
    }

    /** @param runs from left to right, a blank at the end of each but the last where one belongs there */
    record Line(List<Run> runs) {
        double widthMm(Typeface typeface, double size) {
            double width = 0;
            for (Run run : runs) width += typeface.widthMm(run.text(), size, run.weight());
            return width;
        }

        void draw(Canvas page, double x, double baseline, double size) {
            double at = x;
            for (Run run : runs) {
                page.wordsAt(at, baseline, size, run.weight(), run.ink(), run.text());
                at += page.typeface().widthMm(run.text(), size, run.weight());
            }
        }
    }

    private final Typeface typeface;
    private final List<Word> words = new ArrayList<>();
    private boolean joined;

    private Inline(Typeface typeface) {
        this.typeface = typeface;
    }

    static Inline of(Typeface typeface, PageNode.Element element, Weight weight, Ink ink) {
        Inline inline = new Inline(typeface);
        inline.add(element, weight, ink);
        return inline;
    }

    boolean isEmpty() {
        return words.isEmpty();
    }

    private void add(PageNode.Element element, Weight weight, Ink ink) {
        boolean bold = element.tag().equals("strong") || element.is("severity") || element.is("verdict");
        boolean grey = element.is("source") || element.is("missing") || element.is("where");
        Weight own = bold ? Weight.BOLD : weight;
        Ink colour = grey ? Ink.DARK : ink;
        if (element.is("setting") || element.tag().equals("br")) joined = false;
        for (PageNode child : element.children()) {
            if (child instanceof PageNode.Text text) add(text.text(), own, colour);
            else if (child instanceof PageNode.Element inner) add(inner, own, colour);
        }
    }

    private void add(String text, Weight weight, Ink ink) {
        int at = 0;
        while (at < text.length()) {
            int from = at;
            while (at < text.length() && !blank(text.charAt(at))) at++;
            if (at > from) {
                Run run = new Run(typeface.shown(text.substring(from, at), weight), weight, ink);
                if (joined) {
                    List<Run> parts = new ArrayList<>(words.remove(words.size() - 1).parts);
                    parts.add(run);
                    words.add(new Word(typeface, List.copyOf(parts)));
                } else {
                    words.add(new Word(typeface, List.of(run)));
                }
                joined = true;
            }
            while (at < text.length() && blank(text.charAt(at))) {
                at++;
                joined = false;
            }
        }
    }

    private static boolean blank(char c) {
        return c == ' ' || c == '\n' || c == '\t' || c == '\r';
    }

    /** Of the whole on one line. */
    double naturalMm(double size) {
        double width = 0;
        for (Word word : words) width += word.width * size;
        double blank = typeface.widthMm(" ", size, Weight.BOLD);
        return width + blank * Math.max(0, words.size() - 1);
    }

    double longestWordMm(double size) {
        double longest = 0;
        for (Word word : words) longest = Math.max(longest, word.width * size);
        return longest;
    }

    List<Line> lines(double widthMm, double size) {
        List<Line> lines = new ArrayList<>();
        List<Run> line = new ArrayList<>();
        double used = 0;
        for (Word whole : words) {
            for (Word word : fitting(whole, widthMm, size)) {
                double width = word.width * size;
                double blank = line.isEmpty()
                        ? 0
                        : typeface.widthMm(" ", size, line.get(line.size() - 1).weight());
                if (!line.isEmpty() && used + blank + width > widthMm + 1e-6) {
                    lines.add(new Line(List.copyOf(line)));
                    line.clear();
                    used = 0;
                    blank = 0;
                }
                if (!line.isEmpty()) {
                    Run last = line.remove(line.size() - 1);
                    line.add(new Run(last.text() + " ", last.weight(), last.ink()));
                }
                for (Run run : word.parts) append(line, run);
                used += blank + width;
            }
        }
        if (!line.isEmpty()) lines.add(new Line(List.copyOf(line)));
        return lines;
    }

    private static void append(List<Run> line, Run run) {
        if (!line.isEmpty()) {
            Run last = line.get(line.size() - 1);
            if (last.weight() == run.weight() && last.ink().equals(run.ink())) {
                line.set(line.size() - 1, new Run(last.text() + run.text(), run.weight(), run.ink()));
                return;
            }
        }
        line.add(run);
    }

    /** A word that is wider than a line, in pieces that are not. */
    private List<Word> fitting(Word word, double widthMm, double size) {
        if (word.width * size <= widthMm) return List.of(word);
        List<Word> pieces = new ArrayList<>();
        for (Run run : word.parts) {
            for (String piece : typeface.lines(run.text(), widthMm, size, run.weight())) {
                pieces.add(new Word(typeface, List.of(new Run(piece, run.weight(), run.ink()))));
            }
        }
        return pieces;
    }
}
