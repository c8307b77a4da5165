package spotline.formats.iso14976;

import java.util.Arrays;
import java.util.List;

/**
 * The ordinate values of a block.
 *
 * <p>Shape: v variables of n points, in the file interleaved: point 1 of variable 1, point 1 of variable 2, ... The
 * minimum and maximum of each variable are those the file states, right or wrong.
 */
public final class Ordinates {
    static final Ordinates NONE = new Ordinates(List.of(), List.of(), new double[0][]);

    private final List<Real> minima;
    private final List<Real> maxima;
    /** An array a variable, all of one length. */
    private final double[][] values;

    private Ordinates(List<Real> minima, List<Real> maxima, double[][] values) {
        this.minima = List.copyOf(minima);
        this.maxima = List.copyOf(maxima);
        this.values = values;
        if (minima.size() != maxima.size()) throw new IllegalArgumentException("minima and maxima differ in number");
        if (minima.size() != values.length)
            throw new IllegalArgumentException("extremes and variables differ in number");
    }

    /**
     * @param interleaved finite values
     *     <p>Errors: {@link IllegalArgumentException} when they are no multiple of the variables, or not finite.
     */
    public static Ordinates of(List<Real> minima, List<Real> maxima, double[] interleaved) {
        for (double value : interleaved) {
            if (!Double.isFinite(value)) throw new IllegalArgumentException("an ordinate must be finite, was " + value);
        }
        int v = minima.size();
        if (v == 0 ? interleaved.length > 0 : interleaved.length % v != 0) {
            throw new IllegalArgumentException(interleaved.length + " values are no multiple of " + v + " variables");
        }
        double[][] values = new double[v][v == 0 ? 0 : interleaved.length / v];
        for (int i = 0; i < interleaved.length; i++) values[i % v][i / v] = interleaved[i];
        return new Ordinates(minima, maxima, values);
    }

    /** Takes the arrays over, one a variable: for the parser, which keeps none. */
    static Ordinates owning(List<Real> minima, List<Real> maxima, double[][] ofVariables) {
        return new Ordinates(minima, maxima, ofVariables);
    }

    /**
     * One array a variable; the minima and maxima are computed.
     *
     * <p>Errors: {@link IllegalArgumentException} when the arrays differ in length or a value is not finite.
     */
    public static Ordinates ofVariables(List<double[]> variables) {
        int v = variables.size();
        int n = v == 0 ? 0 : variables.get(0).length;
        double[][] values = new double[v][];
        Real[] minima = new Real[v];
        Real[] maxima = new Real[v];
        for (int k = 0; k < v; k++) {
            values[k] = variables.get(k).clone();
            if (values[k].length != n) throw new IllegalArgumentException("variables differ in length");
            for (double value : values[k]) {
                if (!Double.isFinite(value)) {
                    throw new IllegalArgumentException("an ordinate must be finite, was " + value);
                }
            }
            minima[k] = Real.of(least(values[k]));
            maxima[k] = Real.of(greatest(values[k]));
        }
        return new Ordinates(List.of(minima), List.of(maxima), values);
    }

    private static double least(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        for (double value : values) least = Math.min(least, value);
        return Double.isFinite(least) ? least : 0;
    }

    private static double greatest(double[] values) {
        double greatest = Double.NEGATIVE_INFINITY;
        for (double value : values) greatest = Math.max(greatest, value);
        return Double.isFinite(greatest) ? greatest : 0;
    }

    /** Number of all values, as the file counts them: variables x points. */
    public int size() {
        return values.length * points();
    }

    public int variables() {
        return minima.size();
    }

    public int points() {
        return values.length == 0 ? 0 : values[0].length;
    }

    /** Value in the file's order, counted from 0. */
    public double value(int index) {
        return values[index % values.length][index / values.length];
    }

    /** Copy of the n values of one variable, counted from 0. */
    public double[] variable(int variable) {
        return values[variable].clone();
    }

    /** The n values of one variable themselves: to read, never to write. */
    double[] shared(int variable) {
        return values[variable];
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
        return least(values[variable]);
    }

    /** Greatest value among the data of a variable; 0 without data. */
    double greatestOf(int variable) {
        return greatest(values[variable]);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ordinates that
                && minima.equals(that.minima)
                && maxima.equals(that.maxima)
                && Arrays.deepEquals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * minima.hashCode() + Arrays.deepHashCode(values);
    }

    @Override
    public String toString() {
        return "Ordinates[" + variables() + " variables, " + points() + " points]";
    }
}
