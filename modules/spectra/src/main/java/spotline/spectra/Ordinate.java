package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;

/** One measured variable of all spectra of a set, held contiguously: spectrum after spectrum, channel after channel. */
public final class Ordinate {
    /** What the values serve as. */
    public enum Kind {
        INTENSITY,
        /** Relative transmission of the spectrometer, recorded beside the intensity. */
        TRANSMISSION,
        OTHER
    }

    private final Quantity quantity;
    private final Kind kind;
    private final Counting counting;
    private final double[] values;

    public Ordinate(Quantity quantity, Kind kind, Counting counting, double[] values) {
        this(values.clone(), quantity, kind, counting);
    }

    private Ordinate(double[] owned, Quantity quantity, Kind kind, Counting counting) {
        this.quantity = requireNonNull(quantity, "quantity");
        this.kind = requireNonNull(kind, "kind");
        this.counting = requireNonNull(counting, "counting");
        this.values = owned;
    }

    /**
     * Takes the array over, for readers of files that fit into memory once and not twice. From then on nobody may write
     * to it.
     */
    public static Ordinate takingOver(Quantity quantity, Kind kind, Counting counting, double[] values) {
        return new Ordinate(values, quantity, kind, counting);
    }

    public Quantity quantity() {
        return quantity;
    }

    public Kind kind() {
        return kind;
    }

    public Counting counting() {
        return counting;
    }

    /** Number of values: spectra x channels. */
    public int size() {
        return values.length;
    }

    public double value(int index) {
        return values[index];
    }

    /** Copy of the values from {@code from} (inclusive) to {@code to} (exclusive). */
    public double[] copy(int from, int to) {
        return Arrays.copyOfRange(values, from, to);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ordinate that
                && quantity.equals(that.quantity)
                && kind == that.kind
                && counting.equals(that.counting)
                && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * quantity.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "Ordinate[" + quantity + ", " + values.length + " values]";
    }
}
