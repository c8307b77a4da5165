package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.reference.Line;
import spotline.reference.MountMaterial;
import spotline.reference.MountMaterial.Marker;
import spotline.reference.ReferenceData;
import spotline.run.SpotView;

/**
 * What of a material's marker lines a spot shows.
 *
 * @param partners elements of its other markers that are shown and not declared
 * @param inPlace whether every line of it that must be there is, at its energy once referenced; empty where the reference
 *     failed
 */
record Signature(MountMaterial material, SortedSet<String> partners, Optional<Boolean> inPlace) {
    static Optional<Signature> of(ReferenceData reference, String material, SpotView spot, double toleranceEv) {
        return reference.mountMaterials().stream()
                .filter(m -> m.id().equals(material))
                .findFirst()
                .map(m -> of(m, spot, toleranceEv));
    }

    private static Signature of(MountMaterial material, SpotView spot, double toleranceEv) {
        SortedSet<String> partners = new TreeSet<>();
        List<Boolean> placed = new ArrayList<>();
        for (Marker marker : material.markers()) {
            String element = marker.line().element();
            if (!marker.always() && spot.showsUndeclared(element)) partners.add(element);
            if (!marker.always() || element.equals("C") || element.equals("O")) continue;
            OptionalDouble at = spot.referencedEv(marker.line());
            if (at.isEmpty()) return new Signature(material, partners, Optional.empty());
            placed.add(at.getAsDouble() > marker.lowEv() - toleranceEv
                    && at.getAsDouble() < marker.highEv() + toleranceEv);
        }
        return new Signature(material, partners, Optional.of(placed.stream().allMatch(p -> p)));
    }

    /** Referenced energy of a line for a sentence: {@code " at 103.2 eV"}; nothing where it is not known. */
    static String at(SpotView spot, String line) {
        OptionalDouble at = spot.referencedEv(Line.parse(line));
        return at.isPresent() ? Rule.words(" at %.1f eV", at.getAsDouble()) : "";
    }
}
