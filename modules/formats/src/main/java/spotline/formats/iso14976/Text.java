package spotline.formats.iso14976;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** Texts that a line of the file can hold. */
final class Text {
    private Text() {}

    /** Errors: {@link IllegalArgumentException} when the text does not survive being written as one line. */
    static void check(String field, String text) {
        if (text.indexOf('\n') >= 0 || text.endsWith("\r")) {
            throw new IllegalArgumentException(field + " must be one line, was " + text.strip());
        }
        if (!StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
            throw new IllegalArgumentException(field + " holds half of a surrogate pair");
        }
    }

    static List<String> check(String field, List<String> texts) {
        for (String text : texts) check(field, text);
        return List.copyOf(texts);
    }
}
