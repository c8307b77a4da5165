package spotline.report.html;

import java.util.List;
import spotline.report.figure.Figure;

/** Drawings on the page, each with its words. */
final class Figures {
    private Figures() {}

    static void write(Markup page, Figure figure, String caption) {
        page.open("figure");
        page.open("div", "class", "drawing", "role", "img", "aria-label", figure.description());
        page.raw(figure.svg()).end();
        if (!figure.keys().isEmpty()) keys(page, figure.keys());
        page.open("figcaption").text(caption).end();
        page.end();
    }

    static void keys(Markup page, List<Figure.Key> keys) {
        page.open("p", "class", "keys");
        for (Figure.Key key : keys) {
            page.open("span", "class", "key");
            page.open("svg", "width", "30", "height", "8", "viewBox", "0 0 30 8", "aria-hidden", "true");
            page.empty(
                    "line",
                    "x1",
                    "0",
                    "y1",
                    "4",
                    "x2",
                    "30",
                    "y2",
                    "4",
                    "stroke",
                    key.style().hex(),
                    "stroke-width",
                    key.style().strokeWidth(),
                    "stroke-dasharray",
                    key.style().dashArray().isEmpty() ? "none" : key.style().dashArray());
            page.close().text(" " + key.meaning()).close();
        }
        page.end();
    }
}
