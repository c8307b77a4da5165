package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.FittedParameter;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.PeakFitResult;

/**
 * A parameter of a component.
 *
 * @param start where a free one starts, or the value of a fixed one; empty where it is guessed or follows another
 * @param leader the component that it follows; empty where it follows none
 * @param fitted as the last fit has it
 */
public record FitRow(
        String component,
        String parameter,
        Holding holding,
        OptionalDouble start,
        double min,
        double max,
        String leader,
        OptionalDouble fitted,
        OptionalDouble u) {
    /** What holds a parameter. */
    public enum Holding {
        FREE,
        FIXED,
        EQUAL,
        OFFSET,
        RATIO
    }

    static List<FitRow> of(Optional<FitModel> model, Optional<PeakFitResult> result) {
        List<FitRow> rows = new ArrayList<>();
        for (ComponentModel c : model.map(FitModel::components).orElse(List.of())) {
            for (String parameter : c.shape().parameterNames()) rows.add(row(c, parameter, result));
        }
        return rows;
    }

    static Optional<FitRow> find(List<FitRow> rows, String component, String parameter) {
        return rows.stream()
                .filter(r -> r.component().equals(component) && r.parameter().equals(parameter))
                .findFirst();
    }

    private static FitRow row(ComponentModel c, String parameter, Optional<PeakFitResult> result) {
        ParameterRule rule = c.parameters().getOrDefault(parameter, ParameterRule.Free.UNBOUNDED);
        Optional<FittedParameter> fitted = result.flatMap(r -> r.components().stream()
                        .filter(f -> f.name().equals(c.name()))
                        .findFirst())
                .map(FittedComponent::parameters)
                .map(p -> p.get(parameter));
        OptionalDouble value =
                fitted.isPresent() ? OptionalDouble.of(fitted.get().value().value()) : OptionalDouble.empty();
        OptionalDouble u = fitted.isPresent() ? fitted.get().value().standardUncertainty() : OptionalDouble.empty();
        if (rule instanceof ParameterRule.EqualTo tie) {
            return new FitRow(
                    c.name(), parameter, Holding.EQUAL, OptionalDouble.empty(), 0, 0, tie.component(), value, u);
        }
        if (rule instanceof ParameterRule.OffsetFrom tie) {
            return own(c.name(), parameter, Holding.OFFSET, tie.offset(), tie.component(), value, u);
        }
        if (rule instanceof ParameterRule.RatioTo tie) {
            return own(c.name(), parameter, Holding.RATIO, tie.ratio(), tie.component(), value, u);
        }
        Holding holding = rule instanceof ParameterRule.Fixed ? Holding.FIXED : Holding.FREE;
        return own(c.name(), parameter, holding, (ParameterRule.Own) rule, "", value, u);
    }

    private static FitRow own(
            String component,
            String parameter,
            Holding holding,
            ParameterRule.Own own,
            String leader,
            OptionalDouble value,
            OptionalDouble u) {
        if (own instanceof ParameterRule.Fixed fixed) {
            OptionalDouble at = OptionalDouble.of(fixed.value());
            return new FitRow(component, parameter, holding, at, fixed.value(), fixed.value(), leader, value, u);
        }
        ParameterRule.Free free = (ParameterRule.Free) own;
        return new FitRow(component, parameter, holding, free.start(), free.min(), free.max(), leader, value, u);
    }
}
