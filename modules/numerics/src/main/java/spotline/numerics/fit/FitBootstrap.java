package spotline.numerics.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.random.RandomGenerator;
import spotline.core.Work;
import spotline.numerics.random.MonteCarlo;
import spotline.numerics.random.MonteCarloResult;
import spotline.numerics.random.PoissonSampler;

/** Parametric bootstrap of a fit: data drawn about the fitted curve as the weighting says, fitted again from the result. */
public final class FitBootstrap {
    private FitBootstrap() {}

    /**
     * Result k of the trials is the value of parameter k; trials that do not converge are left out.
     *
     * <p>Errors: {@link IllegalArgumentException} for an unweighted data set, whose distribution is unknown.
     */
    public static MonteCarloResult run(
            FitResult result,
            FitSettings settings,
            int trials,
            long seed,
            List<String> key,
            Executor executor,
            Work work) {
        for (DataSet data : result.problem().dataSets()) {
            if (data.weighting() instanceof Weighting.Unweighted) {
                throw new IllegalArgumentException("unweighted data have no distribution to draw from");
            }
        }
        FitProblem start = result.problem().startingAt(result.values());
        MonteCarlo.Trial trial = random -> {
            List<double[]> drawn = new ArrayList<>();
            for (int d = 0; d < start.dataSets().size(); d++) {
                drawn.add(draw(random, start.dataSets().get(d).weighting(), result.fitted(d)));
            }
            FitResult fit = Fit.solve(start.withOrdinates(drawn), settings, Work.UNWATCHED);
            double[] values = fit.values();
            if (!fit.converged()) java.util.Arrays.fill(values, Double.NaN);
            return values;
        };
        return MonteCarlo.run(trials, seed, key, trial, executor, work);
    }

    private static double[] draw(RandomGenerator random, Weighting weighting, double[] mean) {
        if (weighting instanceof Weighting.PoissonDeviance poisson) {
            return counts(random, poisson.countsPerUnit(), mean);
        }
        if (weighting instanceof Weighting.ModelVariance pearson) {
            return counts(random, pearson.countsPerUnit(), mean);
        }
        Weighting.Given given = (Weighting.Given) weighting;
        double[] drawn = mean.clone();
        for (int i = 0; i < drawn.length; i++) drawn[i] += given.standardDeviation(i) * random.nextGaussian();
        return drawn;
    }

    private static double[] counts(RandomGenerator random, double countsPerUnit, double[] mean) {
        double[] scaled = mean.clone();
        for (int i = 0; i < scaled.length; i++) scaled[i] *= countsPerUnit;
        double[] drawn = PoissonSampler.sample(random, scaled);
        for (int i = 0; i < drawn.length; i++) drawn[i] /= countsPerUnit;
        return drawn;
    }
}
