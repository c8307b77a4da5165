package spotline.analysis.peakfit;

import java.util.OptionalDouble;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.StopReason;

/**
 * How well a fit describes its data.
 *
 * @param deviance Poisson deviance; for an ordinate of unknown statistics the sum of squares
 * @param reducedChiSquare empty without degrees of freedom, and where the statistics are unknown
 * @param vonNeumannRatio about 2 for independent residuals
 * @param uncertaintyFactor what all variances were multiplied by: 1, or the reduced chi-square where that is larger than
 *     expected; not a number where it cannot be had
 */
public record FitStatistics(
        double deviance,
        OptionalDouble reducedChiSquare,
        OptionalDouble vonNeumannRatio,
        int channels,
        int freeParameters,
        int degreesOfFreedom,
        int iterations,
        StopReason stopReason,
        double uncertaintyFactor) {
    static FitStatistics of(FitResult fit, boolean counted, double uncertaintyFactor) {
        return new FitStatistics(
                fit.deviance(),
                counted ? fit.reducedChiSquare() : OptionalDouble.empty(),
                fit.vonNeumannRatio(),
                fit.points(),
                fit.freeParameters(),
                fit.degreesOfFreedom(),
                fit.iterations(),
                fit.stopReason(),
                uncertaintyFactor);
    }

    /** The reason in lower-case words joined by hyphens. */
    public String stopWord() {
        return stopReason.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
