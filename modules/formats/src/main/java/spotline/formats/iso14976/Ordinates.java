package spotline.formats.iso14976;

import java.util.Arrays;
import java.util.List;

/**
 * The ordinate values of a block.
 *
 * <p>Shape: v variables of n points, interleaved as in the file: point 1 of variable 1, point 1 of variable 2, ... The
 * minimum and maximum of each variable are those the file states, right or wrong.
 */
public final class Ordinates {
    static final Ordinates NONE = new Ordinates(List.of(), List.of(), new double[0]);

    private final List<Real> minima;
    private final List<Real> maxima;
    private final double[] values;

    private Ordinates(List<Real> minima, List<Real> maxima, double[] values) {
        this.minima = List.copyOf(minima);
        this.maxima = List.copyOf(maxima);
        this.values = values;
        if (minima.size() != maxima.size()) throw new IllegalArgumentException("minima and maxima differ in number");
        if (minima.isEmpty() ? values.length > 0 : values.length % minima.size() != 0) {
            throw new IllegalArgumentException(
                    values.length + " values are no multiple of " + minima.size() + " variables");
        }
    }

    /**
     * @param interleaved finite values
     *     <p>Errors: {@link IllegalArgumentException} when they are no multiple of the variables, or not finite.
     */
    public static Ordinates of(List<Real> minima, List<Real> maxima, double[] interleaved) {
        for (double value : interleaved) {
            if (!Double.isFinite(value)) throw new IllegalArgumentException("an ordinate must be finite, was " + value);
        }
        return new Ordinates(minima, maxima, interleaved.clone());
    }

    /** Takes the array over: for the parser, which keeps none. */
    static Ordinates owning(List<Real> minima, List<Real> maxima, double[] interleaved) {
        return new Ordinates(minima, maxima, interleaved);
    }

    /**
     * One array a variable; the minima and maxima are computed.
     *
     * <p>Errors: {@link IllegalArgumentException} when the arrays differ in length or a value is not finite.
     */
    public static Ordinates ofVariables(List<double[]> variables) {
        int v = variables.size();
        int n = v == 0 ? 0 : variables.get(0).length;
        double[] interleaved = new double[v * n];
        for (int k = 0; k < v; k++) {
            if (variables.get(k).length != n) throw new IllegalArgumentException("variables differ in length");
            for (int i = 0; i < n; i++) interleaved[i * v + k] = variables.get(k)[i];
        }
        Real[] minima = new Real[v];
        Real[] maxima = new Real[v];
        for (int k = 0; k < v; k++) {
            minima[k] = Real.of(least(interleaved, k, v));
            maxima[k] = Real.of(greatest(interleaved, k, v));
        }
        return of(List.of(minima), List.of(maxima), interleaved);
    }

    private static double least(double[] values, int variable, int variables) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = variable; i < values.length; i += variables) least = Math.min(least, values[i]);
        return Double.isFinite(least) ? least : 0;
    }

    private static double greatest(double[] values, int variable, int variables) {
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = variable; i < values.length; i += variables) greatest = Math.max(greatest, values[i]);
        return Double.isFinite(greatest) ? greatest : 0;
    }

    /** Number of all values, as the file counts them: variables x points. */
    public int size() {
        return values.length;
    }

    public int variables() {
        return minima.size();
    }

    public int points() {
        return minima.isEmpty() ? 0 : values.length / minima.size();
    }

    /** Value in the file's order, counted from 0. */
    public double value(int index) {
        return values[index];
    }

    /** Copy of the n values of one variable, counted from 0. */
    public double[] variable(int variable) {
        double[] copy = new double[points()];
        for (int i = 0, at = variable; i < copy.length; i++, at += minima.size()) copy[i] = values[at];
        return copy;
    }

    /** As stated in the file. */
    public List<Real> minima() {
        return minima;
    }

    /** As stated in the file. */
    public List<Real> maxima() {
        return maxima;
    }

    /** Least value among the data of a variable; 0 without data. */
    double leastOf(int variable) {
        return least(values, variable, minima.size());
    }

    /** Greatest value among the data of a variable; 0 without data. */
    double greatestOf(int variable) {
        return greatest(values, variable, minima.size());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ordinates that
                && minima.equals(that.minima)
                && maxima.equals(that.maxima)
                && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * minima.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "Ordinates[" + variables() + " variables, " + points() + " points]";
    }
}
