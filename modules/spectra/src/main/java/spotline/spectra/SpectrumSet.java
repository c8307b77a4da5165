package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;

/**
 * Spectra of one acquisition on one axis: one spectrum, a depth series, a map.
 *
 * <p>Shape: s spectra of n channels; each ordinate holds s x n values, each coordinate s values.
 */
public record SpectrumSet(Acquisition acquisition, Axis axis, List<Coordinate> coordinates, List<Ordinate> ordinates) {
    public SpectrumSet {
        requireNonNull(acquisition, "acquisition");
        requireNonNull(axis, "axis");
        coordinates = List.copyOf(coordinates);
        ordinates = List.copyOf(ordinates);
        if (ordinates.isEmpty()) throw new IllegalArgumentException("a spectrum set needs an ordinate");
        int size = ordinates.get(0).size();
        if (size == 0 || size % axis.channels() != 0) {
            throw new IllegalArgumentException(
                    "values must be a multiple of the " + axis.channels() + " channels of the axis, were " + size);
        }
        for (Ordinate ordinate : ordinates) {
            if (ordinate.size() != size) throw new IllegalArgumentException("ordinates differ in length");
        }
        for (Coordinate coordinate : coordinates) {
            if (coordinate.size() != size / axis.channels()) {
                throw new IllegalArgumentException("coordinate " + coordinate.name() + " needs a value a spectrum");
            }
        }
    }

    /** Number of spectra. */
    public int size() {
        return ordinates.get(0).size() / axis.channels();
    }

    public Spectrum spectrum(int index) {
        return new Spectrum(this, index);
    }

    /** The first ordinate of a kind. */
    public Optional<Ordinate> ordinate(Ordinate.Kind kind) {
        return ordinates.stream().filter(o -> o.kind() == kind).findFirst();
    }
}
