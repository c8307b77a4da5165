package spotline.report.table;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Decimal;

/**
 * A table of typed cells, and the same as CSV: UTF-8, commas, line feeds, a header row, quotes where a cell needs them.
 * The workbook is made of these tables too, so that no column is in one and not in the other.
 *
 * <p>A text that a spreadsheet would take for a formula gets an apostrophe in front. Numbers are ours and stay as they
 * are; an unknown one is an empty cell.
 *
 * <p>Source: RFC 4180 for the quoting.
 */
public final class CsvTable {
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20";

    /** What stands in a cell. */
    public sealed interface Cell {
        /** As the CSV has it, before quoting. */
        String text();

        /** Neutralised text. */
        record Words(String text) implements Cell {}

        /** Empty when it is not known. */
        record Number(OptionalDouble value) implements Cell {
            @Override
            public String text() {
                return Decimal.text(value);
            }
        }

        record Flag(boolean value) implements Cell {
            @Override
            public String text() {
                return Boolean.toString(value);
            }
        }
    }

    private final List<String> columns;
    private final List<List<Cell>> rows = new ArrayList<>();

    CsvTable(List<String> columns) {
        this.columns = List.copyOf(columns);
    }

    /** Errors: {@link IllegalArgumentException} unless the row has a cell a column. */
    void add(Row row) {
        if (row.cells.size() != columns.size()) {
            throw new IllegalArgumentException("a row needs " + columns.size() + " cells, had " + row.cells.size());
        }
        rows.add(List.copyOf(row.cells));
    }

    public List<String> columns() {
        return columns;
    }

    public List<List<Cell>> rows() {
        return List.copyOf(rows);
    }

    byte[] bytes() {
        return text().getBytes(StandardCharsets.UTF_8);
    }

    String text() {
        StringBuilder out = new StringBuilder();
        out.append(String.join(",", columns.stream().map(CsvTable::quoted).toList()))
                .append('\n');
        for (List<Cell> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                if (i > 0) out.append(',');
                out.append(quoted(row.get(i).text()));
            }
            out.append('\n');
        }
        return out.toString();
    }

    private static String quoted(String cell) {
        boolean needs = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return needs ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    /** The cells of one record, added from left to right. */
    static final class Row {
        private final List<Cell> cells = new ArrayList<>();

        /** Text that may come from a file. */
        Row text(String text) {
            boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
            cells.add(new Cell.Words(formula ? "'" + text : text));
            return this;
        }

        Row number(double value) {
            return number(Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty());
        }

        Row number(OptionalDouble value) {
            cells.add(new Cell.Number(value));
            return this;
        }

        Row flag(boolean value) {
            cells.add(new Cell.Flag(value));
            return this;
        }
    }
}
