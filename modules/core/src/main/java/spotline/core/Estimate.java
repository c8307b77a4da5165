package spotline.core;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * A value with signed contributions to its uncertainty, keyed by their source.
 *
 * <p>A contribution is the change of the value when its source moves by one standard uncertainty. The standard
 * uncertainty is the norm of the contributions, the covariance of two estimates the dot product over shared sources:
 * two atomic fractions that share a sensitivity factor, or two binding energies that share a reference, come out right
 * in any ratio, sum or difference. An uncertainty that nobody knows is unknown, never 0, and stays so in all that is
 * computed from it.
 *
 * <p>Source: GUM (JCGM 100:2008) 5.2.2, law of propagation of uncertainty with correlated inputs.
 */
public final class Estimate {
    private final double value;
    private final boolean known;
    private final String[] sources; // sorted
    private final double[] contributions;

    private Estimate(double value, boolean known, String[] sources, double[] contributions) {
        this.value = value;
        this.known = known;
        this.sources = sources;
        this.contributions = contributions;
    }

    /** A number without uncertainty: a definition, a count of things. */
    public static Estimate exact(double value) {
        return new Estimate(value, true, new String[0], new double[0]);
    }

    /** A number whose uncertainty nobody knows. */
    public static Estimate unknown(double value) {
        return new Estimate(value, false, new String[0], new double[0]);
    }

    /** @param contribution signed change of the value for one standard uncertainty of the source */
    public static Estimate of(double value, String source, double contribution) {
        return exact(value).with(source, contribution);
    }

    /** This estimate with one more contribution; added (signed) to what the same source already gives. */
    public Estimate with(String source, double contribution) {
        if (!Double.isFinite(contribution)) {
            return new Estimate(value, false, sources, contributions);
        }
        int at = Arrays.binarySearch(sources, source);
        if (at >= 0) {
            double[] changed = contributions.clone();
            changed[at] += contribution;
            return new Estimate(value, known, sources, changed);
        }
        int to = -at - 1;
        String[] newSources = new String[sources.length + 1];
        double[] newContributions = new double[sources.length + 1];
        System.arraycopy(sources, 0, newSources, 0, to);
        System.arraycopy(contributions, 0, newContributions, 0, to);
        newSources[to] = source;
        newContributions[to] = contribution;
        System.arraycopy(sources, to, newSources, to + 1, sources.length - to);
        System.arraycopy(contributions, to, newContributions, to + 1, sources.length - to);
        return new Estimate(value, known, newSources, newContributions);
    }

    public double value() {
        return value;
    }

    /** Norm of all contributions; empty when any part of it is unknown. */
    public OptionalDouble standardUncertainty() {
        return known ? OptionalDouble.of(norm(source -> true)) : OptionalDouble.empty();
    }

    /** Norm of the contributions whose source the test accepts; empty when the uncertainty is unknown. */
    public OptionalDouble uncertaintyFrom(Predicate<String> source) {
        return known ? OptionalDouble.of(norm(source)) : OptionalDouble.empty();
    }

    private double norm(Predicate<String> wanted) {
        double sum = 0;
        for (int i = 0; i < sources.length; i++) {
            if (wanted.test(sources[i])) sum += contributions[i] * contributions[i];
        }
        return Math.sqrt(sum);
    }

    public List<String> sources() {
        return List.of(sources);
    }

    /** Signed contribution of a source, 0 when it does not contribute. */
    public double contribution(String source) {
        int at = Arrays.binarySearch(sources, source);
        return at >= 0 ? contributions[at] : 0;
    }

    /** Covariance with another estimate; empty when either uncertainty is unknown. */
    public OptionalDouble covariance(Estimate other) {
        if (!known || !other.known) return OptionalDouble.empty();
        double sum = 0;
        int i = 0;
        int j = 0;
        while (i < sources.length && j < other.sources.length) {
            int order = sources[i].compareTo(other.sources[j]);
            if (order == 0) sum += contributions[i++] * other.contributions[j++];
            else if (order < 0) i++;
            else j++;
        }
        return OptionalDouble.of(sum);
    }

    public Estimate plus(Estimate other) {
        return combine(value + other.value, 1, other, 1);
    }

    public Estimate minus(Estimate other) {
        return combine(value - other.value, 1, other, -1);
    }

    public Estimate plus(double number) {
        return new Estimate(value + number, known, sources, contributions);
    }

    public Estimate times(double number) {
        return derived(value * number, number);
    }

    /** Errors: the quotient by an exact 0 is not finite and its uncertainty unknown. */
    public Estimate dividedBy(Estimate other) {
        double ratio = value / other.value;
        return combine(ratio, 1 / other.value, other, -ratio / other.value);
    }

    public Estimate times(Estimate other) {
        return combine(value * other.value, other.value, other, value);
    }

    /** A function of this estimate alone, to first order: its value and its derivative at {@link #value()}. */
    public Estimate derived(double newValue, double derivative) {
        double[] scaled = new double[contributions.length];
        for (int i = 0; i < scaled.length; i++) scaled[i] = contributions[i] * derivative;
        return new Estimate(newValue, known && Double.isFinite(derivative), sources, scaled);
    }

    /** First-order result of two estimates: {@code thisSlope} and {@code otherSlope} are its partial derivatives. */
    private Estimate combine(double newValue, double thisSlope, Estimate other, double otherSlope) {
        return linear(newValue, List.of(this, other), thisSlope, otherSlope);
    }

    /**
     * A result with a given value whose partial derivatives with respect to the inputs are given.
     *
     * <p>Errors: {@link IllegalArgumentException} unless there is one slope an input.
     */
    public static Estimate linear(double value, List<Estimate> inputs, double... slopes) {
        if (inputs.size() != slopes.length) {
            throw new IllegalArgumentException("one slope an input, was " + slopes.length + " for " + inputs.size());
        }
        boolean allKnown = true;
        List<String> names = new ArrayList<>();
        for (int k = 0; k < slopes.length; k++) {
            Estimate input = inputs.get(k);
            allKnown &= (input.known || slopes[k] == 0) && Double.isFinite(slopes[k]);
            names.addAll(Arrays.asList(input.sources));
        }
        String[] merged = names.stream().sorted().distinct().toArray(String[]::new);
        double[] sums = new double[merged.length];
        for (int k = 0; k < slopes.length; k++) {
            Estimate input = inputs.get(k);
            for (int i = 0; i < input.sources.length; i++) {
                sums[Arrays.binarySearch(merged, input.sources[i])] += slopes[k] * input.contributions[i];
            }
        }
        return new Estimate(value, allKnown, merged, sums);
    }

    public static Estimate sum(List<Estimate> parts) {
        double total = 0;
        double[] ones = new double[parts.size()];
        for (int i = 0; i < ones.length; i++) {
            ones[i] = 1;
            total += parts.get(i).value;
        }
        return linear(total, parts, ones);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Estimate that
                && Double.compare(value, that.value) == 0
                && known == that.known
                && Arrays.equals(sources, that.sources)
                && Arrays.equals(contributions, that.contributions);
    }

    @Override
    public int hashCode() {
        return Double.hashCode(value) * 31 + Arrays.hashCode(sources);
    }

    @Override
    public String toString() {
        OptionalDouble u = standardUncertainty();
        return value + " +/- " + (u.isPresent() ? u.getAsDouble() : "unknown");
    }
}
