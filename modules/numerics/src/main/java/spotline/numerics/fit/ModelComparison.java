package spotline.numerics.fit;

import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * Numbers to weigh one model of the same data against another: to be told, never to choose by in silence.
 *
 * <p>Source: AICc, C. M. Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297; BIC, G. Schwarz, Ann. Stat. 6 (1978) 461; F test of
 * nested models as in P. R. Bevington, D. K. Robinson, Data Reduction and Error Analysis for the Physical Sciences.
 */
public final class ModelComparison {
    /**
     * @param aic twice the free parameters plus minus twice the log likelihood, up to a constant of the data
     * @param aicc the same corrected for few points; empty when there are too few
     */
    public record Criteria(double aic, OptionalDouble aicc, double bic) {}

    /**
     * @param f ratio of what the added parameters gain a piece to what is left a degree of freedom
     * @param probability of a ratio as large if the simpler model holds
     */
    public record FTest(double f, int addedParameters, int degreesOfFreedom, double probability) {}

    private ModelComparison() {}

    /** Criteria of one fit; their differences between fits of the same data have meaning, they themselves do not. */
    public static Criteria criteria(FitResult result) {
        int n = result.points();
        int k = result.freeParameters();
        double misfit = result.objective();
        boolean unweighted = false;
        for (DataSet data : result.problem().dataSets()) unweighted |= data.weighting() instanceof Weighting.Unweighted;
        if (unweighted) {
            k++; // the unknown variance is estimated too
            misfit = n * Math.log(misfit / n);
        }
        double aic = misfit + 2 * k;
        OptionalDouble aicc =
                n - k - 1 > 0 ? OptionalDouble.of(aic + 2.0 * k * (k + 1) / (n - k - 1)) : OptionalDouble.empty();
        return new Criteria(aic, aicc, misfit + k * Math.log(n));
    }

    /** Errors: {@link IllegalArgumentException} unless the fuller model has more free parameters on as many points. */
    public static FTest nested(FitResult simpler, FitResult fuller) {
        int added = fuller.freeParameters() - simpler.freeParameters();
        int freedom = fuller.degreesOfFreedom();
        if (added < 1 || freedom < 1 || simpler.points() != fuller.points()) {
            throw new IllegalArgumentException("the fuller model needs more free parameters on the same points: "
                    + simpler.freeParameters() + " on " + simpler.points() + " against " + fuller.freeParameters()
                    + " on " + fuller.points());
        }
        double f = (simpler.chiSquare() - fuller.chiSquare()) / added / (fuller.chiSquare() / freedom);
        double probability = f <= 0 ? 1 : 1 - new FDistribution(null, added, freedom).cumulativeProbability(f);
        return new FTest(f, added, freedom, probability);
    }
}
