package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.fit.FitResult;

/**
 * Tells which pairs of components trade area against each other.
 *
 * <p>Where the areas are strongly anticorrelated and known poorly, the covariance says it. Where one of two overlapping
 * components has all but vanished, the covariance knows nothing of the other splits that describe the data as well: then
 * the pair is fitted again with equal areas, and when the deviance hardly rises, only the sum is measured.
 */
final class Separation {
    /** Areas more strongly anticorrelated trade against each other; common practice, no source. */
    static final double TRADED = -0.95;
    /** Relative standard uncertainty of an area; common practice, no source. */
    static final double POORLY_KNOWN = 0.3;

    private static final double WEAK = 3; // standard uncertainties; common practice, no source
    /** Rise of the deviance for one constraint that three standard uncertainties of one parameter make. */
    private static final double HARDLY = WEAK * WEAK;

    private Separation() {}

    static List<Inseparable> pairs(
            PreparedFit prepared, FitResult fit, List<FittedComponent> components, String key, Work work) {
        List<Inseparable> pairs = new ArrayList<>();
        List<FittedComponent> own =
                components.stream().filter(c -> c.partnerOf().isEmpty()).toList();
        for (int i = 0; i < own.size(); i++) {
            for (int j = i + 1; j < own.size(); j++) {
                FittedComponent a = own.get(i);
                FittedComponent b = own.get(j);
                traded(a, b)
                        .or(() -> equallyWell(prepared, fit, a, b, key, work))
                        .ifPresent(pairs::add);
            }
        }
        return pairs;
    }

    private static Optional<Inseparable> traded(FittedComponent a, FittedComponent b) {
        OptionalDouble r = PeakFitResult.correlation(a.area(), b.area());
        if (r.isEmpty() || r.getAsDouble() > TRADED) return Optional.empty();
        if (Math.max(relative(a.area()), relative(b.area())) <= POORLY_KNOWN) return Optional.empty();
        return Optional.of(new Inseparable(a.name(), b.name(), r, a.area().plus(b.area())));
    }

    private static double relative(Estimate area) {
        return area.standardUncertainty().orElse(Double.POSITIVE_INFINITY) / Math.abs(area.value());
    }

    private static boolean weak(FittedComponent c) {
        return relative(c.area()) * WEAK > 1;
    }

    private static Optional<Inseparable> equallyWell(
            PreparedFit prepared, FitResult fit, FittedComponent a, FittedComponent b, String key, Work work) {
        FittedComponent strong = a.area().value() >= b.area().value() ? a : b;
        FittedComponent other = strong == a ? b : a;
        double apart = Math.abs(a.position().value() - b.position().value());
        boolean overlap = apart < Math.max(a.fwhm().value(), b.fwhm().value());
        if (!weak(other) || !overlap || !movesFreely(other) || !movesFreely(strong)) return Optional.empty();
        List<ComponentModel> components = new ArrayList<>();
        for (ComponentModel c : prepared.model.components()) {
            boolean tied = c.name().equals(other.name());
            if (tied && !(c.parameters().getOrDefault("area", Free.UNBOUNDED) instanceof Free)) return Optional.empty();
            components.add(tied ? c.with("area", new RatioTo(strong.name(), new Fixed(1))) : c);
        }
        if (!FitModel.check(Optional.of(prepared.model.window()), components).isEmpty()) return Optional.empty();
        PreparedFit equal = prepared.with(components);
        FitResult again = equal.solve(start(equal, prepared, fit, strong, other), work);
        double scale = Math.max(1, fit.reducedChiSquare().orElse(1));
        double rise = (again.deviance() - fit.deviance()) / scale;
        if (!(rise < HARDLY)) return Optional.empty();
        Estimate sum = a.area().plus(b.area());
        if (sum.standardUncertainty().isEmpty()) {
            FitCovariance covariance = equal.covariance(again, key + "/equal areas");
            sum = ComponentAssembly.components(equal, again, covariance).stream()
                    .filter(c -> c.name().equals(strong.name()))
                    .findFirst()
                    .orElseThrow()
                    .area()
                    .times(2);
        }
        return Optional.of(new Inseparable(a.name(), b.name(), PeakFitResult.correlation(a.area(), b.area()), sum));
    }

    /** A component that the model holds in place is not taken for another one. */
    private static boolean movesFreely(FittedComponent c) {
        return c.parameter("position").hold() != FittedParameter.Hold.FIXED;
    }

    /** From the fit, with the two side by side where the stronger one stood. */
    private static double[] start(
            PreparedFit equal, PreparedFit before, FitResult fit, FittedComponent strong, FittedComponent other) {
        Map<String, Double> known = new HashMap<>();
        for (int k = 0; k < before.graph.slots().size(); k++) {
            known.put(before.graph.slots().get(k).name(), fit.value(k));
        }
        double quarter = 0.25 * strong.fwhm().value();
        double side = other.position().value() < strong.position().value() ? -1 : 1;
        double middle = strong.position().value();
        known.put(strong.name() + " position", middle - side * quarter);
        known.put(other.name() + " position", middle + side * quarter);
        known.put(
                strong.name() + " area",
                0.5 * (strong.area().value() + other.area().value()));
        strong.parameters().forEach((name, p) -> {
            if (Member.isMainWidth(name)) {
                known.put(strong.name() + " " + name, 0.9 * p.value().value());
                known.put(other.name() + " " + name, 0.9 * p.value().value());
            }
        });
        double[] start = fit.values();
        double[] moved = new double[equal.function.parameterCount()];
        int slots = equal.graph.slots().size();
        for (int k = 0; k < slots; k++) {
            moved[k] = known.getOrDefault(equal.graph.slots().get(k).name(), 0.0);
        }
        int background = moved.length - slots;
        System.arraycopy(start, start.length - background, moved, slots, background);
        return moved;
    }
}
