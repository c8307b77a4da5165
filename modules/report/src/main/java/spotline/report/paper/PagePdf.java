package spotline.report.paper;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.report.print.Canvas;
import spotline.report.print.Frame;
import spotline.report.print.Ink;
import spotline.report.print.Paper;
import spotline.report.print.PdfPages;
import spotline.report.print.SheetPages;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/**
 * A page of our own making as PDF: A4, page numbers, the title and the footer on every page, bookmarks at the headings,
 * vector figures, text as text in the shipped typeface. No row, line or figure is cut by the end of a page.
 *
 * <p>Errors: {@link IllegalStateException} when the page is not well-formed XML.
 */
public final class PagePdf {
    private static final double MARGIN_MM = 13;
    private static final double HEAD_MM = 7;
    private static final double FOOT_MM = 8;
    private static final double SMALL_MM = 2.1;

    private final Typeface typeface;
    private final Frame frame = Frame.within(Paper.A4, MARGIN_MM);
    private final List<Canvas> pages = new ArrayList<>();
    private final List<SheetPages.Bookmark> bookmarks = new ArrayList<>();
    private double y;

    private PagePdf(Typeface typeface) {
        this.typeface = typeface;
    }

    /** @param made written into the file as the time it was made; without it the file holds no time */
    public static byte[] of(byte[] html, Typeface typeface, Optional<Instant> made) {
        PageNode.Element body = PageReader.read(new String(html, StandardCharsets.UTF_8));
        String title = body.first("h1").map(h -> h.text().strip()).orElse("");
        String foot = body.first("footer").map(f -> f.text().strip()).orElse("");
        PagePdf pdf = new PagePdf(typeface);
        pdf.flow(PageLayout.of(typeface, body, pdf.frame.widthMm(), pdf.roomMm()));
        pdf.margins(title, foot);
        SheetPages pages = new SheetPages(
                title, false, pdf.pages.stream().map(Canvas::marks).toList(), pdf.bookmarks, false);
        return PdfPages.write(pages, pdf.frame, typeface, made);
    }

    private double roomMm() {
        return frame.heightMm() - HEAD_MM - FOOT_MM;
    }

    private void flow(List<Piece> pieces) {
        newPage();
        int at = 0;
        while (at < pieces.size()) {
            int end = at;
            double height = 0;
            while (end < pieces.size() - 1 && pieces.get(end).withNext())
                height += pieces.get(end++).heightMm();
            height += pieces.get(end).heightMm();
            boolean begins = y <= HEAD_MM + 1e-9;
            boolean asked = pieces.get(at).newPage() && !begins;
            // What belongs together is parted only where it is higher than a page.
            boolean full = y + height > HEAD_MM + roomMm() && !begins;
            if (asked || full) {
                newPage();
                for (Piece head : pieces.get(at).head()) draw(head);
            }
            for (; at <= end; at++) {
                Piece piece = pieces.get(at);
                if (y + piece.heightMm() > HEAD_MM + roomMm() + 1e-6 && y > HEAD_MM + 1e-9) {
                    newPage();
                    for (Piece head : piece.head()) draw(head);
                }
                draw(piece);
            }
        }
    }

    private void newPage() {
        pages.add(new Canvas(typeface));
        y = HEAD_MM;
    }

    private void draw(Piece piece) {
        Canvas page = pages.get(pages.size() - 1);
        piece.mark()
                .ifPresent(heading -> bookmarks.add(new SheetPages.Bookmark(
                        heading.level(), typeface.shown(heading.text(), Weight.REGULAR), pages.size() - 1, y)));
        piece.drawer().draw(page, 0, y);
        y += piece.heightMm();
    }

    private void margins(String title, String foot) {
        double bottom = frame.heightMm() - 1;
        for (int i = 0; i < pages.size(); i++) {
            Canvas page = pages.get(i);
            if (i > 0) {
                page.words(
                        0,
                        2.6,
                        SMALL_MM,
                        Weight.REGULAR,
                        Ink.DARK,
                        typeface.cut(title, frame.widthMm(), SMALL_MM, Weight.REGULAR));
                page.line("", 0, 4, frame.widthMm(), 4, Ink.MIDDLE, Canvas.HAIR_MM);
            }
            String number = "page " + (i + 1) + " of " + pages.size();
            page.wordsRight(frame.widthMm(), bottom, SMALL_MM, Weight.REGULAR, Ink.DARK, number);
            page.words(
                    0,
                    bottom,
                    SMALL_MM,
                    Weight.REGULAR,
                    Ink.DARK,
                    typeface.cut(foot, frame.widthMm() - 30, SMALL_MM, Weight.REGULAR));
        }
    }
}
