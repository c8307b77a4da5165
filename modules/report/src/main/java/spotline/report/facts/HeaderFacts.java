package spotline.report.facts;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spotline.core.Decimal;
import spotline.run.LinkedSpectrum;
import spotline.spectra.HeaderField;

/**
 * What the header of a spectrum's own file says of the way it was taken; empty where it says nothing.
 *
 * <p>Source of names and units: the items of a block of ISO 14976; 1E37 stands for what the writer did not know.
 */
public final class HeaderFacts {
    private static final double NOT_KNOWN = 1e37;
    private static final String PARAMETER = "additional numerical parameter ";

    private HeaderFacts() {}

    /** "150 W" */
    public static String xRayPower(LinkedSpectrum spectrum) {
        return quantity(spectrum, "analysis source strength", "W");
    }

    /** Widths of the X-ray beam on the sample. */
    public static String beamWidth(LinkedSpectrum spectrum) {
        return widths(spectrum, "analysis source beam width");
    }

    /** Widths of the area that the analyser sees. */
    public static String analysisWidth(LinkedSpectrum spectrum) {
        return widths(spectrum, "analysis width");
    }

    public static String analyserMode(LinkedSpectrum spectrum) {
        String mode = field(spectrum, "analyser mode").orElse("").strip();
        return switch (mode.toUpperCase(Locale.ROOT)) {
            case "FAT" -> "constant pass energy";
            case "FRR" -> "constant retard ratio";
            default -> mode;
        };
    }

    /** The magnification, and what the file calls a lens besides. */
    public static String lens(LinkedSpectrum spectrum) {
        OptionalDouble magnification = number(spectrum, "magnification of analyser transfer lens");
        Stream<String> magnified = magnification.isPresent() && magnification.getAsDouble() > 0
                ? Stream.of("magnification " + Decimal.text(magnification))
                : Stream.empty();
        return joined(Stream.concat(magnified, mentions(spectrum, "lens")));
    }

    /** Parameters and comments that speak of a pressure or a vacuum, word for word. */
    public static String pressure(LinkedSpectrum spectrum) {
        return joined(Stream.concat(mentions(spectrum, "pressure"), mentions(spectrum, "vacuum")));
    }

    /** Parameters and comments that speak of a temperature, word for word. */
    public static String temperature(LinkedSpectrum spectrum) {
        return joined(mentions(spectrum, "temperature"));
    }

    /** Of the charge neutraliser or flood source, word for word. */
    public static String neutraliser(LinkedSpectrum spectrum) {
        return joined(Stream.concat(mentions(spectrum, "neutrali"), mentions(spectrum, "flood")));
    }

    public static String ionGun(LinkedSpectrum spectrum) {
        return joined(Stream.of(
                quantity(spectrum, "sputtering source energy", "eV"),
                quantity(spectrum, "sputtering source beam current", "nA"),
                field(spectrum, "sputtering mode").orElse("").strip()));
    }

    public static String bias(LinkedSpectrum spectrum) {
        OptionalDouble bias = number(spectrum, "target bias");
        return bias.isPresent() ? Decimal.text(bias) + " V" : "";
    }

    public static String counting(LinkedSpectrum spectrum) {
        return field(spectrum, "signal mode").orElse("").strip();
    }

    /** Seconds on a channel and scan. */
    public static OptionalDouble dwellSeconds(LinkedSpectrum spectrum) {
        return positive(number(spectrum, "signal collection time"));
    }

    public static OptionalDouble scans(LinkedSpectrum spectrum) {
        return positive(number(spectrum, "number of scans to compile this block"));
    }

    /**
     * Where in a depth profile a spectrum was taken.
     *
     * @param axis name and unit: "Etch time (s)"
     */
    public record Level(String axis, double value) {}

