package spotline.report.table;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Decimal;

/**
 * A table as CSV: UTF-8, commas, line feeds, a header row, quotes where a cell needs them.
 *
 * <p>A text that a spreadsheet would take for a formula gets an apostrophe in front. Numbers are ours and stay as they
 * are; an unknown one is an empty cell.
 *
 * <p>Source: RFC 4180 for the quoting.
 */
final class CsvTable {
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20";

    private final int columns;
    private final StringBuilder out = new StringBuilder();

    CsvTable(List<String> columns) {
        this.columns = columns.size();
        line(columns.stream().map(CsvTable::quoted).toList());
    }

    /** Errors: {@link IllegalArgumentException} unless the row has a cell a column. */
    void add(Row row) {
        if (row.cells.size() != columns) {
            throw new IllegalArgumentException("a row needs " + columns + " cells, had " + row.cells.size());
        }
        line(row.cells);
    }

    private void line(List<String> cells) {
        out.append(String.join(",", cells)).append('\n');
    }

    byte[] bytes() {
        return text().getBytes(StandardCharsets.UTF_8);
    }

    String text() {
        return out.toString();
    }

    private static String quoted(String cell) {
        boolean needs = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return needs ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    /** The cells of one record, added from left to right. */
    static final class Row {
        private final List<String> cells = new ArrayList<>();

        /** Text that may come from a file. */
        Row text(String text) {
            boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
            cells.add(quoted(formula ? "'" + text : text));
            return this;
        }

        Row number(double value) {
            cells.add(Decimal.text(value));
            return this;
        }

        Row number(OptionalDouble value) {
            cells.add(Decimal.text(value));
            return this;
        }

        Row flag(boolean value) {
            cells.add(Boolean.toString(value));
            return this;
        }
    }
}
