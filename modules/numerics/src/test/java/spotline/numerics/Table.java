package spotline.numerics;

import static java.util.Objects.requireNonNull;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A CSV of numbers among the test resources: {@code #} header lines, one line of names, rows; empty cells are NaN. */
public record Table(List<String> names, List<double[]> rows) {
    public static Table read(String resource) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                requireNonNull(Table.class.getResourceAsStream(resource), resource), StandardCharsets.UTF_8))) {
            List<String> names = null;
            List<double[]> rows = new ArrayList<>();
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.isBlank() || line.startsWith("#")) continue;
                String[] cells = line.split(",", -1);
                if (names == null) {
                    names = List.of(cells);
                    continue;
                }
                double[] row = new double[cells.length];
                for (int i = 0; i < row.length; i++) {
                    row[i] = cells[i].isEmpty() ? Double.NaN : Double.parseDouble(cells[i]);
                }
                rows.add(row);
            }
            return new Table(requireNonNull(names), rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int column(String name) {
        return names.indexOf(name);
    }
}
