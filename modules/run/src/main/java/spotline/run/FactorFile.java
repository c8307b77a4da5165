package spotline.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.quantify.FactorKind;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.FactorSet.BackgroundFamily;
import spotline.analysis.quantify.ListedFactors;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * A lab's own sensitivity factors as a CSV file.
 *
 * <p>Shape: header lines {@code # key: value}, one line of column names, then a line a row. Keys: name and source
 * (required), kind, photon_energy_ev, source_analyser_angle_deg, transmission, mean_free_path, backgrounds (words with
 * blanks between), shake_up (inside or outside). Columns: line, factor, standard_uncertainty (empty for unknown). Units: as
 * the keys' names say. Errors: {@link ReadException} with the line.
 */
public final class FactorFile {
    private static final String COLUMNS = "line,factor,standard_uncertainty";
    private static final Set<String> KEYS = Set.of(
            "name",
            "source",
            "kind",
            "photon_energy_ev",
            "source_analyser_angle_deg",
            "transmission",
            "mean_free_path",
            "backgrounds",
            "shake_up");
    private static final int LONGEST = 10_000;

    private FactorFile() {}

    /** @param name as the treatment gives it, relative to the folder */
    static ListedFactors read(InputFiles inputs, String name, ReferenceData reference) throws ReadException {
        try {
            return parse(name, Files.readAllLines(inputs.path(name), StandardCharsets.UTF_8), reference);
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "no readable file", "a table of sensitivity factors");
        }
    }

    static ListedFactors parse(String name, List<String> lines, ReferenceData reference) throws ReadException {
        if (lines.size() > LONGEST) {
            throw new ReadException(Place.file(name), lines.size() + " lines", "at most " + LONGEST);
        }
        Map<String, String> head = new LinkedHashMap<>();
        Map<Line, Estimate> factors = new LinkedHashMap<>();
        boolean columns = false;
        for (int i = 0; i < lines.size(); i++) {
            Place place = Place.line(name, i + 1);
            String text = lines.get(i).strip();
            if (text.isEmpty()) continue;
            if (text.startsWith("#")) {
                header(text, place, head);
            } else if (!columns) {
                if (!text.replace(" ", "").equals(COLUMNS)) {
                    throw new ReadException(place, "\"" + text + "\"", "the column names " + COLUMNS);
                }
                columns = true;
            } else {
                row(text, place, factors);
            }
        }
        if (factors.isEmpty()) throw new ReadException(Place.file(name), "no factor", "at least one row");
        return new ListedFactors(set(name, head), factors, reference);
    }

    private static void header(String text, Place place, Map<String, String> head) throws ReadException {
        int colon = text.indexOf(':');
        if (colon < 0) return;
        String key = text.substring(1, colon).strip();
        if (!KEYS.contains(key)) {
            throw new ReadException(place, "the key \"" + key + "\"", "one of " + String.join(", ", sorted(KEYS)));
        }
        if (head.put(key, text.substring(colon + 1).strip()) != null) {
            throw new ReadException(place, "\"" + key + "\" a second time", "each key once");
        }
    }

    private static List<String> sorted(Set<String> words) {
        return words.stream().sorted().toList();
    }

    private static void row(String text, Place place, Map<Line, Estimate> factors) throws ReadException {
        String[] cells = text.split(",", -1);
        if (cells.length != 3) throw new ReadException(place, "\"" + text + "\"", "three cells: " + COLUMNS);
        Line line = Line.find(cells[0].strip())
                .orElseThrow(() -> new ReadException(place, "\"" + cells[0].strip() + "\"", "a line like Ti 2p"));
        double factor = number(cells[1], place);
        if (!(factor > 0)) throw new ReadException(place, "a factor of " + cells[1].strip(), "a number above 0");
        Estimate estimate = Estimate.unknown(factor);
        if (!cells[2].isBlank()) {
            double u = number(cells[2], place);
            if (!(u >= 0))
                throw new ReadException(place, "an uncertainty of " + cells[2].strip(), "0 or more, or nothing");
            estimate = Estimate.of(factor, "factor/listed " + line, u);
        }
        if (factors.put(line, estimate) != null)
            throw new ReadException(place, line + " a second time", "each line once");
    }

    private static double number(String cell, Place place) throws ReadException {
        try {
            double value = Double.parseDouble(cell.strip());
            if (Double.isFinite(value)) return value;
        } catch (NumberFormatException e) {
            // told below with what was found
        }
        throw new ReadException(place, "\"" + cell.strip() + "\"", "a number");
    }

    private static FactorSet set(String file, Map<String, String> head) throws ReadException {
        List<BackgroundFamily> backgrounds = new ArrayList<>();
        for (String word : head.getOrDefault("backgrounds", "").split(" ")) {
            if (!word.isBlank()) backgrounds.add(word(file, "backgrounds", word, BackgroundFamily.values()));
        }
        String shakeUp = head.getOrDefault("shake_up", "inside");
        if (!Set.of("inside", "outside").contains(shakeUp)) {
            throw new ReadException(Place.file(file), "shake_up: " + shakeUp, "inside or outside");
        }
        return new FactorSet(
                required(file, head, "name"),
                required(file, head, "source"),
                word(file, "kind", head.getOrDefault("kind", "elemental"), FactorKind.values()),
                optional(file, head, "photon_energy_ev"),
                optional(file, head, "source_analyser_angle_deg"),
                word(
                        file,
                        "transmission",
                        head.getOrDefault("transmission", "divided-out"),
                        FactorSet.Transmission.values()),
                head.getOrDefault("mean_free_path", "in the factors"),
                backgrounds,
                shakeUp.equals("inside"),
                "the lines listed");
    }

    private static String required(String file, Map<String, String> head, String key) throws ReadException {
        String value = head.getOrDefault(key, "");
        if (value.isEmpty())
            throw new ReadException(Place.file(file), "no \"# " + key + ": ...\"", "a set with its " + key);
        return value;
    }

    private static OptionalDouble optional(String file, Map<String, String> head, String key) throws ReadException {
        String value = head.getOrDefault(key, "");
        return value.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(value, Place.file(file)));
    }

    private static <E extends Enum<E>> E word(String file, String key, String word, E[] values) throws ReadException {
        List<String> words = new ArrayList<>();
        for (E value : values) {
            String own = value.name().toLowerCase(Locale.ROOT).replace('_', '-');
            if (own.equals(word)) return value;
            words.add(own);
        }
        throw new ReadException(Place.file(file), key + ": " + word, "one of " + String.join(", ", words));
    }

    /** A set as such a file, which reads back as the same factors. */
    public static String text(ListedFactors factors) {
        FactorSet set = factors.set();
        StringBuilder text = new StringBuilder();
        key(text, "name", set.name());
        key(text, "source", set.source());
        key(text, "kind", set.kind().word());
        set.photonEnergyEv().ifPresent(e -> key(text, "photon_energy_ev", Decimal.text(e)));
        set.sourceAnalyserAngleDeg().ifPresent(a -> key(text, "source_analyser_angle_deg", Decimal.text(a)));
        key(text, "transmission", set.transmission().word());
        key(text, "mean_free_path", set.meanFreePath());
        key(
                text,
                "backgrounds",
                String.join(
                        " ",
                        set.backgrounds().stream().map(BackgroundFamily::word).toList()));
        key(text, "shake_up", set.shakeUpInside() ? "inside" : "outside");
        text.append(COLUMNS).append('\n');
        factors.factors()
                .forEach((line, factor) -> text.append(line)
                        .append(',')
                        .append(Decimal.text(factor.value()))
                        .append(',')
                        .append(Decimal.text(factor.standardUncertainty()))
                        .append('\n'));
        return text.toString();
    }

    private static void key(StringBuilder text, String key, String value) {
        text.append("# ")
                .append(key)
                .append(": ")
                .append(value.replaceAll("\\R", " "))
                .append('\n');
    }
}
