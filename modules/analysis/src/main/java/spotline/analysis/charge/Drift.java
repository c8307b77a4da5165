package spotline.analysis.charge;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * How a line moved over the scans taken of it.
 *
 * @param line the line
 * @param scans in order of measurement, two or more
 * @param slopeEvPerHour weighted regression over the middles of the scans, eV/h; empty where a time is not known or all are
 *     the same
 */
public record Drift(String line, List<Scan> scans, Optional<Estimate> slopeEvPerHour) {
    /** Where one scan has the line, as measured, eV. */
    public record Scan(String spectrum, Optional<OffsetDateTime> middle, Estimate position) {}

    public Drift {
        scans = List.copyOf(scans);
        if (scans.size() < 2) throw new IllegalArgumentException("a drift needs two scans, had " + scans.size());
    }

    static Drift of(String line, List<Scan> scans) {
        Optional<double[]> hours = hours(scans);
        Optional<Estimate> slope = hours.flatMap(h -> combined(scans, slopeWeights(h, weights(scans))));
        return new Drift(line, scans, slope);
    }

    /** Last less first, eV. */
    public Estimate changeEv() {
        return scans.get(scans.size() - 1).position().minus(scans.get(0).position());
    }

    /**
     * Position of the line at a time by the regression; the first scan's where no time is known.
     *
     * <p>Units: measured binding energy, eV.
     */
    public Estimate positionAt(OffsetDateTime time) {
        Optional<double[]> hours = hours(scans);
        if (hours.isEmpty() || slopeEvPerHour.isEmpty()) return scans.get(0).position();
        double[] w = weights(scans);
        double[] slope = slopeWeights(hours.get(), w);
        double at = between(scans.get(0).middle().orElseThrow(), time) - mean(hours.get(), w);
        double total = 0;
        for (double one : w) total += one;
        double[] coefficients = new double[w.length];
        for (int i = 0; i < w.length; i++) coefficients[i] = w[i] / total + slope[i] * at;
        return combined(scans, coefficients).orElseThrow();
    }

    private static Optional<double[]> hours(List<Scan> scans) {
        double[] hours = new double[scans.size()];
        for (int i = 0; i < hours.length; i++) {
            Optional<OffsetDateTime> first = scans.get(0).middle();
            Optional<OffsetDateTime> time = scans.get(i).middle();
            if (first.isEmpty() || time.isEmpty()) return Optional.empty();
            hours[i] = between(first.get(), time.get());
        }
        return Optional.of(hours);
    }

    private static double between(OffsetDateTime from, OffsetDateTime to) {
        return Duration.between(from, to).toMillis() / 3.6e6;
    }

    /** By the positions' own variances; alike where one is not known. */
    private static double[] weights(List<Scan> scans) {
        double[] weights = new double[scans.size()];
        boolean known = true;
        for (int i = 0; i < weights.length; i++) {
            OptionalDouble u = scans.get(i).position().standardUncertainty();
            known &= u.isPresent() && u.getAsDouble() > 0;
            weights[i] = known ? 1 / (u.orElse(1) * u.orElse(1)) : 1;
        }
        if (!known) java.util.Arrays.fill(weights, 1);
        return weights;
    }

    private static double mean(double[] values, double[] weights) {
        double sum = 0;
        double total = 0;
        for (int i = 0; i < values.length; i++) {
            sum += weights[i] * values[i];
            total += weights[i];
        }
        return sum / total;
    }

    private static double[] slopeWeights(double[] hours, double[] weights) {
        double mean = mean(hours, weights);
        double spread = 0;
        for (int i = 0; i < hours.length; i++) spread += weights[i] * (hours[i] - mean) * (hours[i] - mean);
        double[] coefficients = new double[hours.length];
        for (int i = 0; i < hours.length; i++) coefficients[i] = weights[i] * (hours[i] - mean) / spread;
        return coefficients;
    }

    private static Optional<Estimate> combined(List<Scan> scans, double[] coefficients) {
        double value = 0;
        for (int i = 0; i < coefficients.length; i++) {
            if (!Double.isFinite(coefficients[i])) return Optional.empty();
            value += coefficients[i] * scans.get(i).position().value();
        }
        return Optional.of(
                Estimate.linear(value, scans.stream().map(Scan::position).toList(), coefficients));
    }
}
