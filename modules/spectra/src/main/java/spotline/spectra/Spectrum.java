package spotline.spectra;

import java.util.Objects;
import java.util.Optional;

/** One spectrum of a set: a view, nothing is copied until a kernel asks for its values. */
public record Spectrum(SpectrumSet set, int index) {
    public Spectrum {
        Objects.checkIndex(index, set.size());
    }

    public Acquisition acquisition() {
        return set.acquisition();
    }

    public Axis axis() {
        return set.axis();
    }

    /** Copy of the n values of the first ordinate of a kind. */
    public Optional<double[]> values(Ordinate.Kind kind) {
        int n = axis().channels();
        return set.ordinate(kind).map(ordinate -> ordinate.copy(index * n, (index + 1) * n));
    }
}
