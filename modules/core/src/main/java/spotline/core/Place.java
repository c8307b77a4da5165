package spotline.core;

import static java.util.Objects.requireNonNull;

/**
 * Where in an input something was found: a file with a line (text) or a JSON pointer (JSON), or the file alone.
 *
 * @param line counted from 1; 0 when the place has no line
 * @param pointer JSON pointer, empty when the place has none
 */
public record Place(String file, int line, String pointer) {
    public Place {
        requireNonNull(file, "file");
        requireNonNull(pointer, "pointer");
        if (line < 0) throw new IllegalArgumentException("line counts from 1, was " + line);
    }

    public static Place file(String file) {
        return new Place(file, 0, "");
    }

    public static Place line(String file, int line) {
        return new Place(file, line, "");
    }

    public static Place pointer(String file, String pointer) {
        return new Place(file, 0, pointer);
    }

    /** {@code FILE:LINE}, {@code FILE:/pointer} or {@code FILE}. */
    @Override
    public String toString() {
        if (line > 0) return file + ":" + line;
        return pointer.isEmpty() ? file : file + ":" + pointer;
    }
}
