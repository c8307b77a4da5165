package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;

/** A named coordinate with a value for each spectrum of a set: etch time, x, y, emission angle. */
public final class Coordinate {
    private final String name;
    private final String unit;
    private final double[] values;

    public Coordinate(String name, String unit, double[] values) {
        this.name = requireNonNull(name, "name");
        this.unit = requireNonNull(unit, "unit");
        this.values = values.clone();
    }

    public String name() {
        return name;
    }

    public String unit() {
        return unit;
    }

    public int size() {
        return values.length;
    }

    public double value(int spectrum) {
        return values[spectrum];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Coordinate that
                && name.equals(that.name)
                && unit.equals(that.unit)
                && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return name + " [" + unit + "]";
    }
}
