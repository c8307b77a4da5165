package spotline.numerics.shape;

import java.util.Arrays;

/** Arrays that shapes work in, kept between calls so that a fit allocates nothing a point. One thread at a time. */
public final class ShapeScratch {
    private double[][] arrays = new double[0][];

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
}
