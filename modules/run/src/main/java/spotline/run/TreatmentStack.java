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
final class TreatmentStack {
    private static final CheckedJson JSON =
            CheckedJson.of("spotline-treatment", 1, "/spotline/schema/treatment-1.schema.json", JsonLimits.DEFAULT);

    private final JsonNode base;
    private final HolderRunFile file;
    private final String name;

    /** Errors: every fault of every patch at once, with its pointer. */
    TreatmentStack(HolderRunFile file, String name, Optional<ObjectNode> commandLine) throws ReadException {
        this.file = file;
        this.name = name;
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
        JsonNode merged = DefaultTreatment.json();
        if (commandLine.isPresent()) merged = MergePatch.apply(merged, commandLine.get());
        base = MergePatch.apply(merged, file.treatment());
    }

    static ObjectNode read(java.nio.file.Path treatmentFile) throws ReadException {
        return JSON.read(treatmentFile);
    }

    /** Errors: a setting out of its range, at the spot. */
    Treatment of(Spot spot, int index) throws ReadException {
        JsonNode merged = base;
        Optional<String> family = spot.sample().flatMap(Sample::family);
        if (family.isPresent() && file.families().containsKey(family.get())) {
            merged = MergePatch.apply(merged, file.families().get(family.get()));
        }
        merged = MergePatch.apply(merged, spot.treatment());
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
