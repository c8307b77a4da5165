package spotline.demo.corpus;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/** Random numbers of one case: each case has a stream of its own, whatever is drawn for others. */
final class Draw {
    /** Above this mean a rounded normal variable stands for a count: the skewness left out is below 0.06. */
    private static final double NORMAL_FROM = 300;

    private static final double CHUNK = 25;

    private final RandomGenerator random;

    Draw(long seed, int number) {
        random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed * 1_000_003L + number);
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    double logBetween(double low, double high) {
        return Math.exp(between(Math.log(low), Math.log(high)));
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    int whole(int low, int highInclusive) {
        return low + random.nextInt(highInclusive - low + 1);
    }

    double normal(double deviation) {
        return deviation * random.nextGaussian();
    }

    /** A factor around 1 with a relative deviation. */
    double factor(double relative) {
        return Math.exp(normal(relative));
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    long count(double mean) {
        if (mean <= 0) return 0;
        if (mean > NORMAL_FROM) return Math.max(0, Math.round(mean + Math.sqrt(mean) * random.nextGaussian()));
        long total = 0;
        for (double left = mean; left > 0; left -= CHUNK) total += small(Math.min(CHUNK, left));
        return total;
    }

    private long small(double mean) {
        double limit = Math.exp(-mean);
        double product = random.nextDouble();
        long n = 0;
        while (product > limit) {
            product *= random.nextDouble();
            n++;
        }
        return n;
    }
}
