package spotline.formats.text;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.NumberText;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;
import spotline.spectra.Acquisition;
import spotline.spectra.Analyser;
import spotline.spectra.Axis;
import spotline.spectra.Counting;
import spotline.spectra.EnergyScale;
import spotline.spectra.Excitation;
import spotline.spectra.HeaderField;
import spotline.spectra.ListedAxis;
import spotline.spectra.Ordinate;
import spotline.spectra.Quantity;
import spotline.spectra.SpectrumSet;
import spotline.spectra.Timing;

/** Reads columns of numbers as one spectrum, by what a person declared them to be. */
public final class TextColumnsReader {
    /** Name of the format in messages and probes. */
    public static final String FORMAT = "columns of numbers";

    private TextColumnsReader() {}

    /** How sure it is that a head is that of columns of numbers: never wholly, for anything may be. */
    public static Probe probe(byte[] head) {
        String format = FORMAT;
        int rows = 0;
        TextLine line = new TextLine();
        TextRows.AllNumbers wanted = new TextRows.AllNumbers();
        int start = 0;
        for (int i = 0; i <= head.length; i++) {
            boolean atEnd = i == head.length;
            if (!atEnd && head[i] == 0) return new Probe(format, Probe.Verdict.NO, "it holds bytes that no text has");
            if (!atEnd && head[i] != '\n' && head[i] != '\r') continue;
            line.split(head, start, i, false);
            boolean row = wanted.row(line);
            if (!row) {
                line.split(head, start, i, true);
                row = wanted.row(line);
            }
            if (row) rows++;
            start = i + 1;
        }
        return rows >= 2
                ? new Probe(format, Probe.Verdict.MAYBE, "its head has " + rows + " rows of numbers")
                : new Probe(format, Probe.Verdict.NO, "its head has " + rows + " rows of two or more numbers");
    }

    /**
     * Reads the declared columns.
     *
     * <p>Shape: n rows become one spectrum of n channels in the file's order. The axis is regular when all steps agree
     * to a millionth of a step.
     *
     * <p>Errors: {@link ReadException} with the line of a row that does not fit in, of an energy that turns back, or for
     * fewer than two rows.
     *
     * @param name of the file, as messages give it
     * @param size bytes of the whole file; a negative number when not known
     */
    public static TextSpectrum read(String name, InputStream in, long size, ReadLimits limits, TextColumns columns)
            throws ReadException {
        Warnings warnings = new Warnings(name);
        LineSource lines = new LineSource(name, in, size, limits);
        TextRows rows =
                new TextRows(lines, warnings, limits, new TextRows.Declared(columns.energy(), columns.ordinate()));
        double[] energies = new double[1024];
        double[] values = new double[1024];
        int n = 0;
        while (rows.next()) {
            if (n == energies.length) {
                energies = Arrays.copyOf(energies, 2 * n);
                values = Arrays.copyOf(values, 2 * n);
            }
            energies[n] = rows.value(columns.energy());
            values[n] = rows.value(columns.ordinate());
            refuseTurn(lines, energies, n);
            n++;
        }
        if (n < 2) {
            throw new ReadException(
                    lines.place(),
                    "found " + n + " rows with numbers in columns " + columns.energy() + " and " + columns.ordinate(),
                    "2 or more");
        }
        return spectrum(name, rows, columns, Arrays.copyOf(energies, n), Arrays.copyOf(values, n), warnings);
    }

    private static void refuseTurn(LineSource lines, double[] energies, int n) throws ReadException {
        if (n == 0) return;
        double step = energies[n] - energies[n - 1];
        boolean turns = step == 0 || (n > 1 && Math.signum(step) != Math.signum(energies[1] - energies[0]));
        if (turns) {
            throw new ReadException(
                    lines.place(),
                    "found the energy " + NumberText.exact(energies[n]) + " eV after "
                            + NumberText.exact(energies[n - 1]) + " eV",
                    "energies that run one way");
        }
    }

    private static TextSpectrum spectrum(
            String name, TextRows rows, TextColumns columns, double[] energies, double[] values, Warnings warnings) {
        Quantity energy = columns.scale() == EnergyScale.BINDING ? Quantity.bindingEnergy() : Quantity.kineticEnergy();
        Timing timing = new Timing(columns.dwellSeconds(), columns.scans(), OptionalDouble.empty());
        Counting counting = counting(rows.firstRowLine(), columns, timing, values, warnings);
        String unit = switch (columns.ordinateKind()) {
            case COUNTS -> "counts";
            case COUNTS_PER_SECOND -> "counts/s";
            case UNKNOWN -> "";
        };
        Ordinate ordinate = new Ordinate(Quantity.of("intensity", unit), Ordinate.Kind.INTENSITY, counting, values);
        Acquisition acquisition = new Acquisition(
                name,
                "",
                "",
                Optional.empty(),
                new Excitation("", OptionalDouble.of(columns.photonEnergyEv()), Optional.empty()),
                new Analyser("", columns.passEnergyEv(), OptionalDouble.empty(), OptionalDouble.empty()),
                timing,
                "",
                "",
                OptionalDouble.empty(),
                List.of(),
                rows.comments(),
                declared(columns));
        Axis axis = Steps.axis(energy, energies);
        if (axis instanceof ListedAxis) {
            warnings.note(
                    "text-irregular-steps",
                    rows.firstRowLine(),
                    "the energies are not equally spaced, " + Steps.range(energies));
        }
        SpectrumSet set = new SpectrumSet(acquisition, axis, List.of(), List.of(ordinate));
        return new TextSpectrum(rows.firstRowLine(), set, warnings.findings());
    }

    private static Counting counting(int line, TextColumns columns, Timing timing, double[] values, Warnings warnings) {
        if (columns.ordinateKind() == TextColumns.OrdinateKind.UNKNOWN) {
            warnings.caution(
                    "text-ordinate-unknown",
                    line,
                    "nobody declared what the ordinate is; its counting statistics are taken as not known");
            return Counting.UNKNOWN;
        }
        boolean counts = columns.ordinateKind() == TextColumns.OrdinateKind.COUNTS;
        for (double value : values) {
            if (value < 0 || (counts && value != Math.rint(value))) {
                warnings.caution(
                        "text-not-counts",
                        line,
                        "the ordinate is declared as " + columns.ordinateKind().word() + ", but has the value "
                                + NumberText.exact(value) + "; its counting statistics are taken as not known");
                return Counting.UNKNOWN;
            }
        }
        if (counts) return Counting.COUNTS;
        if (timing.secondsPerChannel().isEmpty()) {
            warnings.caution(
                    "text-rate-without-time",
                    line,
                    "the ordinate is a rate, but dwell time or scans are not declared; its counting statistics are"
                            + " taken as not known");
        }
        return Counting.rate(timing.secondsPerChannel());
    }

    private static List<HeaderField> declared(TextColumns columns) {
        List<HeaderField> fields = new ArrayList<>();
        fields.add(new HeaderField("energy column (declared)", Integer.toString(columns.energy())));
        fields.add(new HeaderField("ordinate column (declared)", Integer.toString(columns.ordinate())));
        fields.add(new HeaderField(
                "ordinate kind (declared)", columns.ordinateKind().word()));
        return fields;
    }
}
