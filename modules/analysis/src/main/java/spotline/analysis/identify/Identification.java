package spotline.analysis.identify;

import java.util.List;
import java.util.Optional;

/**
 * What a survey shows.
 *
 * @param shiftEv what had to be added to measured binding energies so that the lines fall into place, eV: a working
 *     value, not a charge reference
 * @param unassigned peaks that no element explains
 */
public record Identification(List<ElementSeen> elements, double shiftEv, List<SurveyPeak> unassigned) {
    public Identification {
        elements = List.copyOf(elements);
        unassigned = List.copyOf(unassigned);
    }

    public Optional<ElementSeen> element(String symbol) {
        return elements.stream().filter(e -> e.element().equals(symbol)).findFirst();
    }
}
