package spotline.demo;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Counts drawn from their expectations, from one stream of random numbers per named block: blocks may be made in any
 * order, and a new one changes no other.
 *
 * <p>Source: product of uniforms below an expectation of 10; above it the transformed rejection method PTRS of
 * W. Hörmann, Insurance: Mathematics and Economics 12 (1993) 39, constants from memory (the tests check mean and
 * variance).
 */
final class PoissonNoise {
    private final RandomGenerator random;

    private PoissonNoise(RandomGenerator random) {
        this.random = random;
    }

    static PoissonNoise stream(long seed, String block) {
        byte[] digest = sha256().digest((seed + "/" + block).getBytes(UTF_8));
        return new PoissonNoise(RandomGeneratorFactory.of("L64X128MixRandom").create(digest));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Errors: {@link IllegalArgumentException} for an expectation that is negative or not finite. */
    long draw(double expectation) {
        if (!(expectation >= 0) || Double.isInfinite(expectation)) {
            throw new IllegalArgumentException("an expected count must be 0 or more, was " + expectation);
        }
        return expectation < 10 ? product(expectation) : rejection(expectation);
    }

    private long product(double expectation) {
        double limit = StrictMath.exp(-expectation);
        double product = random.nextDouble();
        long count = 0;
        while (product > limit) {
            product *= random.nextDouble();
            count++;
        }
        return count;
    }

    private long rejection(double expectation) {
        double b = 0.931 + 2.53 * Math.sqrt(expectation);
        double a = -0.059 + 0.02483 * b;
        double inverseAlpha = 1.1239 + 1.1328 / (b - 3.4);
        double vr = 0.9277 - 3.6224 / (b - 2);
        double logExpectation = StrictMath.log(expectation);
        while (true) {
            double u = random.nextDouble() - 0.5;
            double v = random.nextDouble();
            double us = 0.5 - Math.abs(u);
            double k = Math.floor((2 * a / us + b) * u + expectation + 0.43);
            if (us >= 0.07 && v <= vr) return (long) k;
            if (k < 0 || (us < 0.013 && v > us)) continue;
            double bound = k * logExpectation - expectation - logFactorial(k);
            if (StrictMath.log(v) + StrictMath.log(inverseAlpha) - StrictMath.log(a / (us * us) + b) <= bound) {
                return (long) k;
            }
        }
    }

    /** Stirling's series from k + 1 = 10 up, where its error is below 1e-12; the recurrence below. */
    private static double logFactorial(double k) {
        double x = k + 1;
        double below = 0;
        while (x < 10) {
            below += StrictMath.log(x);
            x++;
        }
        double inverse = 1 / x;
        double square = inverse * inverse;
        double series = inverse * (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square / 1680)));
        return (x - 0.5) * StrictMath.log(x) - x + 0.5 * StrictMath.log(2 * Math.PI) + series - below;
    }
}
