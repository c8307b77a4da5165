package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

/**
 * How a fit is done.
 *
 * @param method how steps are found
 * @param tolerance the fit stops when the relative decrease of the objective still to be expected is below this
 * @param maxIterations steps tried at most
 * @param initialDamping of the first step, relative to the curvature; large for a start far from the solution
 * @param scaling whether the covariance is multiplied by the reduced chi-square
 */
public record FitSettings(Method method, double tolerance, int maxIterations, double initialDamping, Scaling scaling) {
    /** How steps are found. */
    public enum Method {
        /** All parameters together. */
        LEVENBERG_MARQUARDT,
        /**
         * Linear amplitudes solved for once at the start, then all together: for starts whose positions and widths are about
         * right and whose amplitudes are not.
         */
        AMPLITUDES_FIRST,
        /** Linear amplitudes solved for at every step: as robust as solving for them first, and about three times dearer. */
        VARIABLE_PROJECTION
    }

    /** What becomes of the covariance when the residuals are larger than the data's own uncertainty explains. */
    public enum Scaling {
        /** As the data's own uncertainty gives it. */
        NEVER,
        /** Multiplied by the reduced chi-square where that is above 1. */
        WHEN_ABOVE_ONE,
        ALWAYS
    }

    public static final FitSettings DEFAULT =
            new FitSettings(Method.LEVENBERG_MARQUARDT, 1e-10, 200, 0.1, Scaling.WHEN_ABOVE_ONE);
    /** Short steps at first and many of them, to the last digit: for starts of which nothing is known. */
    public static final FitSettings CAUTIOUS =
            new FitSettings(Method.LEVENBERG_MARQUARDT, 0, 100_000, 10, Scaling.WHEN_ABOVE_ONE);

    public FitSettings {
        requireNonNull(method, "method");
        requireNonNull(scaling, "scaling");
        if (!(tolerance >= 0 && tolerance < 1)) {
            throw new IllegalArgumentException("tolerance must be from 0 to below 1, was " + tolerance);
        }
        if (!(initialDamping >= 0) || Double.isInfinite(initialDamping)) {
            throw new IllegalArgumentException("initialDamping must be finite and 0 or more, was " + initialDamping);
        }
        if (maxIterations < 1) {
            throw new IllegalArgumentException("maxIterations must be 1 or more, was " + maxIterations);
        }
    }

    public FitSettings with(Method newMethod) {
        return new FitSettings(newMethod, tolerance, maxIterations, initialDamping, scaling);
    }

    public FitSettings with(Scaling newScaling) {
        return new FitSettings(method, tolerance, maxIterations, initialDamping, newScaling);
    }

    public FitSettings withTolerance(double newTolerance) {
        return new FitSettings(method, newTolerance, maxIterations, initialDamping, scaling);
    }

    public FitSettings withMaxIterations(int newMaxIterations) {
        return new FitSettings(method, tolerance, newMaxIterations, initialDamping, scaling);
    }

    public FitSettings withInitialDamping(double newInitialDamping) {
        return new FitSettings(method, tolerance, maxIterations, newInitialDamping, scaling);
    }
}
