package spotline.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A shipped table: lines that begin with #, one line of column names, then rows. Fields with commas stand in double
 * quotes, a row never spans lines.
 *
 * <p>Errors: a table that is missing or broken is a fault of the program, not of the user, so it ends in an
 * {@link IllegalStateException} that names the table and the line.
 */
final class Table {
    private final String name;
    private final List<Row> rows = new ArrayList<>();
    private final Map<String, Integer> columns = new HashMap<>();

    private Table(String name, InputStream stream) {
        this.name = name;
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            int number = 0;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                number++;
                if (line.isEmpty() || (columns.isEmpty() && line.startsWith("#"))) continue;
                addLine(fields(line, number), number);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(name + " cannot be read", e);
        }
        if (rows.isEmpty()) throw new IllegalStateException(name + ": no rows, expected a table");
    }

    /** @param source opens a table by its name, null when there is none */
    static Table read(Function<String, ? extends @Nullable InputStream> source, String name) {
        InputStream stream = source.apply(name);
        if (stream == null) throw new IllegalStateException(name + ": the table is missing from the program");
        return new Table(name, stream);
    }

    List<Row> rows() {
        return rows;
    }

    private void addLine(List<String> fields, int number) {
        if (columns.isEmpty()) {
            for (String column : fields) {
                if (columns.put(column, columns.size()) != null) {
                    throw fault(number, "column " + column + " twice", "distinct column names");
                }
            }
        } else if (fields.size() != columns.size()) {
            throw fault(number, fields.size() + " fields", columns.size() + " fields");
        } else {
            rows.add(new Row(number, fields));
        }
    }

    private List<String> fields(String line, int number) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                boolean doubled = quoted && i + 1 < line.length() && line.charAt(i + 1) == '"';
                if (doubled) {
                    field.append('"');
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        if (quoted) throw fault(number, "a quote that is never closed", "a closing quote");
        fields.add(field.toString());
        return fields;
    }

    private IllegalStateException fault(int line, String found, String expected) {
        return new IllegalStateException(name + ":" + line + ": " + found + ", expected " + expected);
    }

    /** One row, read by column name. */
    final class Row {
        private final int line;
        private final List<String> fields;

        private Row(int line, List<String> fields) {
            this.line = line;
            this.fields = fields;
        }

        String text(String column) {
            Integer at = columns.get(column);
            if (at == null) throw fault(1, "no column " + column, "that column");
            return fields.get(at);
        }

        boolean has(String column) {
            return !text(column).isEmpty();
        }

        boolean yes(String column) {
            String text = text(column);
            if (!text.equals("yes") && !text.equals("no")) throw wrong(column, "yes or no");
            return text.equals("yes");
        }

        double number(String column) {
            OptionalDouble value = optional(column);
            return value.orElseThrow(() -> wrong(column, "a number"));
        }

        OptionalDouble optional(String column) {
            if (!has(column)) return OptionalDouble.empty();
            double value;
            try {
                value = Double.parseDouble(text(column));
            } catch (NumberFormatException e) {
                throw wrong(column, "a number");
            }
            if (!Double.isFinite(value)) throw wrong(column, "a finite number");
            return OptionalDouble.of(value);
        }

        int integer(String column) {
            try {
                return Integer.parseInt(text(column));
            } catch (NumberFormatException e) {
                throw wrong(column, "a whole number");
            }
        }

        /** A column's text through a parser that refuses with {@link IllegalArgumentException}. */
        <T> T parsed(String column, Function<String, T> parser) {
            return make(() -> parser.apply(text(column)));
        }

        /** A value whose constructor may refuse what the row holds. */
        <T> T make(Supplier<T> maker) {
            try {
                return maker.get();
            } catch (IllegalArgumentException e) {
                throw new IllegalStateException(name + ":" + line + ": " + e.getMessage(), e);
            }
        }

        IllegalStateException wrong(String column, String expected) {
            return fault(line, "\"" + text(column) + "\" in column " + column, expected);
        }
    }
}
