package spotline.numerics.shape;

import java.util.Arrays;

/** Arrays that shapes work in, kept between calls so that a fit allocates nothing a point. One thread at a time. */
public final class ShapeScratch {
    private double[][] arrays = new double[0][];
    static final double[] NONE = {};
    private final FaddeevaLane lane = new FaddeevaLane();
    private final BellLane bells = new BellLane();
    private final double[][] factors = {new double[3], new double[4], new double[3], new double[4]};
    private final double[][] five = new double[5][];
    private final double[][] six = new double[6][];
    private double[] seen = new double[0];
    private boolean seenAscends = true;

    /** The array of a slot, at least as long as asked, holding whatever the last user left. */
    double[] array(int slot, int length) {
        if (slot >= arrays.length) {
            int old = arrays.length;
            arrays = Arrays.copyOf(arrays, slot + 8);
            Arrays.fill(arrays, old, arrays.length, new double[0]);
        }
        if (arrays[slot].length < length) arrays[slot] = new double[length];
        return arrays[slot];
    }

    FaddeevaLane lane() {
        return lane;
    }

    BellLane bells() {
        return bells;
    }

    double[] gaussFactors(int count) {
        return factors[count - 3];
    }

    double[] lorentzFactors(int count) {
        return factors[count - 1];
    }

    /** Fills the first three. */
    void factors(double[] target, double byPosition, double byArea, double byWidth) {
        target[0] = byPosition;
        target[1] = byArea;
        target[2] = byWidth;
    }

    /** A holder of five or six rows for the Voigt kernel. */
    double[][] rows(int count) {
        return count == 5 ? five : six;
    }

    /** Whether the abscissae ascend; remembered for the array last asked about, which must not have changed since. */
    boolean ascends(double[] x) {
        if (x != seen) {
            seenAscends = true;
            for (int i = 1; i < x.length; i++) seenAscends &= x[i] >= x[i - 1];
            seen = x;
        }
        return seenAscends;
    }

    /** Index of the first of ascending abscissae at or above a value. */
    static int firstFrom(double[] x, double value) {
        return firstAbove(x, Math.nextDown(value));
    }

    /** Index of the first of ascending abscissae above a value. */
    static int firstAbove(double[] x, double value) {
        int low = 0;
        int high = x.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (x[middle] > value) high = middle;
            else low = middle + 1;
        }
        return low;
    }
}
