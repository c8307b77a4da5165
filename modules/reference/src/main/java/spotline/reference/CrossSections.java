package spotline.reference;

import java.io.InputStream;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Relative cross sections and asymmetry parameters at five photon energies, and what lies between them. */
final class CrossSections {
    private static final double[] PHOTON_EV = {1253.6, 1486.6, 2984.3, 5414.7, 9251.7};
    private static final String[] COLUMN = {"mg_ka", "al_ka", "ag_la", "cr_ka", "ga_ka"};

    /** Within this of a tabulated energy the column itself is used, so that 1486.69 eV is Al K-alpha. */
    private static final double SAME_EV = 0.5;

    /** Closer to the edge than this, theory thresholds differ: the limit the table's flags use. */
    private static final double NEAR_THRESHOLD_EV = 60;

    private final Map<Line, double[]> relative = new LinkedHashMap<>();
    private final Map<String, List<Line>> wholeLines;
    private final Map<Line, double[]> beta = new HashMap<>();
    private final Map<Line, Double> threshold = new HashMap<>();

    CrossSections(Function<String, ? extends @Nullable InputStream> source) {
        for (Table.Row row : Table.read(source, "cross-sections/subshell.csv").rows()) {
            Line line = line(row, "orbital");
            add(relative, line, columns(row, "rel_c1s_"), row);
            double edge = row.number("binding_ev_epics2017");
            threshold.put(line, edge);
            threshold.merge(line.whole(), edge, Math::min);
        }
        for (Table.Row row : Table.read(source, "cross-sections/nl.csv").rows()) {
            Line line = line(row, "nl");
            double[] values = columns(row, "rel_c1s_");
            if (line.orbital().l() == 0) continue; // the subshell table has it
            add(relative, line, values, row);
        }
        for (Table.Row row :
                Table.read(source, "cross-sections/asymmetry-beta.csv").rows()) {
            add(beta, line(row, "nl"), columns(row, "beta_"), row);
        }
        wholeLines = relative.keySet().stream()
                .filter(line -> line.orbital().isWhole())
                .collect(Collectors.groupingBy(Line::element, Collectors.toUnmodifiableList()));
    }

    static Line line(Table.Row row, String orbital) {
        return row.make(() -> new Line(row.text("symbol"), Orbital.parse(row.text(orbital))));
    }

    private static void add(Map<Line, double[]> map, Line line, double[] values, Table.Row row) {
        if (map.put(line, values) != null) throw row.wrong("symbol", "each line once, " + line + " is there twice");
    }

    private static double[] columns(Table.Row row, String prefix) {
        double[] values = new double[COLUMN.length];
        for (int i = 0; i < values.length; i++)
            values[i] = row.optional(prefix + COLUMN[i]).orElse(Double.NaN);
        return values;
    }

    /** Whole nl lines of an element that have a cross section, in the order of the table. */
    List<Line> wholeLines(String element) {
        return wholeLines.getOrDefault(element, List.of());
    }

    OptionalDouble crossSection(Line line, double photonEv) {
        double[] values = relative.get(line);
        Double edge = threshold.get(line);
        if (values == null || edge == null || edge >= photonEv) return OptionalDouble.empty();
        return between(values, photonEv, true);
    }

    boolean nearThreshold(Line line, double photonEv) {
        return line.members().stream()
                .map(threshold::get)
                .anyMatch(edge -> edge != null && Math.abs(photonEv - edge) < NEAR_THRESHOLD_EV);
    }

    OptionalDouble asymmetry(Line line, double photonEv) {
        double[] values = beta.get(line.whole());
        return values == null ? OptionalDouble.empty() : between(values, photonEv, false);
    }

    /** Straight line over the logarithm of the photon energy; the values' logarithms too where {@code logarithmic}. */
    private static OptionalDouble between(double[] values, double photonEv, boolean logarithmic) {
        for (int i = 0; i < values.length; i++) {
            if (Math.abs(photonEv - PHOTON_EV[i]) <= SAME_EV) return finite(values[i]);
        }
        for (int i = 1; i < values.length; i++) {
            if (photonEv > PHOTON_EV[i - 1] && photonEv < PHOTON_EV[i]) {
                double share = Math.log(photonEv / PHOTON_EV[i - 1]) / Math.log(PHOTON_EV[i] / PHOTON_EV[i - 1]);
                double low = values[i - 1];
                double high = values[i];
                return finite(logarithmic ? low * Math.pow(high / low, share) : low + share * (high - low));
            }
        }
        return OptionalDouble.empty();
    }

    private static OptionalDouble finite(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
