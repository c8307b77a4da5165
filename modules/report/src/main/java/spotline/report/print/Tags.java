package spotline.report.print;

import java.util.HashMap;
import java.util.Map;

/**
 * Reads markup of our own making tag by tag: elements, attributes in quotes, text with the five named and the numbered
 * references. It is no reader for what others wrote: there are no comments, sections or declarations.
 */
public final class Tags {
    /** What was met. */
    public enum Kind {
        START,
        END,
        TEXT,
        DONE
    }

    private final String markup;
    private final Map<String, String> attributes = new HashMap<>();
    private int at;
    private String name = "";
    private boolean ends;

    public Tags(String markup) {
        this.markup = markup;
    }

    /** Errors: {@link IllegalStateException} where a tag is not closed. */
    public Kind next() {
        if (ends) {
            ends = false;
            return Kind.END;
        }
        if (at >= markup.length()) return Kind.DONE;
        if (markup.charAt(at) != '<') {
            int to = markup.indexOf('<', at);
            if (to < 0) to = markup.length();
            name = text(markup.substring(at, to));
            at = to;
            return Kind.TEXT;
        }
        int close = closing();
        if (markup.charAt(at + 1) == '/') {
            name = markup.substring(at + 2, close).strip();
            at = close + 1;
            return Kind.END;
        }
        ends = markup.charAt(close - 1) == '/';
        start(at + 1, ends ? close - 1 : close);
        at = close + 1;
        return Kind.START;
    }

    /** The end of a tag, over what stands in quotes. */
    private int closing() {
        for (int i = at + 1; i < markup.length(); i++) {
            char c = markup.charAt(i);
            if (c == '>') return i;
            // Most of a drawing stands in quotes: the search for their end runs through it faster than a loop here.
            if (c == '"' || c == '\'') i = end(c, i + 1);
        }
        throw new IllegalStateException("a tag is not closed");
    }

    private int end(char quote, int from) {
        int end = markup.indexOf(quote, from);
        if (end < 0) throw new IllegalStateException("a tag is not closed");
        return end;
    }

    private void start(int from, int to) {
        int i = from;
        while (i < to && !blank(i)) i++;
        name = markup.substring(from, i);
        attributes.clear();
        while (true) {
            while (i < to && blank(i)) i++;
            int equals = markup.indexOf('=', i);
            if (i >= to || equals < 0 || equals >= to) return;
            char quote = markup.charAt(equals + 1);
            int end = markup.indexOf(quote, equals + 2);
            attributes.put(markup.substring(i, equals), text(markup.substring(equals + 2, end)));
            i = end + 1;
        }
    }

    private boolean blank(int i) {
        return markup.charAt(i) <= ' ';
    }

    /** Name of the element at a start or an end. */
    public String name() {
        return name;
    }

    /** The text met. */
    public String text() {
        return name;
    }

    /** Empty when it is not there. */
    public String attribute(String key) {
        return attributes.getOrDefault(key, "");
    }

    public Map<String, String> attributes() {
        return Map.copyOf(attributes);
    }

    private static String text(String raw) {
        if (raw.indexOf('&') < 0) return raw;
        StringBuilder out = new StringBuilder();
        int i = 0;
        while (i < raw.length()) {
            char c = raw.charAt(i);
            int end = c == '&' ? raw.indexOf(';', i) : -1;
            if (end < 0) {
                out.append(c);
                i++;
                continue;
            }
            String reference = raw.substring(i + 1, end);
            switch (reference) {
                case "amp" -> out.append('&');
                case "lt" -> out.append('<');
                case "gt" -> out.append('>');
                case "quot" -> out.append('"');
                case "apos" -> out.append('\'');
                default ->
                    out.appendCodePoint(
                            reference.startsWith("#x")
                                    ? Integer.parseInt(reference.substring(2), 16)
                                    : Integer.parseInt(reference.substring(1)));
            }
            i = end + 1;
        }
        return out.toString();
    }
}
