package spotline.run;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.analysis.quantify.StateShare;
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

    /** Chemical states with the areas they hold, those of their partners included. */
    public List<StateShare.Component> states() {
        return result.stateNames().stream()
                .map(name -> new StateShare.Component(name, result.stateArea(name)))
                .toList();
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
