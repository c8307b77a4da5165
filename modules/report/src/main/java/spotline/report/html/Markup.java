package spotline.report.html;

import java.util.ArrayDeque;
import java.util.Deque;
import spotline.report.text.Shown;

/** HTML under construction that is also well-formed XML: what is opened is closed, every text and value is escaped. */
final class Markup {
    private final StringBuilder out = new StringBuilder(1 << 16);
    private final Deque<String> open = new ArrayDeque<>();

    /** @param attributes name, value, name, value */
    Markup open(String tag, String... attributes) {
        start(tag, attributes).append('>');
        open.push(tag);
        return this;
    }

    Markup close() {
        out.append("</").append(open.pop()).append('>');
        return this;
    }

    /** As {@link #close}, with a line's end after it. */
    Markup end() {
        close();
        out.append('\n');
        return this;
    }

    Markup text(String text) {
        escape(text);
        return this;
    }

    Markup element(String tag, String text, String... attributes) {
        return open(tag, attributes).text(text).close();
    }

    Markup empty(String tag, String... attributes) {
        start(tag, attributes).append("/>");
        return this;
    }

    /** Markup of our own making: a drawing, the style sheet. */
    Markup raw(String markup) {
        out.append(markup);
        return this;
    }

    private StringBuilder start(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1]);
            out.append('"');
        }
        return out;
    }

    private void escape(String raw) {
        String text = Shown.text(raw);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
    }

    /** Errors: {@link IllegalStateException} while an element is open. */
    String finish() {
        if (!open.isEmpty()) throw new IllegalStateException("still open: " + open);
        return out.toString();
    }
}
