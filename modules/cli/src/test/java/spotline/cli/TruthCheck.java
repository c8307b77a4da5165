package spotline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/** Holds the tables of a demonstration run against what its maker knows to be true. */
final class TruthCheck {
    /** At.%, for every element at every spot. */
    private static final double COMPOSITION_LIMIT = 3;
    /** eV, for every charge shift. */
    private static final double SHIFT_LIMIT = 0.05;

    private TruthCheck() {}

    /** Arguments: truth.json and the directory that a run wrote. Ends with status 1 when anything is outside. */
    public static void main(String[] args) throws IOException {
        List<String> faults = new ArrayList<>();
        List<String> checked = check(Path.of(args[0]), Path.of(args[1]), faults);
        checked.forEach(System.out::println);
        faults.forEach(System.out::println);
        System.out.println(checked.size() + " passed, " + faults.size() + " failed");
        System.exit(faults.isEmpty() && !checked.isEmpty() ? 0 : 1);
    }

    /** One line a comparison; those outside their limit go to {@code faults}. */
    static List<String> check(Path truthFile, Path results, List<String> faults) throws IOException {
        JsonNode truth = new ObjectMapper().readTree(truthFile.toFile());
        Map<String, Map<String, String>> charge = new HashMap<>();
        for (Map<String, String> row : rows(results.resolve("charge.csv"))) charge.put(row.get("spot"), row);
        List<Map<String, String>> composition = rows(results.resolve("composition.csv"));
        List<String> passed = new ArrayList<>();
        for (JsonNode spot : truth.path("spots")) {
            String id = spot.path("spot").asText();
            String shift = charge.getOrDefault(id, Map.of()).getOrDefault("shift_ev", "");
            compare("spot " + id + " shift, eV", spot.path("shift_ev").asDouble(), shift, SHIFT_LIMIT, passed, faults);
            Map<String, String> found = new HashMap<>();
            for (Map<String, String> row : composition) {
                if (row.get("spot").equals(id) && !row.get("atomic_percent").isEmpty()) {
                    found.put(row.get("element"), row.get("atomic_percent"));
                }
            }
            TreeSet<String> elements = new TreeSet<>(found.keySet());
            spot.path("atomic_percent").fieldNames().forEachRemaining(elements::add);
            for (String element : elements) {
                JsonNode expected = spot.path("atomic_percent").path(element);
                if (expected.isMissingNode()) {
                    faults.add("spot " + id + ": " + element + " is invented");
                    continue;
                }
                compare(
                        "spot " + id + " " + element + ", at.%",
                        expected.asDouble(),
                        found.getOrDefault(element, ""),
                        COMPOSITION_LIMIT,
                        passed,
                        faults);
            }
        }
        return passed;
    }

    private static void compare(
            String what, double expected, String found, double limit, List<String> passed, List<String> faults) {
        boolean inside = !found.isEmpty() && Math.abs(Double.parseDouble(found) - expected) <= limit;
        String line = String.format(
                Locale.ROOT,
                "%s: true %.3f, found %s, limit %.2f",
                what,
                expected,
                found.isEmpty() ? "nothing" : found,
                limit);
        (inside ? passed : faults).add(line);
    }

    /** Rows of a CSV table whose cells hold no line breaks. */
    static List<Map<String, String>> rows(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file).stream()
                .filter(line -> !line.startsWith("#"))
                .toList();
        List<String> header = cells(lines.get(0));
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> cells = cells(line);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < header.size(); i++) row.put(header.get(i), cells.get(i));
            rows.add(row);
        }
        return rows;
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
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
