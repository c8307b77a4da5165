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
 * @param azimuthDeg direction on the holder in which the inclination lengthens the analysis area, degrees,
 *     counter-clockwise from x; across the bar when empty
 * @param analysisArea the spot's own, at normal emission
 * @param positionUncertaintyMm standard uncertainty of the position, mm
 * @param etchSteps sputtering planned here, in order
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
        OptionalDouble azimuthDeg,
        Optional<AreaMm> analysisArea,
        OptionalDouble positionUncertaintyMm,
        SpotPurpose purpose,
        List<EtchStep> etchSteps,
        List<SpectrumEntry> spectra,
        ObjectNode treatment) {
    public Spot {
        if (id.isBlank()) throw new IllegalArgumentException("a spot needs an id");
        requireNonNull(specimen, "specimen");
        requireNonNull(analysisArea, "analysisArea");
        requireNonNull(purpose, "purpose");
        etchSteps = List.copyOf(etchSteps);
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

    /** Whether an ion gun is used here: an etch step is planned, or spectra were taken after one. */
    public boolean sputtered() {
        if (!etchSteps.isEmpty()) return true;
        for (SpectrumEntry entry : spectra) {
            if (entry.role() == SpectrumRole.ETCH) return true;
        }
        return false;
    }

    /** How often etching and measuring take turns, as planned or else as the spectra's roles show; 0 without etching. */
    public int etchCycles() {
        int cycles = 0;
        for (EtchStep step : etchSteps) cycles += step.cycles();
        if (cycles > 0) return cycles;
        for (SpectrumEntry entry : spectra) {
            if (entry.role() == SpectrumRole.ETCH) cycles++;
        }
        return cycles;
    }

    /** Name of the sample for tables and findings, empty when not known. */
    public String sampleName() {
        return sample().map(Sample::name).orElse("");
    }
}
