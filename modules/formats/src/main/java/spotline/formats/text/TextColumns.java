package spotline.formats.text;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.formats.source.NumberText;
import spotline.spectra.EnergyScale;

/**
 * What the columns of a text file are. Columns count from 1.
 *
 * @param energy column of the energies, eV
 * @param ordinate column of the measured values
 * @param scale of the energies: binding or kinetic
 * @param dwellSeconds collection time per scan and channel, s
 * @param scans number of scans together in the ordinate
 * @param passEnergyEv pass energy of the analyser, eV
 * @param photonEnergyEv photon energy, eV
 */
public record TextColumns(
        int energy,
        int ordinate,
        EnergyScale scale,
        OrdinateKind ordinateKind,
        OptionalDouble dwellSeconds,
        OptionalDouble scans,
        OptionalDouble passEnergyEv,
        double photonEnergyEv) {
    /** What the values of the ordinate are. */
    public enum OrdinateKind {
        /** Counts of all scans together. */
        COUNTS,
        COUNTS_PER_SECOND,
        UNKNOWN;

        /** The word used in files. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Highest number a column can have. */
    public static final int MOST_COLUMNS = 10_000;

    /** Errors: {@link IllegalArgumentException} that names every problem, see {@link #check}. */
    public TextColumns {
        requireNonNull(scale, "scale");
        requireNonNull(ordinateKind, "ordinateKind");
        Problems.throwIfAny(check(energy, ordinate, scale, dwellSeconds, scans, passEnergyEv, photonEnergyEv));
    }

    /** The four that cannot be left out, with nothing else known. */
    public static TextColumns of(int energy, int ordinate, EnergyScale scale, double photonEnergyEv) {
        return new TextColumns(
                energy,
                ordinate,
                scale,
                OrdinateKind.UNKNOWN,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                photonEnergyEv);
    }

    /** Every problem at once. */
    public static List<Problem> check(
            int energy,
            int ordinate,
            EnergyScale scale,
            OptionalDouble dwellSeconds,
            OptionalDouble scans,
            OptionalDouble passEnergyEv,
            double photonEnergyEv) {
        List<Problem> problems = new ArrayList<>();
        checkColumn(problems, "energy", energy);
        checkColumn(problems, "ordinate", ordinate);
        if (energy == ordinate) {
            problems.add(new Problem("ordinate", "column " + ordinate, "another column than the energy's"));
        }
        if (scale == EnergyScale.OTHER) problems.add(new Problem("scale", "other", "binding or kinetic"));
        checkPositive(problems, "dwellSeconds", dwellSeconds, "s");
        checkPositive(problems, "scans", scans, "");
        checkPositive(problems, "passEnergyEv", passEnergyEv, "eV");
        checkPositive(problems, "photonEnergyEv", OptionalDouble.of(photonEnergyEv), "eV");
        return problems;
    }

    private static void checkColumn(List<Problem> problems, String field, int column) {
        if (column < 1 || column > MOST_COLUMNS) {
            problems.add(new Problem(field, "column " + column, "a column from 1 to " + MOST_COLUMNS));
        }
    }

    private static void checkPositive(List<Problem> problems, String field, OptionalDouble value, String unit) {
        if (value.isEmpty()) return;
        double number = value.getAsDouble();
        if (!(number > 0) || Double.isInfinite(number)) {
            String found = Double.isFinite(number) ? NumberText.exact(number) : Double.toString(number);
            problems.add(new Problem(field, (found + " " + unit).strip(), ("a finite number above 0 " + unit).strip()));
        }
    }
}
