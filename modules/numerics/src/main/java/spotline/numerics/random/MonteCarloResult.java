package spotline.numerics.random;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Results of all trials, one series a result of the trial function, each sorted; trials without a result left out. */
public final class MonteCarloResult {
    private final double[][] sorted;
    private final int trials;

    private MonteCarloResult(double[][] sorted, int trials) {
        this.sorted = sorted;
        this.trials = trials;
    }

    static MonteCarloResult of(double[][] byTrial) {
        int outputs = byTrial[0].length;
        double[][] sorted = new double[outputs][];
        for (int k = 0; k < outputs; k++) {
            double[] values = new double[byTrial.length];
            int count = 0;
            for (double[] trial : byTrial) {
                if (trial.length != outputs) {
                    throw new IllegalArgumentException(
                            "all trials must give " + outputs + " results, one gave " + trial.length);
                }
                if (Double.isFinite(trial[k])) values[count++] = trial[k];
            }
            sorted[k] = Arrays.copyOf(values, count);
            Arrays.sort(sorted[k]);
        }
        return new MonteCarloResult(sorted, byTrial.length);
    }

    public int trials() {
        return trials;
    }

    public int outputs() {
        return sorted.length;
    }

    /** Number of trials that gave this result a finite value. */
    public int count(int output) {
        return sorted[output].length;
    }

    public double[] sortedValues(int output) {
        return sorted[output].clone();
    }

    public OptionalDouble mean(int output) {
        return Arrays.stream(sorted[output]).average();
    }

    /** Empty below two values. */
    public OptionalDouble standardDeviation(int output) {
        double[] values = sorted[output];
        if (values.length < 2) return OptionalDouble.empty();
        double mean = mean(output).orElseThrow();
        double sum = 0;
        for (double value : values) sum += (value - mean) * (value - mean);
        return OptionalDouble.of(Math.sqrt(sum / (values.length - 1)));
    }

    /**
     * Value below which this share of the results lies, interpolated between ranks (R. J. Hyndman, Y. Fan, Am. Stat. 50
     * (1996) 361, definition 7).
     */
    public OptionalDouble quantile(int output, double share) {
        if (!(share >= 0 && share <= 1)) throw new IllegalArgumentException("share must be 0 to 1, was " + share);
        double[] values = sorted[output];
        if (values.length == 0) return OptionalDouble.empty();
        double rank = share * (values.length - 1);
        int below = (int) Math.floor(rank);
        int above = Math.min(below + 1, values.length - 1);
        return OptionalDouble.of(values[below] + (rank - below) * (values[above] - values[below]));
    }

    public OptionalDouble median(int output) {
        return quantile(output, 0.5);
    }
}
