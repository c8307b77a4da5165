package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.HolderRunFile;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;

/**
 * Resolves the treatment of each spot: documented defaults, then the file given on the command line, then the holder's,
 * the sample family's and the spot's own patch.
 *
 * <p>Source: JSON merge patch, RFC 7396.
 */
public final class TreatmentStack {
    private static final CheckedJson JSON =
            CheckedJson.of("spotline-treatment", 1, "/spotline/schema/treatment-1.schema.json", JsonLimits.DEFAULT);

    private final JsonNode base;
    private final HolderRunFile file;
    private final String name;

    /**
     * Errors: every fault of every patch at once, with its pointer.
     *
     * @param name of the holder run in errors
     */
    public TreatmentStack(HolderRunFile file, String name, Optional<ObjectNode> commandLine) throws ReadException {
        this.file = file;
        this.name = name;
        requireSound(file, name);
        JsonNode merged = DefaultTreatment.json();
        if (commandLine.isPresent()) merged = MergePatch.apply(merged, commandLine.get());
        base = MergePatch.apply(merged, file.treatment());
    }

    /**
     * Holds every patch of a holder run to the schema of treatments. Errors: every fault of every patch at once, with its
     * pointer.
     *
     * @param name of the holder run in errors
     */
    public static void requireSound(HolderRunFile file, String name) throws ReadException {
        List<ReadException> faults = new ArrayList<>();
        faults.addAll(JSON.faultsOfPart(name, "/treatment", file.treatment()));
        file.families()
                .forEach((family, patch) -> faults.addAll(JSON.faultsOfPart(
                        name, "/families/" + family.replace("~", "~0").replace("/", "~1"), patch)));
        for (int i = 0; i < file.spots().size(); i++) {
            faults.addAll(JSON.faultsOfPart(
                    name, "/spots/" + i + "/treatment", file.spots().get(i).treatment()));
        }
        if (!faults.isEmpty()) throw ReadException.all(faults);
    }

    /** The settings at a spot of a holder run that was accepted, as data. @param own whether the spot's patch is laid over */
    public static JsonNode merged(HolderRunFile file, Spot spot, boolean own) {
        JsonNode merged = family(file, spot, MergePatch.apply(DefaultTreatment.json(), file.treatment()));
        return own ? MergePatch.apply(merged, spot.treatment()) : merged;
    }

    private static JsonNode family(HolderRunFile file, Spot spot, JsonNode under) {
        return spot.sample()
                .flatMap(Sample::family)
                .flatMap(family -> Optional.ofNullable(file.families().get(family)))
                .map(patch -> MergePatch.apply(under, patch))
                .orElse(under);
    }

    /** A treatment file, or a part of a treatment, as it is written. */
    public static ObjectNode read(java.nio.file.Path treatmentFile) throws ReadException {
        return JSON.read(treatmentFile);
    }

    /**
     * The full settings in force at a spot. Errors: a setting out of its range, at the spot.
     *
     * @param index of the spot in the holder run, from 0
     */
    public Treatment of(Spot spot, int index) throws ReadException {
        JsonNode merged = MergePatch.apply(family(file, spot, base), spot.treatment());
        try {
            return TreatmentBinding.bind(merged);
        } catch (IllegalArgumentException e) {
            throw new ReadException(
                    Place.pointer(name, "/spots/" + index),
                    "the treatment of spot " + spot.id() + " has " + e.getMessage(),
                    "settings inside their limits");
        }
    }
}
