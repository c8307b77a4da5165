package spotline.spectra;

import java.util.OptionalDouble;

/**
 * Settings of the electron analyser.
 *
 * @param mode as the file gives it ({@code FAT}: constant pass energy), empty when not known
 * @param passEnergyEv pass energy in a constant-pass-energy mode, eV
 * @param retardRatio in a constant-retard-ratio mode
 * @param workFunctionEv as the file gives it, eV; never used to compute an energy
 */
public record Analyser(
        String mode, OptionalDouble passEnergyEv, OptionalDouble retardRatio, OptionalDouble workFunctionEv) {
    public static final Analyser UNKNOWN =
            new Analyser("", OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
