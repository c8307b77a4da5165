package spotline.analysis.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Place;
import spotline.core.ReadException;

/** Cells of one CSV row, with what a number must be. */
record Cells(Place place, List<String> columns, List<String> cells) {
    double number(int column) throws ReadException {
        OptionalDouble value = optional(column);
        if (value.isEmpty()) throw new ReadException(place, "nothing", "a number in " + columns.get(column));
        return value.getAsDouble();
    }

    OptionalDouble optional(int column) throws ReadException {
        String text = cells.get(column);
        if (text.isEmpty()) return OptionalDouble.empty();
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) return OptionalDouble.of(value);
        } catch (NumberFormatException e) {
            // Said below, in the same words as a number that is not finite.
        }
        throw new ReadException(place, "\"" + text + "\"", "a number in " + columns.get(column));
    }

    /** A text as a cell: quoted where it must be, and never taken for a formula by a spreadsheet. */
    static String quoted(String text) {
        String safe = !text.isEmpty() && "=+-@\t".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
        String line = safe.replaceAll("\\R", " ");
        boolean plain = line.indexOf(',') < 0 && line.indexOf('"') < 0;
        return plain ? line : "\"" + line.replace("\"", "\"\"") + "\"";
    }

    /** The text of a cell without the mark that keeps spreadsheets from running it. */
    String text(int column) {
        String text = cells.get(column);
        boolean marked = text.length() > 1 && text.charAt(0) == '\'' && "=+-@\t".indexOf(text.charAt(1)) >= 0;
        return marked ? text.substring(1) : text;
    }

    static List<String> of(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean inside = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (inside && c == '"' && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                inside = !inside;
            } else if (c == ',' && !inside) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
