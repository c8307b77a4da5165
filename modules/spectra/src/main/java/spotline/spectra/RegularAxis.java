package spotline.spectra;

import static java.util.Objects.requireNonNull;

/** Equally spaced values {@code start + i * step}. A binding-energy scan usually runs downwards, so {@code step < 0}. */
public record RegularAxis(Quantity quantity, double start, double step, int channels) implements Axis {
    public RegularAxis {
        requireNonNull(quantity, "quantity");
        if (!Double.isFinite(start)) throw new IllegalArgumentException("start is not finite, was " + start);
        if (!(Math.abs(step) > 0) || Double.isInfinite(step))
            throw new IllegalArgumentException("step must be finite and not 0, was " + step);
        if (channels < 1) throw new IllegalArgumentException("channels must be 1 or more, was " + channels);
    }

    /** Multiplied, not accumulated, so that the last channel does not drift. */
    @Override
    public double value(int channel) {
        return start + channel * step;
    }
}
