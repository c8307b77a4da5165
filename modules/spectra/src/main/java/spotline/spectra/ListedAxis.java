package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;

/** Values given one by one: irregular scans, and series of single values. */
public final class ListedAxis implements Axis {
    private final Quantity quantity;
    private final double[] values;

    /** Errors: {@link IllegalArgumentException} without a value or when one is not finite. */
    public ListedAxis(Quantity quantity, double[] values) {
        this.quantity = requireNonNull(quantity, "quantity");
        this.values = values.clone();
        if (values.length == 0) throw new IllegalArgumentException("an axis needs a value");
        for (double value : values) {
            if (!Double.isFinite(value)) throw new IllegalArgumentException("axis value is not finite, was " + value);
        }
    }

    @Override
    public Quantity quantity() {
        return quantity;
    }

    @Override
    public int channels() {
        return values.length;
    }

    @Override
    public double value(int channel) {
        return values[channel];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ListedAxis that && quantity.equals(that.quantity) && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * quantity.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "ListedAxis[" + quantity + ", " + values.length + " channels]";
    }
}
