package spotline.reference;

import java.util.List;

/**
 * What a mount or a handling puts into a spectrum.
 *
 * @param id lower-case words joined by hyphens
 * @param mountMethods the mounting methods it belongs to; none for handling
 * @param evidence what tells it from the sample, for a person
 */
public record MountMaterial(
        String id, String name, List<String> mountMethods, String evidence, List<Marker> markers, String source) {
    public MountMaterial {
        mountMethods = List.copyOf(mountMethods);
        markers = List.copyOf(markers);
    }

    /**
     * A line of the material and where it lies.
     *
     * @param lowEv lowest binding energy, eV
     * @param highEv highest binding energy, eV
     * @param always without this line the material is not there
     */
    public record Marker(Line line, double lowEv, double highEv, boolean always) {}
}
