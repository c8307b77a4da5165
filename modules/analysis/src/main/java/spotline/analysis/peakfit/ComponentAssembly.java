package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.core.Estimate;
import spotline.numerics.fit.FitResult;
import spotline.numerics.shape.LineShape;

/** Makes the components of a result from the numbers of a fit. */
final class ComponentAssembly {
    private final PreparedFit prepared;
    private final ParameterGraph graph;
    private final FitResult fit;
    private final FitCovariance covariance;
    private final double[] slots;
    private final double[] values;
    private final Map<List<Object>, PeakWidth> widths = new HashMap<>();

    private ComponentAssembly(PreparedFit prepared, FitResult fit, FitCovariance covariance) {
        this.prepared = prepared;
        this.graph = prepared.graph;
        this.fit = fit;
        this.covariance = covariance;
        slots = fit.values();
        values = prepared.function.values(slots);
    }

    static List<FittedComponent> components(PreparedFit prepared, FitResult fit, FitCovariance covariance) {
        ComponentAssembly assembly = new ComponentAssembly(prepared, fit, covariance);
        List<FittedComponent> components = new ArrayList<>();
        for (int m = 0; m < assembly.graph.members().size(); m++) components.add(assembly.component(m));
        return components;
    }

    private FittedComponent component(int m) {
        Member member = graph.members().get(m);
        LineShape shape = member.shape();
        int first = graph.first(m);
        double[] own = Arrays.copyOfRange(values, first, first + shape.parameterCount());
        Map<String, FittedParameter> parameters = new LinkedHashMap<>();
        List<Estimate> estimates = new ArrayList<>();
        for (int k = 0; k < own.length; k++) {
            double[] byValue = new double[values.length];
            byValue[first + k] = 1;
            Estimate estimate = estimate(own[k], byValue);
            estimates.add(estimate);
            parameters.put(shape.parameterNames().get(k), new FittedParameter(estimate, hold(first + k)));
        }
        PeakWidth width = widths.computeIfAbsent(key(shape, own), any -> PeakWidth.of(shape, own));
        double[] byValue = new double[values.length];
        for (int k = 0; k < own.length; k++) byValue[first + k] = width.slope(k);
        Estimate position = estimates.get(LineShape.POSITION);
        return new FittedComponent(
                member.name(),
                shape.name(),
                member.partnerOf(),
                position,
                position.value() + width.maximumOffset,
                estimate(width.fwhm, byValue),
                estimates.get(LineShape.AREA),
                parameters,
                prepared.function.curve(m, values));
    }

    /** Peaks of one shape and the same widths measure alike, wherever they stand. */
    private static List<Object> key(LineShape shape, double[] own) {
        List<Object> key = new ArrayList<>();
        key.add(shape);
        for (int k = LineShape.AREA + 1; k < own.length; k++) key.add(own[k]);
        return key;
    }

    private Estimate estimate(double value, double[] byValue) {
        return covariance.estimate(value, graph.gradient(slots, values, byValue));
    }

    private FittedParameter.Hold hold(int value) {
        int slot = graph.numberOf(value);
        if (slot < 0) return graph.moves(value) ? FittedParameter.Hold.TIED : FittedParameter.Hold.FIXED;
        return switch (fit.state(slot)) {
            case AT_LOWER_BOUND -> FittedParameter.Hold.AT_LOWER_BOUND;
            case AT_UPPER_BOUND -> FittedParameter.Hold.AT_UPPER_BOUND;
            default -> graph.leaderOf(value) < 0 ? FittedParameter.Hold.FREE : FittedParameter.Hold.TIED;
        };
    }
}
