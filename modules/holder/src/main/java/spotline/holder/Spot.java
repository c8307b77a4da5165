package spotline.holder;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A place on the holder where something was or will be measured, tied to the specimen it lies on.
 *
 * @param specimen the declared one, or the spot's own
 * @param xMm centre of the analysis area along the bar, mm
 * @param yMm centre of the analysis area across the bar, mm
 * @param zMm height of the surface above the holder's reference height, mm
 * @param tiltDeg tilt of the surface about the bar's long axis, degrees
 * @param emissionAngleDeg the spot's own, degrees from the surface normal
 * @param treatment merge patch (RFC 7396), empty when the spot has none; copied in and out
 */
public record Spot(
        String id,
        Specimen specimen,
        OptionalDouble xMm,
        OptionalDouble yMm,
        OptionalDouble zMm,
        OptionalDouble tiltDeg,
        OptionalDouble emissionAngleDeg,
        List<SpectrumEntry> spectra,
        ObjectNode treatment) {
    public Spot {
        if (id.isBlank()) throw new IllegalArgumentException("a spot needs an id");
        requireNonNull(specimen, "specimen");
        spectra = List.copyOf(spectra);
        treatment = treatment.deepCopy();
    }

    @Override
    public ObjectNode treatment() {
        return treatment.deepCopy();
    }

    public Optional<Sample> sample() {
        return specimen.sample();
    }

    public Mount mount() {
        return specimen.mount();
    }

    public Optional<PointMm> position() {
        return xMm.isPresent() && yMm.isPresent()
                ? Optional.of(new PointMm(xMm.getAsDouble(), yMm.getAsDouble()))
                : Optional.empty();
    }

    /** Name of the sample for tables and findings, empty when not known. */
    public String sampleName() {
        return sample().map(Sample::name).orElse("");
    }
}
