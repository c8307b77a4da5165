package spotline.numerics.fit;

/**
 * What is minimised.
 *
 * <p>Counting statistics need counts: {@code countsPerUnit} says how many counts one unit of the ordinate stands for.
 */
public sealed interface Weighting {
    /** Poisson deviance of raw counts. */
    Weighting POISSON_DEVIANCE = new PoissonDeviance(1);
    /** Chi-square of raw counts with the variance that the model predicts. */
    Weighting MODEL_VARIANCE = new ModelVariance(1);
    /** Plain sum of squares: the standard deviation of the data is unknown and taken from the residuals. */
    Weighting UNWEIGHTED = new Unweighted();

    static Weighting poisson(double countsPerUnit) {
        return new PoissonDeviance(countsPerUnit);
    }

    static Weighting modelVariance(double countsPerUnit) {
        return new ModelVariance(countsPerUnit);
    }

    /** Chi-square with known standard deviations, one a point. */
    static Weighting given(double[] standardDeviations) {
        return new Given(standardDeviations);
    }

    /** {@code 2 sum(mu - y + y ln(y / mu))}: the likelihood of counts, unbiased however few they are. */
    record PoissonDeviance(double countsPerUnit) implements Weighting {
        public PoissonDeviance {
            checkCounts(countsPerUnit);
        }
    }

    /** {@code sum((y - mu)^2 / mu)}, the mu below the line varied with the model (Pearson): biased high by half a count. */
    record ModelVariance(double countsPerUnit) implements Weighting {
        public ModelVariance {
            checkCounts(countsPerUnit);
        }
    }

    record Unweighted() implements Weighting {}

    /** {@code sum((y - mu)^2 / s^2)}. */
    final class Given implements Weighting {
        private final double[] standardDeviations;
        private final double[] inverse;

        private Given(double[] standardDeviations) {
            this.standardDeviations = standardDeviations.clone();
            inverse = new double[standardDeviations.length];
            for (int i = 0; i < inverse.length; i++) {
                double s = standardDeviations[i];
                inverse[i] = 1 / s;
                if (!(s > 0) || Double.isInfinite(s)) {
                    throw new IllegalArgumentException("standard deviations must be finite and above 0, one was " + s);
                }
            }
        }

        public int size() {
            return standardDeviations.length;
        }

        public double standardDeviation(int point) {
            return standardDeviations[point];
        }

        /** Not copied: for the solver of this package alone. */
        double[] inverse() {
            return inverse;
        }
    }

    private static void checkCounts(double countsPerUnit) {
        if (!(countsPerUnit > 0) || Double.isInfinite(countsPerUnit)) {
            throw new IllegalArgumentException("countsPerUnit must be finite and above 0, was " + countsPerUnit);
        }
    }
}
