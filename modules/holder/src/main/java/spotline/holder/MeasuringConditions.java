package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was set while the spectra were taken, for the record alone: no number depends on it.
 *
 * @param xRayPowerW power of the X-ray source, W
 * @param analyserMode in the lab's own words: constant pass energy, constant retard ratio
 * @param lens mode of the analyser's lens, in the lab's own words
 * @param pressureMbar in the analysis chamber while measuring, mbar
 * @param sampleTemperatureC while measuring, degrees Celsius
 * @param ionGun its settings, in the lab's own words
 * @param neutraliser type and settings, in the lab's own words
 * @param linearToCountsPerSecond up to which the counting was found linear, counts per second
 */
public record MeasuringConditions(
        OptionalDouble xRayPowerW,
        Optional<String> analyserMode,
        Optional<String> lens,
        OptionalDouble pressureMbar,
        OptionalDouble sampleTemperatureC,
        Optional<String> ionGun,
        Optional<String> neutraliser,
        OptionalDouble linearToCountsPerSecond) {
    public static final MeasuringConditions UNKNOWN = new MeasuringConditions(
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty());

    public MeasuringConditions {
        requireNonNull(analyserMode, "analyserMode");
        requireNonNull(lens, "lens");
        requireNonNull(ionGun, "ionGun");
        requireNonNull(neutraliser, "neutraliser");
    }
}
