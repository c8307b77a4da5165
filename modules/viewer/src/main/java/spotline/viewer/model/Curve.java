package spotline.viewer.model;

/**
 * Values over energies.
 *
 * <p>Shape: two arrays of one length, copied in; out only by index or as copies. Units: eV, and those of the scan's
 * ordinate or of a residual.
 */
public final class Curve {
    private final String name;
    private final double[] energies;
    private final double[] values;

    /** Errors: {@link IllegalArgumentException} when the lengths differ. */
    public Curve(String name, double[] energies, double[] values) {
        if (energies.length != values.length) {
            throw new IllegalArgumentException(
                    "one value an energy, were " + energies.length + " and " + values.length);
        }
        this.name = name;
        this.energies = energies.clone();
        this.values = values.clone();
    }

    public String name() {
        return name;
    }

    public int channels() {
        return energies.length;
    }

    public double energy(int channel) {
        return energies[channel];
    }

    public double value(int channel) {
        return values[channel];
    }

    public double[] energies() {
        return energies.clone();
    }

    public double[] values() {
        return values.clone();
    }

    /** The same values at energies moved by a shift, eV. */
    public Curve shifted(double shiftEv) {
        double[] moved = energies.clone();
        for (int i = 0; i < moved.length; i++) moved[i] += shiftEv;
        return new Curve(name, moved, values);
    }

    public Curve times(double factor) {
        double[] scaled = values.clone();
        for (int i = 0; i < scaled.length; i++) scaled[i] *= factor;
        return new Curve(name, energies, scaled);
    }

    public Curve named(String newName) {
        return new Curve(newName, energies, values);
    }

    /** This less another, at this one's energies, the other between its channels along straight lines; where both exist. */
    public Curve minus(Curve other) {
        int from = 0;
        int to = energies.length;
        while (from < to && energies[from] < other.energies[0]) from++;
        while (to > from && energies[to - 1] > other.energies[other.energies.length - 1]) to--;
        double[] x = new double[to - from];
        double[] y = new double[to - from];
        int k = 0;
        for (int i = from; i < to; i++) {
            while (k + 2 < other.energies.length && other.energies[k + 1] < energies[i]) k++;
            double width = other.energies[k + 1] - other.energies[k];
            double share = (energies[i] - other.energies[k]) / width;
            x[i - from] = energies[i];
            y[i - from] = values[i] - (other.values[k] * (1 - share) + other.values[k + 1] * share);
        }
        return new Curve(name, x, y);
    }

    /** Highest value less lowest; 0 without channels. */
    public double span() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        return values.length == 0 ? 0 : high - low;
    }

    public double lowest() {
        double low = Double.POSITIVE_INFINITY;
        for (double v : values) low = Math.min(low, v);
        return low;
    }
}
