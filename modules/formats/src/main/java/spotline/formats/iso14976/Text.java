package spotline.formats.iso14976;

import java.util.List;

/** Texts that a line of the file can hold. */
final class Text {
    private Text() {}

    /** Errors: {@link IllegalArgumentException} when the text does not survive being written as one line. */
    static void check(String field, String text) {
        if (text.indexOf('\n') >= 0 || text.endsWith("\r")) {
            throw new IllegalArgumentException(field + " must be one line, was " + text.strip());
        }
        for (int i = 0; i < text.length(); i++) {
            if (!Character.isSurrogate(text.charAt(i))) continue;
            boolean pair = i + 1 < text.length() && Character.isSurrogatePair(text.charAt(i), text.charAt(i + 1));
            if (!pair) throw new IllegalArgumentException(field + " holds half of a surrogate pair");
            i++;
        }
    }

    static List<String> check(String field, List<String> texts) {
        for (String text : texts) check(field, text);
        return List.copyOf(texts);
    }
}
