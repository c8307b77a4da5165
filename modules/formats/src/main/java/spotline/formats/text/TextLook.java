package spotline.formats.text;

import java.util.List;
import spotline.core.Finding;

/**
 * What can be said of a text file before anybody declared its columns.
 *
 * @param firstRowLine line of the first row of numbers, counted from 1
 * @param ranges one a column
 * @param undeclared what a person must say, or should, before the file can be treated
 */
public record TextLook(
        int columns,
        int rows,
        int firstRowLine,
        List<Range> ranges,
        List<String> undeclared,
        List<String> comments,
        List<Finding> warnings) {
    /** Least and greatest value of a column. */
    public record Range(double least, double greatest) {}

    public TextLook {
        ranges = List.copyOf(ranges);
        undeclared = List.copyOf(undeclared);
        comments = List.copyOf(comments);
        warnings = List.copyOf(warnings);
    }
}
