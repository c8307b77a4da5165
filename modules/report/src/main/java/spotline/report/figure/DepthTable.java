package spotline.report.figure;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * A depth profile as a table: a row a depth.
 *
 * <p>The first column holds depths or etch times; its name becomes the axis ({@code etch_time_s} is "etch time (s)"). Then for
 * each element {@code X_at_percent} and, where known, {@code X_u}.
 *
 * @param depths in the order of the file
 */
public record DepthTable(String axis, List<Double> depths, List<Profile> profiles) {
    private static final String PERCENT = "_at_percent";
    private static final long LARGEST = 5_000_000;

    /** One element; not a number where the table is empty. */
    public record Profile(String element, List<Double> atomicPercent, List<Double> uncertainty) {
        public Profile {
            atomicPercent = List.copyOf(atomicPercent);
            uncertainty = List.copyOf(uncertainty);
        }
    }

    public DepthTable {
        depths = List.copyOf(depths);
        profiles = List.copyOf(profiles);
    }

    public static DepthTable read(Path file) throws ReadException {
        String name = file.toString();
        List<String> lines;
        try {
            if (Files.size(file) > LARGEST) {
                throw new ReadException(Place.file(name), "more than " + LARGEST + " bytes", "a depth table");
            }
            lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new ReadException(Place.file(name), "bytes that are no UTF-8", "a CSV file in UTF-8");
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "a file that cannot be read", "a depth table as CSV");
        }
        if (lines.isEmpty()) throw new ReadException(Place.file(name), "nothing", "a header row");
        String[] header = lines.get(0).strip().split(",", -1);
        List<Double> depths = new ArrayList<>();
        List<List<Double>> columns = new ArrayList<>();
        for (int c = 0; c < header.length; c++) columns.add(new ArrayList<>());
        for (int i = 1; i < lines.size(); i++) {
            if (lines.get(i).isBlank()) continue;
            String[] cells = lines.get(i).strip().split(",", -1);
            if (cells.length != header.length) {
                throw new ReadException(
                        Place.line(name, i + 1), cells.length + " cells", header.length + " as in the header row");
            }
            for (int c = 0; c < cells.length; c++) columns.get(c).add(number(cells[c], name, i + 1));
        }
        depths.addAll(columns.get(0));
        if (depths.stream().anyMatch(d -> d.isNaN())) {
            throw new ReadException(Place.file(name), "a row without a depth", "a number in the first column");
        }
        List<Profile> profiles = new ArrayList<>();
        List<String> names = List.of(header);
        for (int c = 1; c < header.length; c++) {
            if (!header[c].endsWith(PERCENT)) continue;
            String element = header[c].substring(0, header[c].length() - PERCENT.length());
            int u = names.indexOf(element + "_u");
            List<Double> unknown = columns.get(c).stream().map(v -> Double.NaN).toList();
            profiles.add(new Profile(element, columns.get(c), u > 0 ? columns.get(u) : unknown));
        }
        if (profiles.isEmpty()) {
            throw new ReadException(
                    Place.line(name, 1), "no column of an element", "columns like O_at_percent and O_u");
        }
        return new DepthTable(axis(header[0]), depths, profiles);
    }

    private static double number(String cell, String name, int line) throws ReadException {
        if (cell.isBlank()) return Double.NaN;
        try {
            return Double.parseDouble(cell.strip());
        } catch (NumberFormatException e) {
            throw new ReadException(Place.line(name, line), "\"" + cell + "\"", "a number or an empty cell");
        }
    }

    private static String axis(String column) {
        int last = column.lastIndexOf('_');
        if (last <= 0) return column;
        String words = column.substring(0, last).replace('_', ' ');
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + " (" + column.substring(last + 1) + ")";
    }
}
