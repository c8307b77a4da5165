package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.numerics.shape.Voigt;

/** A fit model's components after a change by hand; nothing is checked here. */
final class ModelChanges {
    private static final double REACH_EV = 1.5;

    private ModelChanges() {}

    static Optional<ComponentModel> named(FitModel model, String name) {
        return model.components().stream().filter(c -> c.name().equals(name)).findFirst();
    }

    static List<ComponentModel> added(FitModel model, String word, double energyEv, double lorentzianEv) {
        int number = model.components().size() + 1;
        while (named(model, word + " " + number).isPresent()) number++;
        List<ComponentModel> all = new ArrayList<>(model.components());
        all.add(component(word + " " + number, energyEv, lorentzianEv));
        return all;
    }

    static ComponentModel component(String name, double energyEv, double lorentzianEv) {
        return ComponentModel.of(name, new Voigt())
                .with("position", ParameterRule.Free.from(energyEv, energyEv - REACH_EV, energyEv + REACH_EV))
                .with("gaussianFwhm", ParameterRule.Free.from(1.2, 0.3, 4))
                .with("lorentzianFwhm", new ParameterRule.Fixed(lorentzianEv));
    }

    /** What followed the component that goes is free. */
    static List<ComponentModel> without(FitModel model, String component) {
        List<ComponentModel> all = new ArrayList<>();
        for (ComponentModel c : model.components()) {
            if (c.name().equals(component)) continue;
            ComponentModel kept = c;
            for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
                if (rule.getValue() instanceof ParameterRule.Tied tied
                        && tied.component().equals(component)) {
                    kept = kept.with(rule.getKey(), ParameterRule.Free.UNBOUNDED);
                }
            }
            all.add(kept);
        }
        return all;
    }

    static List<ComponentModel> renamed(FitModel model, String component, String name) {
        List<ComponentModel> all = new ArrayList<>();
        for (ComponentModel c : model.components()) {
            ComponentModel kept =
                    c.name().equals(component) ? new ComponentModel(name, c.shape(), c.parameters(), c.doublet()) : c;
            for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
                ParameterRule followed = followed(rule.getValue(), component, name);
                if (followed != rule.getValue()) kept = kept.with(rule.getKey(), followed);
            }
            all.add(kept);
        }
        return all;
    }

    private static ParameterRule followed(ParameterRule rule, String from, String to) {
        if (rule instanceof ParameterRule.EqualTo e && e.component().equals(from)) return new ParameterRule.EqualTo(to);
        if (rule instanceof ParameterRule.RatioTo r && r.component().equals(from)) {
            return new ParameterRule.RatioTo(to, r.ratio());
        }
        if (rule instanceof ParameterRule.OffsetFrom o && o.component().equals(from)) {
            return new ParameterRule.OffsetFrom(to, o.offset());
        }
        return rule;
    }

    static List<ComponentModel> ruled(FitModel model, String component, String parameter, ParameterRule rule) {
        return changed(model.components(), component, c -> c.with(parameter, rule));
    }

    static List<ComponentModel> coupled(FitModel model, String component, Optional<DoubletRule> rule) {
        return changed(
                model.components(), component, c -> new ComponentModel(c.name(), c.shape(), c.parameters(), rule));
    }

    static List<ComponentModel> withoutStarts(FitModel model) {
        List<ComponentModel> all = new ArrayList<>();
        for (ComponentModel c : model.components()) {
            ComponentModel guessed = c;
            for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
                if (rule.getValue() instanceof ParameterRule.Free free) {
                    guessed = guessed.with(rule.getKey(), ParameterRule.Free.within(free.min(), free.max()));
                }
            }
            all.add(guessed);
        }
        return all;
    }

    /** A parameter's value put elsewhere: a free one starts there, a locked one is locked there, a tie gets another measure. */
    static List<ComponentModel> placed(
            List<ComponentModel> components, List<FitRow> rows, String component, String parameter, double value) {
        Optional<FitRow> found = FitRow.find(rows, component, parameter);
        if (found.isEmpty()) return components;
        FitRow row = found.get();
        double led = FitRow.find(rows, row.leader(), parameter)
                .map(r -> r.fitted().orElse(r.start().orElse(Double.NaN)))
                .orElse(Double.NaN);
        Optional<ParameterRule> rule = switch (row.holding()) {
            case FREE -> Optional.of(from(value, row));
            case FIXED -> Optional.of(new ParameterRule.Fixed(value));
            case EQUAL -> Optional.empty();
            case OFFSET ->
                Double.isNaN(led)
                        ? Optional.empty()
                        : Optional.of(new ParameterRule.OffsetFrom(row.leader(), own(value - led, row)));
            case RATIO ->
                Double.isNaN(led) || led == 0
                        ? Optional.empty()
                        : Optional.of(new ParameterRule.RatioTo(row.leader(), own(value / led, row)));
        };
        return rule.map(r -> changed(components, component, c -> c.with(parameter, r)))
                .orElse(components);
    }

    private static ParameterRule.Own own(double value, FitRow row) {
        return row.min() < row.max() ? from(value, row) : new ParameterRule.Fixed(value);
    }

    private static ParameterRule.Free from(double value, FitRow row) {
        return ParameterRule.Free.from(value, Math.min(value, row.min()), Math.max(value, row.max()));
    }

    private static List<ComponentModel> changed(
            List<ComponentModel> components, String component, UnaryOperator<ComponentModel> change) {
        return components.stream()
                .map(c -> c.name().equals(component) ? change.apply(c) : c)
                .toList();
    }
}