    /** The experimental variable that is a depth or a time of etching. */
    public static Optional<Level> level(LinkedSpectrum spectrum) {
        for (HeaderField field : spectrum.header()) {
            if (!field.name().startsWith("label of experimental variable ")) continue;
            String label = field.value().strip();
            if (!(holds(label, "depth") || holds(label, "etch") || holds(label, "sputter"))) continue;
            String which = field.name().substring("label of ".length());
            OptionalDouble value = number(spectrum, "value of " + which);
            if (value.isEmpty()) continue;
            String unit = field(spectrum, "units of " + which).orElse("").strip();
            String name = Character.toUpperCase(label.charAt(0)) + label.substring(1);
            boolean none = unit.isEmpty() || unit.equals("d") || unit.equals("n/a");
            return Optional.of(new Level(none ? name : name + " (" + unit + ")", value.getAsDouble()));
        }
        return Optional.empty();
    }

    /** "5 × 10⁻⁹" for what is too small to be written out. */
    public static String scientific(double value) {
        String text = Decimal.text(value);
        int e = text.indexOf('E');
        if (e < 0) return text;
        StringBuilder power = new StringBuilder();
        for (char c : text.substring(e + 1).toCharArray()) {
            if (c == '-') power.append('\u207B');
            else if (Character.isDigit(c))
                power.append("\u2070\u00B9\u00B2\u00B3\u2074\u2075\u2076\u2077\u2078\u2079".charAt(c - '0'));
        }
        return text.substring(0, e) + " \u00d7 10" + power;
    }

    private static OptionalDouble positive(OptionalDouble value) {
        return value.isPresent() && value.getAsDouble() > 0 ? value : OptionalDouble.empty();
    }

    private static String widths(LinkedSpectrum spectrum, String name) {
        OptionalDouble x = positive(number(spectrum, name + " x"));
        OptionalDouble y = positive(number(spectrum, name + " y"));
        if (x.isEmpty() || y.isEmpty()) return "";
        // The standard has micrometres.
        return Decimal.text(x.getAsDouble() / 1000) + " \u00d7 " + Decimal.text(y.getAsDouble() / 1000) + " mm";
    }

    private static String quantity(LinkedSpectrum spectrum, String name, String unit) {
        OptionalDouble value = positive(number(spectrum, name));
        return value.isPresent() ? Decimal.text(value) + " " + unit : "";
    }

    private static Optional<String> field(LinkedSpectrum spectrum, String name) {
        return spectrum.header().stream()
                .filter(f -> f.name().equals(name))
                .map(HeaderField::value)
                .findFirst();
    }

    private static OptionalDouble number(LinkedSpectrum spectrum, String name) {
        return field(spectrum, name).map(HeaderFacts::known).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble known(String text) {
        try {
            double value = Double.parseDouble(text.strip());
            return Math.abs(value) < NOT_KNOWN * 0.999 ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException notANumber) {
            return OptionalDouble.empty();
        }
    }

    /** Numerical parameters named so, with their units, and lines of comment that hold the word. */
    private static Stream<String> mentions(LinkedSpectrum spectrum, String word) {
        Stream<String> parameters = spectrum.header().stream()
                .filter(f -> f.name().startsWith("label of " + PARAMETER) && holds(f.value(), word))
                .map(f -> parameter(spectrum, f.value(), f.name().substring("label of ".length())));
        Stream<String> comments = spectrum.header().stream()
                .filter(f -> comment(f.name()) && holds(f.value(), word))
                .map(f -> "\u201c" + f.value().strip() + "\u201d");
        return Stream.concat(parameters, comments);
    }

    private static String parameter(LinkedSpectrum spectrum, String label, String which) {
        OptionalDouble value = number(spectrum, "value of " + which);
        if (value.isEmpty()) return "";
        String unit = field(spectrum, "units of " + which).orElse("").strip();
        return (label.strip() + " " + scientific(value.getAsDouble()) + " " + (unit.equals("d") ? "" : unit)).strip();
    }

    private static boolean comment(String name) {
        return name.isEmpty() || name.startsWith("comment line") || name.startsWith("block comment line");
    }

    private static boolean holds(String text, String word) {
        return text.toLowerCase(Locale.ROOT).contains(word);
    }

    private static String joined(Stream<String> parts) {
        return parts.filter(p -> !p.isEmpty()).distinct().collect(Collectors.joining(", "));
    }

    /** Each thing that is said of any of them, once. */
    public static List<String> distinct(Stream<String> words) {
        return words.filter(w -> !w.isEmpty()).distinct().toList();
    }
}
