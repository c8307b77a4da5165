package spotline.cli;

import java.util.regex.Pattern;

/** Text from files and names on its way to a terminal. */
final class TerminalText {
    /** What moves a cursor, breaks a line or turns the direction of the text around it. */
    private static final Pattern UNSAFE =
            Pattern.compile("[\\p{Cntrl}\\x80-\\x9f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ufeff]");

    private TerminalText() {}

    /** One line in which every character stands where it is read. */
    static String clean(String text) {
        return UNSAFE.matcher(text).replaceAll(" ");
    }
}
