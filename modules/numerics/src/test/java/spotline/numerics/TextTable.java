package spotline.numerics;

import static java.util.Objects.requireNonNull;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A CSV of texts among the test resources: {@code #} header lines, one line of names, rows. */
public record TextTable(List<String> names, List<List<String>> rows) {
    public static TextTable read(String resource) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                requireNonNull(TextTable.class.getResourceAsStream(resource), resource), StandardCharsets.UTF_8))) {
            List<String> names = null;
            List<List<String>> rows = new ArrayList<>();
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.isBlank() || line.startsWith("#")) continue;
                String[] cells = line.split(",", -1);
                if (names == null) {
                    names = List.of(cells);
                    continue;
                }
                rows.add(List.of(cells));
            }
            return new TextTable(requireNonNull(names), rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int column(String name) {
        return names.indexOf(name);
    }
}
