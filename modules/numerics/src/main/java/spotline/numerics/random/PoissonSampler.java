package spotline.numerics.random;

import java.util.random.RandomGenerator;

/**
 * Counts with a given mean.
 *
 * <p>Source: below a mean of 30 by multiplication of uniform numbers (D. E. Knuth, The Art of Computer Programming 2,
 * 3.4.1); above by transformed rejection, W. Hoermann, Insurance: Mathematics and Economics 12 (1993) 39, algorithm PTRS.
 * Strict arithmetic only, so that the counts are the same on every JVM.
 */
public final class PoissonSampler {
    private static final double SMALL = 30;

    private PoissonSampler() {}

    /** Errors: {@link IllegalArgumentException} for a mean that is negative or above 1e15. */
    public static long sample(RandomGenerator random, double mean) {
        if (!(mean >= 0) || mean > 1e15) {
            throw new IllegalArgumentException("a mean count must be from 0 to 1e15, was " + mean);
        }
        return mean < SMALL ? multiplied(random, mean) : rejected(random, mean);
    }

    /** Counts for a whole curve of means; a mean below 0 counts as 0. */
    public static double[] sample(RandomGenerator random, double[] means) {
        double[] counts = new double[means.length];
        for (int i = 0; i < means.length; i++) counts[i] = sample(random, Math.max(means[i], 0));
        return counts;
    }

    private static long multiplied(RandomGenerator random, double mean) {
        double limit = StrictMath.exp(-mean);
        double product = random.nextDouble();
        long count = 0;
        while (product > limit) {
            product *= random.nextDouble();
            count++;
        }
        return count;
    }

    private static long rejected(RandomGenerator random, double mean) {
        double b = 0.931 + 2.53 * Math.sqrt(mean);
        double a = -0.059 + 0.02483 * b;
        double inverseAlpha = 1.1239 + 1.1328 / (b - 3.4);
        double vr = 0.9277 - 3.6224 / (b - 2);
        double logMean = StrictMath.log(mean);
        while (true) {
            double u = random.nextDouble() - 0.5;
            double v = random.nextDouble();
            double us = 0.5 - Math.abs(u);
            double k = Math.floor((2 * a / us + b) * u + mean + 0.43);
            if (us >= 0.07 && v <= vr) return (long) k;
            if (k < 0 || (us < 0.013 && v > us)) continue;
            double left = StrictMath.log(v) + StrictMath.log(inverseAlpha) - StrictMath.log(a / (us * us) + b);
            if (left <= -mean + k * logMean - logFactorial(k)) return (long) k;
        }
    }

    /** By the Stirling series; exact to 1e-13 from 30 up, where it is used. */
    private static double logFactorial(double k) {
        if (k < 12) {
            double product = 1;
            for (int i = 2; i <= k; i++) product *= i;
            return StrictMath.log(product);
        }
        double s = 1 / (k * k);
        return (k + 0.5) * StrictMath.log(k)
                - k
                + 0.5 * StrictMath.log(2 * Math.PI)
                + (1.0 / 12 - s * (1.0 / 360 - s * (1.0 / 1260 - s / 1680))) / k;
    }
}
