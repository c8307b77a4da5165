package spotline.formats.text;

import java.util.List;
import spotline.core.Finding;

/**
 * What can be said of a text file before anybody declared its columns.
 *
 * @param firstRowLine line of the first row of numbers, counted from 1
 * @param separator what parts the columns, in words
 * @param decimalComma whether the decimal sign is a comma, else a point
 * @param ranges one a column
 * @param undeclared what a person must say, or should, before the file can be treated
 * @param suggestions what of it the file itself hints at: to be checked by a person, used by nobody
 * @param dataSha256 of the numbers alone, row by row as big-endian doubles
 */
public record TextLook(
        int columns,
        int rows,
        int firstRowLine,
        String separator,
        boolean decimalComma,
        List<Range> ranges,
        List<String> undeclared,
        List<Suggestion> suggestions,
        String dataSha256,
        List<String> comments,
        List<Finding> warnings) {
    /** Least and greatest value of a column. */
    public record Range(double least, double greatest) {}

    /**
     * What one field under {@code columns} of a holder run may be.
     *
     * @param value as it would stand in the JSON
     */
    public record Suggestion(String field, String value, String reason) {}

    public TextLook {
        suggestions = List.copyOf(suggestions);
        ranges = List.copyOf(ranges);
        undeclared = List.copyOf(undeclared);
        comments = List.copyOf(comments);
        warnings = List.copyOf(warnings);
    }
}
