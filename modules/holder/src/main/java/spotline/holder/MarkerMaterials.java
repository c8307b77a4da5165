package spotline.holder;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Tells from a mount's record which rows of the published table of mount materials concern it. Source of the words:
 * common practice, no source.
 */
final class MarkerMaterials {
    private static final String CARBON_TAPE = "carbon-tape";
    private static final String SILICONE = "silicone";
    private static final String GLASS = "glass";
    private static final String BRASS = "brass-clip";
    private static final String STAINLESS = "stainless-clip";
    private static final String GOLD = "gold-clip";
    private static final String INDIUM = "indium-foil";
    private static final String ALUMINIUM = "aluminium-foil";

    /** Words by which people name a material, and its row. */
    private static final List<Named> WORDS = List.of(
            new Named(CARBON_TAPE, CARBON_TAPE, "carbon tape", "conductive carbon"),
            new Named(
                    SILICONE, SILICONE, "adhesive tape", "ordinary tape", "double-sided tape", "sticky tape", "grease"),
            new Named(GLASS, GLASS, "cover slip"),
            new Named(BRASS, "brass", "copper"),
            new Named(STAINLESS, "stainless", "steel"),
            new Named(GOLD, "gold"),
            new Named(INDIUM, "indium"),
            new Named("silver-paint", "silver"),
            new Named(ALUMINIUM, "aluminium", "aluminum"),
            new Named("fluoropolymer", "fluoropolymer", "ptfe", "fluorinated"));

    private record Named(String id, String... words) {
        boolean in(String text) {
            for (String word : words) {
                if (text.contains(word)) return true;
            }
            return false;
        }
    }

    private MarkerMaterials() {}

    static List<String> of(Mount mount) {
        Set<String> ids = new TreeSet<>();
        for (String material : mount.materials()) add(ids, material);
        for (Clip clip : mount.clips()) {
            add(ids, clip.name().orElse("") + " " + clip.material().orElse(""));
        }
        List<String> byMethod = candidates(mount.method());
        boolean declared = byMethod.stream().anyMatch(ids::contains);
        if (!declared) ids.addAll(byMethod);
        return List.copyOf(ids);
    }

    private static void add(Set<String> ids, String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        for (Named named : WORDS) {
            if (named.in(lower)) ids.add(named.id());
        }
    }

    /** What a method brings along when the record does not say which of these it was. */
    private static List<String> candidates(MountMethod method) {
        return switch (method) {
            case CARBON_TAPE -> List.of(CARBON_TAPE);
            case ADHESIVE_TAPE -> List.of(SILICONE);
            case POWDER_ON_TAPE -> List.of(CARBON_TAPE, SILICONE);
            case COVER_SLIP -> List.of(GLASS);
            case METAL_CLIP -> List.of(BRASS, STAINLESS, GOLD);
            case SCREWED, STUB -> List.of(BRASS, STAINLESS);
            case PRESSED_IN_FOIL -> List.of(INDIUM, ALUMINIUM);
            case PELLET, OTHER, UNKNOWN -> List.of();
        };
    }
}
