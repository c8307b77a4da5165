package spotline.analysis.quantify;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import spotline.core.Estimate;

/**
 * One quantity at n places of a sample.
 *
 * <p>u^2 of the mean = (shared part)^2 + max(s^2/n, (own part)^2): what the places share (factors, exponents, choice of
 * background) does not average down; the rest is the scatter between places, never taken smaller than counting alone makes
 * it. Scatter beyond counting is told by chi^2 = sum (x_i - mean)^2 / u_i^2 with u_i the part of each place's own spectra.
 *
 * <p>Source: GUM (JCGM 100:2008) 4.2 (mean of repeats), G.3 (Student's t).
 *
 * @param n number of places
 * @param standardDeviation s of the places; empty for one place
 * @param standardUncertainty of the mean; empty where it is unknown
 * @param ownUncertainty what is left of it without the parts that every measurement treated alike shares; empty where it
 *     is unknown
 * @param confidence95 half width of the 95 % interval of the mean from the scatter alone, t95 s / sqrt(n); empty for one
 *     place
 * @param homogeneityProbability how often counting alone would make places scatter as much; empty for one place or unknown
 *     statistics
 */
public record Replicates(
        int n,
        double mean,
        OptionalDouble standardDeviation,
        OptionalDouble standardUncertainty,
        OptionalDouble ownUncertainty,
        OptionalDouble confidence95,
        OptionalDouble homogeneityProbability) {

    /** Errors: {@link IllegalArgumentException} without a value. */
    public static Replicates of(List<Estimate> values) {
        if (values.isEmpty()) throw new IllegalArgumentException("a mean needs a value");
        int n = values.size();
        Estimate mean = Estimate.sum(values).times(1.0 / n);
        OptionalDouble shared = mean.uncertaintyFrom(key -> !UncertaintySource.ofOneSpectrum(key));
        OptionalDouble own = mean.uncertaintyFrom(UncertaintySource::ofOneSpectrum);
        double squares = 0;
        for (Estimate v : values) squares += (v.value() - mean.value()) * (v.value() - mean.value());
        OptionalDouble s = n > 1 ? OptionalDouble.of(Math.sqrt(squares / (n - 1))) : OptionalDouble.empty();
        double ofMean = n > 1 ? s.getAsDouble() / Math.sqrt(n) : 0;
        OptionalDouble alone =
                own.isPresent() ? OptionalDouble.of(Math.max(ofMean, own.getAsDouble())) : OptionalDouble.empty();
        OptionalDouble u = shared.isPresent() && alone.isPresent()
                ? OptionalDouble.of(Math.hypot(shared.getAsDouble(), alone.getAsDouble()))
                : OptionalDouble.empty();
        OptionalDouble interval = n > 1
                ? OptionalDouble.of(ofMean * new TDistribution(null, n - 1).inverseCumulativeProbability(0.975))
                : OptionalDouble.empty();
        return new Replicates(n, mean.value(), s, u, alone, interval, homogeneity(values, mean.value()));
    }

    private static OptionalDouble homogeneity(List<Estimate> values, double mean) {
        if (values.size() < 2) return OptionalDouble.empty();
        double chiSquare = 0;
        for (Estimate v : values) {
            OptionalDouble own = v.uncertaintyFrom(UncertaintySource::ofOneSpectrum);
            if (own.isEmpty() || !(own.getAsDouble() > 0)) return OptionalDouble.empty();
            double off = (v.value() - mean) / own.getAsDouble();
            chiSquare += off * off;
        }
        return OptionalDouble.of(
                1 - new ChiSquaredDistribution(null, values.size() - 1).cumulativeProbability(chiSquare));
    }
}
