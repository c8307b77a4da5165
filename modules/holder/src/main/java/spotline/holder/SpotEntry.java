package spotline.holder;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A spot as the file writes it: it names a specimen or carries sample and mount itself. {@link HolderPlan} turns it into
 * a {@link Spot}, whose fields mean the same.
 *
 * @param specimen id of a declared specimen
 * @param outline outline of the spot's own specimen, centred on the spot
 * @param thicknessMm thickness of the spot's own specimen, mm
 * @param transfer of the spot's own specimen
 */
public record SpotEntry(
        String id,
        Optional<String> specimen,
        OptionalDouble xMm,
        OptionalDouble yMm,
        OptionalDouble zMm,
        OptionalDouble tiltDeg,
        OptionalDouble emissionAngleDeg,
        OptionalDouble azimuthDeg,
        Optional<AreaMm> analysisArea,
        OptionalDouble positionUncertaintyMm,
        SpotPurpose purpose,
        Optional<Sample> sample,
        Optional<Mount> mount,
        Optional<Outline> outline,
        OptionalDouble thicknessMm,
        Optional<Transfer> transfer,
        List<EtchStep> etchSteps,
        List<SpectrumEntry> spectra,
        ObjectNode treatment) {
    public SpotEntry {
        if (id.isBlank()) throw new IllegalArgumentException("a spot needs an id");
        requireNonNull(specimen, "specimen");
        requireNonNull(purpose, "purpose");
        boolean own = sample.isPresent() || mount.isPresent() || transfer.isPresent();
        if (specimen.isPresent() && own) {
            throw new IllegalArgumentException("a spot names a specimen or carries sample and mount, not both");
        }
        etchSteps = List.copyOf(etchSteps);
        spectra = List.copyOf(spectra);
        treatment = treatment.deepCopy();
    }

    @Override
    public ObjectNode treatment() {
        return treatment.deepCopy();
    }
}
