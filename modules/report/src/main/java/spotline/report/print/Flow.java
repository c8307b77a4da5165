package spotline.report.print;

import java.util.ArrayList;
import java.util.List;

/** Fills pages from top to bottom and starts a new one where something would not fit. */
public final class Flow {
    public static final double TEXT_MM = 2.7;
    public static final double LINE_MM = 3.7;
    public static final double FOOTER_MM = 6;
    private static final double ITEM_GAP_MM = 0.7;

    private final Typeface typeface;
    private final double widthMm;
    private final double wholeMm;
    private final double heightMm;
    private final List<Canvas> pages = new ArrayList<>();
    private double y;

    public Flow(Typeface typeface, double widthMm, double heightMm) {
        this.typeface = typeface;
        this.widthMm = widthMm;
        this.wholeMm = heightMm;
        this.heightMm = heightMm - FOOTER_MM;
        pages.add(new Canvas(typeface));
    }

    public List<Canvas> pages() {
        return pages;
    }

    public Canvas page() {
        return pages.get(pages.size() - 1);
    }

    public Typeface typeface() {
        return typeface;
    }

    public double widthMm() {
        return widthMm;
    }

    /** Height of a page with its footer, mm. */
    public double heightMm() {
        return wholeMm;
    }

    public double y() {
        return y;
    }

    public void skip(double mm) {
        y += mm;
    }

    /** Whether a new page had to be started for what is so high. */
    public boolean need(double mm) {
        if (y == 0 || y + mm <= heightMm) return false;
        pages.add(new Canvas(typeface));
        y = 0;
        return true;
    }

    /** @param with height of what must stand on the same page as the heading, mm */
    public void heading(String text, double with) {
        need(8 + with);
        if (y > 0) skip(3.5);
        page().words(0, y + 3.6, 3.6, Weight.BOLD, Ink.BLACK, text);
        page().line("", 0, y + 5, widthMm, y + 5, Ink.BLACK, Canvas.THIN_MM);
        skip(6.6);
    }

    public void paragraph(String text, Weight weight, Ink ink) {
        paragraph(text, 0, TEXT_MM, weight, ink);
    }

    public void paragraph(String text, double indent, double sizeMm, Weight weight, Ink ink) {
        double line = sizeMm * LINE_MM / TEXT_MM;
        for (String words : typeface.lines(text, widthMm - indent, sizeMm, weight)) {
            need(line);
            page().words(indent, y + sizeMm, sizeMm, weight, ink, words);
            skip(line);
        }
    }

    public double paragraphMm(String text, Weight weight) {
        return typeface.lines(text, widthMm, TEXT_MM, weight).size() * LINE_MM;
    }

    public double itemMm(double labelWidth, String text) {
        return typeface.lines(text, widthMm - labelWidth, TEXT_MM, Weight.REGULAR)
                                .size()
                        * LINE_MM
                + ITEM_GAP_MM;
    }

    /** A part is kept whole when it is not higher than most of a page; else it begins where a bit of it fits. */
    public double together(double mm) {
        return mm < 0.8 * heightMm ? mm : 12;
    }

    /** A label in bold, then text that begins beside it and goes on below. */
    public void item(String label, double labelWidth, String text, Ink ink) {
        List<String> lines = typeface.lines(text, widthMm - labelWidth, TEXT_MM, Weight.REGULAR);
        need(Math.min(3, lines.size()) * LINE_MM);
        String shown = typeface.cut(label, labelWidth - 1.5, TEXT_MM, Weight.BOLD);
        page().words(0, y + TEXT_MM, TEXT_MM, Weight.BOLD, ink, shown);
        for (String line : lines) {
            need(LINE_MM);
            page().words(labelWidth, y + TEXT_MM, TEXT_MM, Weight.REGULAR, Ink.BLACK, line);
            skip(LINE_MM);
        }
        skip(ITEM_GAP_MM);
    }
}
