package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A piece on the holder.
 *
 * @param id unique among the holder's specimens
 * @param ownSpot id of the spot that declared the specimen for itself
 * @param centre centre of the outline
 * @param rotationDeg of the outline about its centre, degrees, counter-clockwise as seen from the analyser
 * @param thicknessMm with tape or slip, mm
 * @param transfer how it gets to the load lock without meeting the air
 */
public record Specimen(
        String id,
        Optional<String> ownSpot,
        Optional<PointMm> centre,
        Optional<Outline> outline,
        double rotationDeg,
        OptionalDouble thicknessMm,
        Optional<Sample> sample,
        Mount mount,
        Optional<Transfer> transfer) {
    public Specimen {
        if (id.isBlank()) throw new IllegalArgumentException("a specimen needs an id");
        requireNonNull(ownSpot, "ownSpot");
        requireNonNull(mount, "mount");
        requireNonNull(transfer, "transfer");
        if (!Double.isFinite(rotationDeg)) {
            throw new IllegalArgumentException("rotation must be finite, was " + rotationDeg + " deg");
        }
    }

    /** For messages: {@code specimen A (liner chip)}, or {@code sample contact strip (spot 2)} for a spot's own. */
    public String label() {
        Optional<String> name = sample.map(Sample::name);
        if (ownSpot.isPresent()) {
            String spot = "spot " + ownSpot.get();
            return name.map(text -> "sample " + text + " (" + spot + ")").orElse("the specimen of " + spot);
        }
        return "specimen " + id + name.map(text -> " (" + text + ")").orElse("");
    }
}
