package spotline.analysis.identify;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a survey shows.
 *
 * @param shiftEv what had to be added to measured binding energies so that the lines fall into place, eV: a working
 *     value, not a charge reference. Surface charging is its negative
 * @param unassigned peaks that no element explains
 * @param detail everything beyond that; empty where only the list was asked for
 */
public record Identification(
        List<ElementSeen> elements, double shiftEv, List<SurveyPeak> unassigned, Optional<Detail> detail) {
    public Identification {
        elements = List.copyOf(elements);
        unassigned = List.copyOf(unassigned);
    }

    public Identification(List<ElementSeen> elements, double shiftEv, List<SurveyPeak> unassigned) {
        this(elements, shiftEv, unassigned, Optional.empty());
    }

    /** The same with proposals for those elements alone that no narrow scan measures yet. */
    public Identification unplanned(Set<String> measured) {
        return new Identification(elements, shiftEv, unassigned, detail.map(d -> d.unplanned(measured)));
    }

    public Optional<ElementSeen> element(String symbol) {
        return elements.stream().filter(e -> e.element().equals(symbol)).findFirst();
    }

    /**
     * @param shiftLowEv,shiftHighEv interval in which the shift lies with about 95 % confidence, eV
     * @param shiftReason what settled the shift, for a person
     * @param lineWidthEv Gaussian full width of the survey's lines, eV
     * @param features the unassigned peaks with their nearest explanations
     * @param doubts about the header; no element is called present while there is one
     * @param composition by the model's amplitudes, largest share first
     * @param proposals narrow scans of what was found, as far as they are not known to be planned
     * @param reducedMisfit mean squared residual over its variance: 1 where the model fits as well as it claims to
     */
    public record Detail(
            double shiftLowEv,
            double shiftHighEv,
            String shiftReason,
            double lineWidthEv,
            List<Feature> features,
            List<HeaderDoubt> doubts,
            List<QuickShare> composition,
            List<ScanProposal> proposals,
            SurveyModel model,
            OptionalDouble reducedMisfit) {
        public Detail {
            features = List.copyOf(features);
            doubts = List.copyOf(doubts);
            composition = List.copyOf(composition);
            proposals = List.copyOf(proposals);
        }

        Detail unplanned(Set<String> measured) {
            List<ScanProposal> open = proposals.stream()
                    .filter(p -> !measured.contains(p.element()))
                    .toList();
            return new Detail(
                    shiftLowEv,
                    shiftHighEv,
                    shiftReason,
                    lineWidthEv,
                    features,
                    doubts,
                    composition,
                    open,
                    model,
                    reducedMisfit);
        }
    }
}
