package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.formats.source.NumberText;
import spotline.formats.source.Warnings;
import spotline.spectra.Counting;
import spotline.spectra.Ordinate;
import spotline.spectra.Quantity;

/** What the corresponding variables of one block are, and whether they are counts. */
final class OrdinateReading {
    /** {@code c/s} is the standard's; the others are common practice, no source. */
    private static final Set<String> RATE_UNITS =
            Set.of("c/s", "cps", "counts/s", "count/s", "counts/sec", "counts per second", "counts s-1", "c s-1");

    /** {@code d} (a number) and {@code n} (not defined) are the standard's; the others are common practice, no source. */
    private static final Set<String> COUNT_UNITS = Set.of("d", "n", "c", "count", "counts");

    private final ExperimentBlock block;
    private final String name;
    private final int line;
    private final Warnings warnings;

    OrdinateReading(ExperimentBlock block, String name, int line, Warnings warnings) {
        this.block = block;
        this.name = name;
        this.line = line;
        this.warnings = warnings;
    }

    /**
     * @param first the first variable that is an ordinate; one before it is the abscissa
     * @param before the ordinates of the block before, whose equal parts are shared: a map has a great many blocks
     */
    List<Ordinate> ordinates(int first, List<Ordinate> before) {
        List<Ordinate> ordinates = new ArrayList<>();
        boolean intensitySeen = false;
        for (int k = first; k < block.variables().size(); k++) {
            Variable variable = block.variables().get(k);
            double[] values = blankUnknown(variable, block.ordinates().shared(k));
            Ordinate.Kind kind = Ordinate.Kind.OTHER;
            if (variable.label().toLowerCase(Locale.ROOT).contains("transmission")) kind = Ordinate.Kind.TRANSMISSION;
            else if (!intensitySeen) kind = Ordinate.Kind.INTENSITY;
            intensitySeen |= kind == Ordinate.Kind.INTENSITY;
            Counting counting = kind == Ordinate.Kind.INTENSITY ? counting(variable, values) : Counting.UNKNOWN;
            Quantity quantity = Quantity.of(variable.label(), variable.unit());
            if (k - first < before.size()) {
                quantity = Same.of(quantity, before.get(k - first).quantity());
                counting = Same.of(counting, before.get(k - first).counting());
            }
            ordinates.add(Ordinate.takingOver(quantity, kind, counting, values));
        }
        return ordinates;
    }

    /** 1E37 among the values would pass for a mighty peak. The block's own values stay as they are. */
    private double[] blankUnknown(Variable variable, double[] values) {
        double[] blanked = values;
        int unknown = 0;
        for (int i = 0; i < values.length; i++) {
            if (!Real.isUnknown(values[i])) continue;
            if (unknown == 0) blanked = values.clone();
            blanked[i] = Double.NaN;
            unknown++;
        }
        if (unknown > 0) {
            warnings.caution(
                    "iso14976-ordinate-not-known",
                    line,
                    name + ": " + unknown + " values of \"" + variable.label() + "\" are not known (1E37)");
        }
        return blanked;
    }

    private Counting counting(Variable variable, double[] values) {
        boolean pulses = block.signal().mode().strip().equalsIgnoreCase(Signal.PULSE_COUNTING);
        if (!pulses || block.technique() == Technique.AES_DIFF) return Counting.UNKNOWN;
        String unit = variable.unit().strip().toLowerCase(Locale.ROOT);
        boolean rate = RATE_UNITS.contains(unit);
        if (!rate && !COUNT_UNITS.contains(unit)) return Counting.UNKNOWN;
        for (double value : values) {
            // A value that is not known says nothing of the others.
            if (value < 0 || (!rate && value != Math.rint(value) && !Double.isNaN(value))) {
                tellUnknownStatistics(
                        "iso14976-not-counts",
                        "\"" + variable.label() + "\" should hold " + (rate ? "counts per second" : "counts")
                                + ", but has the value " + NumberText.exact(value));
                return Counting.UNKNOWN;
            }
        }
        return rate ? rate() : Counting.COUNTS;
    }

    private Counting rate() {
        Signal signal = block.signal();
        double seconds = signal.collectionTime().positive().orElse(0)
                * signal.scans().positive().orElse(0);
        if (seconds > 0 && Double.isFinite(seconds)) return Counting.rate(OptionalDouble.of(seconds));
        tellUnknownStatistics(
                "iso14976-rate-without-time",
                "it holds counts per second, collection time " + signal.collectionTime() + " s, scans "
                        + signal.scans());
        return Counting.UNKNOWN;
    }

    private void tellUnknownStatistics(String rule, String why) {
        warnings.caution(rule, line, name + ": " + why + "; its counting statistics are taken as not known");
    }
}
