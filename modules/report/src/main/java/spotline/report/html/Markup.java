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
        int done = 0;
        for (int i = 0; i < text.length(); i++) {
            String written = switch (text.charAt(i)) {
                case '&' -> "&amp;";
                case '<' -> "&lt;";
                case '>' -> "&gt;";
                case '"' -> "&quot;";
                case '\'' -> "&#39;";
                default -> "";
            };
            if (written.isEmpty()) continue;
            out.append(text.substring(done, i)).append(written);
            done = i + 1;
        }
        out.append(done == 0 ? text : text.substring(done));
    }

    /** Errors: {@link IllegalStateException} while an element is open. */
    String finish() {
        if (!open.isEmpty()) throw new IllegalStateException("still open: " + open);
        return out.toString();
    }
}
