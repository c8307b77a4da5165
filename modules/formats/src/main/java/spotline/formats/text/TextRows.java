package spotline.formats.text;

import java.util.ArrayList;
import java.util.List;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/**
 * The rows of numbers of a text file. Lines before the first row and lines that begin with {@code #} or {@code %} are
 * kept as comments; a row that does not fit in among the others is a fault.
 */
final class TextRows {
    /** Which lines are rows. */
    sealed interface Wanted permits Declared, AllNumbers {
        boolean row(TextLine line);
    }

    /** Rows have a number in each of two columns, counted from 1. */
    record Declared(int energy, int ordinate) implements Wanted {
        @Override
        public boolean row(TextLine line) {
            return Math.max(energy, ordinate) <= line.count()
                    && !Double.isNaN(line.number(energy - 1))
                    && !Double.isNaN(line.number(ordinate - 1));
        }
    }

    /** Rows are two or more numbers and nothing else. */
    record AllNumbers() implements Wanted {
        @Override
        public boolean row(TextLine line) {
            return line.count() >= 2 && line.allNumbers();
        }
    }

    private enum Comma {
        NOT_MET,
        SEPARATES,
        DECIMAL
    }

    private final LineSource lines;
    private final Warnings warnings;
    private final ReadLimits limits;
    private final Wanted wanted;
    private final TextLine fields = new TextLine();
    private final List<String> comments = new ArrayList<>();
    private final List<Integer> commentLines = new ArrayList<>();

    private Comma comma = Comma.NOT_MET;
    private boolean pointMet;
    private int rows;
    private int columns;
    private int firstRowLine;
    private int strayLine;
    private String stray = "";

    TextRows(LineSource lines, Warnings warnings, ReadLimits limits, Wanted wanted) {
        this.lines = lines;
        this.warnings = warnings;
        this.limits = limits;
        this.wanted = wanted;
    }

    /** Moves to the next row; false after the last. */
    boolean next() throws ReadException {
        while (lines.next()) {
            int first = firstNotBlank();
            if (first < 0) continue;
            byte mark = lines.bytes()[first];
            if (mark == '#' || mark == '%') {
                keepComment();
            } else if (isRow()) {
                refuseStray();
                accept();
                return true;
            } else if (rows == 0) {
                keepComment();
            } else if (strayLine == 0) {
                strayLine = lines.line();
                stray = lines.quoted();
            }
        }
        tellComments();
        return false;
    }

    private int firstNotBlank() {
        for (int i = lines.start(); i < lines.end(); i++) {
            if (lines.bytes()[i] > ' ' || lines.bytes()[i] < 0) return i;
        }
        return -1;
    }

    private boolean has(char wantedByte) {
        for (int i = lines.start(); i < lines.end(); i++) if (lines.bytes()[i] == wantedByte) return true;
        return false;
    }

    /** The first row with a comma says whether commas part fields or are decimal signs, for the whole file. */
    private boolean isRow() {
        boolean undecided = comma == Comma.NOT_MET && has(',');
        if (undecided && !pointMet && !has('.') && fits(true)) {
            comma = Comma.DECIMAL;
            warnings.note(
                    "text-decimal-comma",
                    lines.line(),
                    "the comma is read as the decimal sign, as in " + lines.quoted());
            return true;
        }
        boolean fits = fits(comma == Comma.DECIMAL);
        if (fits && undecided) comma = Comma.SEPARATES;
        return fits;
    }

    private boolean fits(boolean decimalComma) {
        fields.split(lines.bytes(), lines.start(), lines.end(), decimalComma);
        return wanted.row(fields) && (rows == 0 || fields.count() == columns);
    }

    private void accept() throws ReadException {
        if (rows == 0) {
            columns = fields.count();
            firstRowLine = lines.line();
            if (lines.loneCarriageReturns()) {
                warnings.note("text-cr-line-ends", lines.line(), "the lines end with CR alone, as on computers of old");
            }
        }
        if (comma == Comma.NOT_MET && !pointMet) pointMet = has('.');
        rows++;
        if (rows > limits.valuesPerBlock()) {
            throw new ReadException(
                    lines.place(), "more than " + limits.valuesPerBlock() + " rows", "at most that many rows");
        }
    }

    private void refuseStray() throws ReadException {
        if (strayLine == 0) return;
        throw new ReadException(
                lines.placeOf(strayLine),
                "found " + stray + " among the rows of numbers",
                "a row of " + columns + " columns like that of line " + firstRowLine);
    }

    private void keepComment() throws ReadException {
        if (comments.size() == limits.listEntries()) {
            throw new ReadException(
                    lines.place(), "more than " + limits.listEntries() + " lines of text", "rows of numbers");
        }
        comments.add(lines.text());
        commentLines.add(lines.line());
    }

    private void tellComments() {
        if (!commentLines.isEmpty()) {
            int first = commentLines.get(0);
            warnings.note(
                    "text-comment-lines",
                    first,
                    commentLines.size() + " lines are kept as comments and not read as numbers: " + ranges());
        }
        if (strayLine > 0) {
            warnings.caution(
                    "text-after-rows",
                    strayLine,
                    "the lines from here on are no rows of " + columns + " columns and are not read; the first is "
                            + stray);
        }
    }

    private String ranges() {
        List<String> ranges = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= commentLines.size(); i++) {
            boolean goesOn = i < commentLines.size() && commentLines.get(i) == commentLines.get(i - 1) + 1;
            if (goesOn) continue;
            int low = commentLines.get(from);
            int high = commentLines.get(i - 1);
            ranges.add(low == high ? "line " + low : "lines " + low + " to " + high);
            from = i;
            if (ranges.size() == 10 && i < commentLines.size()) {
                ranges.add("and others up to line " + commentLines.get(commentLines.size() - 1));
                break;
            }
        }
        return String.join(", ", ranges);
    }

    /** Number in a column of the current row, counted from 1. */
    double value(int column) {
        return fields.number(column - 1);
    }

    /** What parts the columns of the current row, in words. */
    String separators() {
        return fields.separators();
    }

    boolean decimalComma() {
        return comma == Comma.DECIMAL;
    }

    int rows() {
        return rows;
    }

    /** Columns of every row; 0 before the first. */
    int columns() {
        return columns;
    }

    /** Line of the first row; 0 before it. */
    int firstRowLine() {
        return firstRowLine;
    }

    List<String> comments() {
        return comments;
    }
}
