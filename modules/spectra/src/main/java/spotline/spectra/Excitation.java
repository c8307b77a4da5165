package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What excited the electrons.
 *
 * @param source label as the file or record gives it, empty when not known
 * @param photonEnergyEv characteristic energy, eV
 */
public record Excitation(String source, OptionalDouble photonEnergyEv, Optional<Boolean> monochromated) {
    public static final Excitation UNKNOWN = new Excitation("", OptionalDouble.empty(), Optional.empty());

    public Excitation {
        requireNonNull(source, "source");
        if (photonEnergyEv.isPresent() && !(photonEnergyEv.getAsDouble() > 0)) {
            throw new IllegalArgumentException("photon energy must be above 0 eV, was " + photonEnergyEv.getAsDouble());
        }
    }
}
