package spotline.spectra;

/** Values of the channels, in the order of measurement. */
public sealed interface Axis permits RegularAxis, ListedAxis {
    Quantity quantity();

    int channels();

    /** Value of a channel, counted from 0, in the unit of {@link #quantity()}. */
    double value(int channel);

    default double first() {
        return value(0);
    }

    default double last() {
        return value(channels() - 1);
    }
}
