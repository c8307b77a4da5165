package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;

/**
 * A part that lies on a specimen to hold or connect it: a clip, a strap, a mask, a strip of tape.
 *
 * @param name in the lab's own words
 * @param material in plain words
 * @param centre of its outline on the holder, as every position
 * @param rotationDeg of the outline about its centre, degrees, counter-clockwise as seen from the analyser
 */
public record Clip(
        Optional<String> name,
        Optional<String> material,
        Optional<PointMm> centre,
        Optional<Outline> outline,
        double rotationDeg) {
    public Clip {
        requireNonNull(name, "name");
        requireNonNull(material, "material");
        requireNonNull(centre, "centre");
        requireNonNull(outline, "outline");
        if (!Double.isFinite(rotationDeg)) {
            throw new IllegalArgumentException("rotation must be finite, was " + rotationDeg + " deg");
        }
    }

    /** Its name, else {@code copper clip} after its material, else {@code clip}. */
    public String label() {
        if (name.isPresent()) return name.get();
        if (material.isEmpty()) return "clip";
        return material.get().endsWith("clip") ? material.get() : material.get() + " clip";
    }
}
