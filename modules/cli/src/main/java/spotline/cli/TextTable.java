package spotline.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Columns in plain text, padded to their widest cell. Cells that read as numbers are set to the right. */
final class TextTable {
    private final List<String[]> rows = new ArrayList<>();

    TextTable(String... header) {
        rows.add(header);
    }

    TextTable row(String... cells) {
        rows.add(cells);
        return this;
    }

    void print(PrintWriter out) {
        int columns = rows.get(0).length;
        int[] widths = new int[columns];
        boolean[] numbers = new boolean[columns];
        Arrays.fill(numbers, true);
        for (int r = 0; r < rows.size(); r++) {
            for (int c = 0; c < columns; c++) {
                String cell = clean(rows.get(r)[c]);
                widths[c] = Math.max(widths[c], cell.codePointCount(0, cell.length()));
                if (r > 0 && !cell.isEmpty() && !cell.matches("[-+<≈]?\\s*[0-9].*")) numbers[c] = false;
            }
        }
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < columns; c++) {
                String cell = clean(row[c]);
                String pad = " ".repeat(widths[c] - cell.codePointCount(0, cell.length()));
                if (c > 0) line.append("  ");
                line.append(numbers[c] ? pad + cell : cell + pad);
            }
            out.println(line.toString().stripTrailing());
        }
    }

    /** Text from files must not move the cursor or break a line. */
    private static String clean(String cell) {
        return TerminalText.clean(cell);
    }
}
