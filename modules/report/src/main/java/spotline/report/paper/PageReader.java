package spotline.report.paper;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import spotline.report.print.Tags;

/** Reads a page of our own making, which is well-formed XML too. Drawings are kept as they stand. */
final class PageReader {
    private static final String DRAWING = "drawing";

    private final List<String> drawings = new ArrayList<>();

    private PageReader() {}

    static PageNode.Element read(String html) {
        return new PageReader().body(html);
    }

    private PageNode.Element body(String html) {
        Tags in = new Tags(withoutDrawings(html.substring(html.indexOf("<body"), html.indexOf("</body>") + 7)));
        Deque<List<PageNode>> open = new ArrayDeque<>();
        Deque<PageNode.Element> started = new ArrayDeque<>();
        for (Tags.Kind kind = in.next(); kind != Tags.Kind.DONE; kind = in.next()) {
            if (kind == Tags.Kind.START) {
                started.push(new PageNode.Element(in.name(), in.attributes(), List.of()));
                open.push(new ArrayList<>());
            } else if (kind == Tags.Kind.TEXT) {
                if (!open.isEmpty()) open.element().add(new PageNode.Text(in.text()));
            } else {
                PageNode.Element done = started.pop();
                if (!done.tag().equals(in.name())) throw new IllegalStateException(done.tag() + " is not closed");
                List<PageNode> children = List.copyOf(open.pop());
                PageNode node = done.tag().equals(DRAWING)
                        ? new PageNode.Drawing(
                                drawings.get(Integer.parseInt(done.attributes().getOrDefault("n", "0"))))
                        : new PageNode.Element(done.tag(), done.attributes(), children);
                if (open.isEmpty()) return (PageNode.Element) node;
                open.element().add(node);
            }
        }
        throw new IllegalStateException("a page has no body");
    }

    /** Drawings are most of a page and are read when they are drawn. They do not stand inside one another. */
    private String withoutDrawings(String html) {
        StringBuilder out = new StringBuilder(1 << 16);
        int at = 0;
        while (true) {
            int from = html.indexOf("<svg", at);
            if (from < 0) break;
            int to = html.indexOf("</svg>", from) + 6;
            out.append(html, at, from)
                    .append("<drawing n=\"")
                    .append(drawings.size())
                    .append("\"/>");
            drawings.add(html.substring(from, to));
            at = to;
        }
        return out.append(html, at, html.length()).toString();
    }
}
