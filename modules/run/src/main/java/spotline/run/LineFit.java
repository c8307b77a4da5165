package spotline.run;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.Inseparable;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.run.fitmodel.FitModelWriter;

/**
 * The peak fit of a line's narrow scan.
 *
 * @param byDefault whether the model is the reference data's, less the components that the data did not ask for
 */
public record LineFit(String spectrum, Line line, boolean byDefault, PeakFitResult result) {
    /** A row a component, partners of doublets included. */
    public List<FittedPeak> peaks(ChargeReference charge) {
        List<FittedPeak> peaks = new ArrayList<>();
        for (FittedComponent c : result.components()) {
            peaks.add(new FittedPeak(
                    spectrum,
                    line.toString(),
                    c.name(),
                    c.shape(),
                    c.position(),
                    charge.referenced(c.position().value()),
                    c.fwhm(),
                    c.area(),
                    result.statistics().reducedChiSquare().orElse(Double.NaN)));
        }
        return peaks;
    }

    /** Chemical states with the areas they hold, those of their partners included; what only as a sum is measured is one. */
    public List<StateShare.Component> states() {
        List<StateShare.Component> states = new ArrayList<>();
        for (List<String> names : together()) {
            Estimate area = Estimate.sum(names.stream().map(result::stateArea).toList());
            if (names.size() == 2 && area.standardUncertainty().isEmpty()) area = asMeasured(area, names);
            String name = names.size() == 1 ? names.get(0) : String.join(" + ", names) + ", only their sum is measured";
            states.add(new StateShare.Component(name, area));
        }
        return states;
    }

    /** Where the fit alone knows no uncertainty of a sum, that of the pair, with the partners' share of the area. */
    private Estimate asMeasured(Estimate area, List<String> names) {
        return result.inseparable().stream()
                .filter(p -> names.contains(p.one())
                        && names.contains(p.other())
                        && p.sum().value() > 0)
                .findFirst()
                .map(p -> p.sum().times(area.value() / p.sum().value()))
                .orElse(area);
    }

    /** States in the model's order, joined where the data do not tell them apart. */
    private List<List<String>> together() {
        List<List<String>> groups = new ArrayList<>();
        result.stateNames().forEach(name -> groups.add(new ArrayList<>(List.of(name))));
        for (Inseparable pair : result.inseparable()) {
            List<String> one = group(groups, pair.one());
            List<String> other = group(groups, pair.other());
            if (one == other) continue;
            one.addAll(other);
            groups.remove(other);
        }
        return groups;
    }

    private static List<String> group(List<List<String>> groups, String name) {
        return groups.stream().filter(g -> g.contains(name)).findFirst().orElseThrow();
    }

    /** The model as a fit-model file has it, so that the fit can be made again; empty where a file cannot hold it. */
    public Optional<ObjectNode> model() {
        try {
            return Optional.of(FitModelWriter.json(result.model()));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
