package spotline.report.figure;

import java.util.List;

/**
 * A drawing with what a reader needs beside it.
 *
 * @param svg one {@code <svg>} element
 * @param description in words, for those who cannot see it
 * @param keys what each kind of line in it stands for
 */
public record Figure(String svg, String description, List<Key> keys) {
    /** A line of the drawing and its meaning. */
    public record Key(String meaning, CurveStyle style) {}

    public Figure {
        keys = List.copyOf(keys);
    }
}
