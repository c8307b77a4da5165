package spotline.demo;

import java.util.List;
import java.util.Optional;

/**
 * Where the shallow levels of an element stand in a solid: tables of atoms do not say, and a chemical shift of the core
 * levels does not carry over.
 *
 * @param level {@code "2s"}, {@code "4d5/2"}
 * @param bindingEv on the referenced scale
 * @param widthEv Gaussian full width of the band
 */
record ValenceBand(String element, String level, double bindingEv, double widthEv) {
    /** Centres and widths from memory, as rounded general knowledge of the field. */
    private static final List<ValenceBand> ALL = List.of(
            new ValenceBand("C", "2s", 17, 5),
            new ValenceBand("C", "2p1/2", 8, 5),
            new ValenceBand("C", "2p3/2", 8, 5),
            new ValenceBand("O", "2s", 23.5, 3),
            new ValenceBand("O", "2p1/2", 6.5, 4),
            new ValenceBand("O", "2p3/2", 6.5, 4),
            new ValenceBand("F", "2s", 31.5, 3),
            new ValenceBand("F", "2p1/2", 11, 5),
            new ValenceBand("F", "2p3/2", 11, 5),
            new ValenceBand("Zn", "3d3/2", 10.5, 1.8),
            new ValenceBand("Zn", "3d5/2", 10.5, 1.8),
            new ValenceBand("Ag", "4d3/2", 6.4, 1.3),
            new ValenceBand("Ag", "4d5/2", 5.0, 1.3));

    static Optional<ValenceBand> of(String element, String level) {
        return ALL.stream()
                .filter(band -> band.element.equals(element) && band.level.equals(level))
                .findFirst();
    }
}
