package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * What a peak fit came to.
 *
 * <p>Shape: all curves have one value a channel of the window, rising binding energy. Units: measured binding energy in
 * eV, counts, areas in counts eV before transmission. Estimates of one fit keep their covariance: sums, ratios and
 * differences of them come out with what they share.
 */
public final class PeakFitResult {
    private final String spectrum;
    private final FitModel model;
    private final List<FittedComponent> components;
    private final FitStatistics statistics;
    private final List<Inseparable> inseparable;
    private final boolean counted;
    private final double[] energies;
    private final double[] counts;
    private final double[] background;
    private final double[] sum;
    private final double[] residuals;

    PeakFitResult(
            String spectrum,
            FitModel model,
            List<FittedComponent> components,
            FitStatistics statistics,
            List<Inseparable> inseparable,
            boolean counted,
            double[] energies,
            double[] counts,
            double[] background,
            double[] sum,
            double[] residuals) {
        this.spectrum = spectrum;
        this.model = model;
        this.components = List.copyOf(components);
        this.statistics = statistics;
        this.inseparable = List.copyOf(inseparable);
        this.counted = counted;
        this.energies = energies;
        this.counts = counts;
        this.background = background;
        this.sum = sum;
        this.residuals = residuals;
    }

    /** Label of the scan. */
    public String spectrum() {
        return spectrum;
    }

    public FitModel model() {
        return model;
    }

    /** Components in the model's order, each followed by the partner it brought. */
    public List<FittedComponent> components() {
        return components;
    }

    /** Errors: {@link IllegalArgumentException} when no component has this name. */
    public FittedComponent component(String name) {
        return components.stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no component is named " + name));
    }

    public FitStatistics statistics() {
        return statistics;
    }

    /** Pairs of which only the sum is measured. */
    public List<Inseparable> inseparable() {
        return inseparable;
    }

    /** Whether the data are counts, so that residuals are in standard deviations. */
    public boolean counted() {
        return counted;
    }

    public double[] energies() {
        return energies.clone();
    }

    public double[] counts() {
        return counts.clone();
    }

    public double[] background() {
        return background.clone();
    }

    /** Fitted sum of background and components. */
    public double[] sum() {
        return sum.clone();
    }

    /** Data less fitted sum, over the standard deviation of the fitted sum where that is known. */
    public double[] residuals() {
        return residuals.clone();
    }

    /** A component's area with that of its doublet partner. */
    public Estimate stateArea(String component) {
        Estimate area = component(component).area();
        Optional<FittedComponent> partner = components.stream()
                .filter(c -> c.partnerOf().equals(Optional.of(component)))
                .findFirst();
        return partner.isPresent() ? area.plus(partner.get().area()) : area;
    }

    /** Area of several components together. */
    public Estimate areaOf(List<String> names) {
        return Estimate.sum(names.stream().map(n -> component(n).area()).toList());
    }

    /** Area of all components. */
    public Estimate totalArea() {
        return Estimate.sum(components.stream().map(FittedComponent::area).toList());
    }

    /** A component's share, partner included, of the area of all. */
    public Estimate fraction(String component) {
        return stateArea(component).dividedBy(totalArea());
    }

    /** Position of one component less that of another, eV. */
    public Estimate positionDifference(String one, String other) {
        return component(one).position().minus(component(other).position());
    }

    /** Correlation of two components' areas; empty where an uncertainty is unknown or 0. */
    public OptionalDouble areaCorrelation(String one, String other) {
        return correlation(component(one).area(), component(other).area());
    }

    static OptionalDouble correlation(Estimate a, Estimate b) {
        OptionalDouble covariance = a.covariance(b);
        double size =
                a.standardUncertainty().orElse(0) * b.standardUncertainty().orElse(0);
        if (covariance.isEmpty() || !(size > 0)) return OptionalDouble.empty();
        return OptionalDouble.of(covariance.getAsDouble() / size);
    }

    /** Names of the components that brought no other: those a state may stand for. */
    public List<String> stateNames() {
        List<String> names = new ArrayList<>();
        for (FittedComponent c : components) if (c.partnerOf().isEmpty()) names.add(c.name());
        return names;
    }
}
