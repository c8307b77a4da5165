package spotline.numerics.fit;

import java.util.OptionalDouble;
import spotline.core.Work;

/**
 * Interval of a parameter in which the objective, all other parameters refitted, rises by one (times the factor of the
 * result's uncertainties): the standard interval of a parameter whose objective is not a parabola, near a bound above all.
 *
 * <p>Source: the rule of P. J. Cumpson and M. P. Seah (1992): raise a parameter, the others refitted, until chi-square grows by 1.
 *
 * @param low lower end; empty where the bound or the search's end lies inside the interval
 * @param high upper end, likewise
 */
public record ProfileInterval(OptionalDouble low, OptionalDouble high) {
    /** Standard uncertainties searched at most. */
    private static final double FARTHEST = 100;

    /**
     * Errors: {@link IllegalArgumentException} when the parameter is fixed or tied;
     * {@link java.util.concurrent.CancellationException} when the work is cancelled.
     */
    public static ProfileInterval of(FitResult result, String parameter, FitSettings settings, Work work) {
        int at = result.index(parameter);
        if (!result.problem().layout().isFree(at)) {
            throw new IllegalArgumentException(parameter + " is fixed or tied: it has no profile of its own");
        }
        return new ProfileInterval(end(result, at, -1, settings, work), end(result, at, 1, settings, work));
    }

    private static OptionalDouble end(FitResult result, int at, int side, FitSettings settings, Work work) {
        Parameter parameter = result.problem().parameters().get(at);
        double value = result.value(at);
        double bound = side < 0 ? parameter.min() : parameter.max();
        double unit = result.standardUncertainty(at).orElse(Math.max(1e-3 * Math.abs(value), 1e-6));
        double inside = value;
        double outside = value + side * unit;
        double step = unit;
        while (rise(result, parameter, clip(outside, bound, side), settings, work) < result.uncertaintyFactor()) {
            if (side * (outside - bound) >= 0 || Math.abs(outside - value) > FARTHEST * unit) {
                return OptionalDouble.empty();
            }
            inside = outside;
            step *= 1.5;
            outside += side * step;
        }
        outside = clip(outside, bound, side);
        for (int i = 0; i < 60 && Math.abs(outside - inside) > 1e-4 * unit; i++) {
            double middle = 0.5 * (inside + outside);
            if (rise(result, parameter, middle, settings, work) < result.uncertaintyFactor()) inside = middle;
            else outside = middle;
        }
        return OptionalDouble.of(0.5 * (inside + outside));
    }

    private static double clip(double value, double bound, int side) {
        return side < 0 ? Math.max(value, bound) : Math.min(value, bound);
    }

    private static double rise(FitResult result, Parameter parameter, double value, FitSettings settings, Work work) {
        FitProblem held = result.problem().startingAt(result.values()).with(parameter.held(value));
        return Fit.solve(held, settings, work).objective() - result.objective();
    }
}
