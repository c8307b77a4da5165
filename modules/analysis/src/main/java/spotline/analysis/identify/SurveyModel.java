package spotline.analysis.identify;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The fitted model of a survey, for a figure.
 *
 * <p>Shape: n channels of rising measured binding energy; finer surveys are summed to about half an eV. Units: eV, the
 * survey's own unit a channel (summed channels hold their mean). The fitted sum is the background and every element's
 * curve.
 */
public final class SurveyModel {
    private final double[] energy;
    private final double[] measured;
    private final double[] background;
    private final double[] standardDeviation;
    private final Map<String, double[]> elements;

    public SurveyModel(
            double[] energy,
            double[] measured,
            double[] background,
            double[] standardDeviation,
            Map<String, double[]> elements) {
        this.energy = energy.clone();
        this.measured = measured.clone();
        this.background = background.clone();
        this.standardDeviation = standardDeviation.clone();
        this.elements = new LinkedHashMap<>(elements);
    }

    public int channels() {
        return energy.length;
    }

    public double[] energies() {
        return energy.clone();
    }

    public double[] measured() {
        return measured.clone();
    }

    public double[] background() {
        return background.clone();
    }

    public double[] fittedSum() {
        double[] sum = background.clone();
        for (double[] curve : elements.values()) for (int i = 0; i < sum.length; i++) sum[i] += curve[i];
        return sum;
    }

    /** Measured less fitted sum. */
    public double[] residual() {
        double[] rest = fittedSum();
        for (int i = 0; i < rest.length; i++) rest[i] = measured[i] - rest[i];
        return rest;
    }

    /** What the residual of a channel may be by counting and by what the model may be wrong by. */
    public double[] standardDeviation() {
        return standardDeviation.clone();
    }

    /** Symbols of the elements with a curve, and {@code "stray radiation"} where it is in the model. */
    public List<String> parts() {
        return List.copyOf(elements.keySet());
    }

    /** Lines, Auger group, losses and tail of an element. */
    public Optional<double[]> curve(String part) {
        return Optional.ofNullable(elements.get(part)).map(double[]::clone);
    }
}
