package spotline.numerics.shape;

import java.util.Arrays;

/**
 * Sums of a Gaussian g and a Lorentzian q of one position and width over whole arrays, as chains of short loops; see
 * {@link FaddeevaLane} for why they are so short and called through an interface.
 *
 * <p>With {@code t = (x - position) / width}: {@code g = exp(-4 ln2 t^2)} and {@code q = 1 / (1 + 4 t^2)}. The Gaussian is
 * taken within 3.8 full widths only. Its exponential {@code exp(-u)}, u up to 40, is the 64th power of the Taylor polynomial
 * of {@code exp(-u / 64)}: no table, no branch, 2e-14 at most.
 */
final class BellLane {
    /** One loop. */
    private interface Stage {
        void run(BellLane lane, int from, int to);
    }

    private static final Stage[] LORENTZ = {BellLane::lorentz, BellLane::lorentzRows, BellLane::lorentzWidth};
    private static final Stage[] LORENTZ_SHARE = {BellLane::lorentzShare};
    private static final Stage[] OFFSETS = {BellLane::offsets};
    private static final Stage[] EXPONENTIAL = {
        BellLane::exponentHigh, BellLane::exponentMiddle, BellLane::exponentLow, BellLane::squarings
    };
    private static final Stage[] GAUSS = {BellLane::gaussRows, BellLane::gaussWidth};
    private static final Stage[] GAUSS_SHARE = {BellLane::gaussShare};

    private static final int FIRST_SLOT = 24;
    /** Coefficients of exp(-v), v up to 0.63. */
    private static final double[] TAYLOR = taylor(16);

    private double[] x = new double[0];
    private double position;
    private double perWidth;
    private double[] gauss = x;
    private double[] lorentz = x;
    private double[] byPosition = x;
    private double[] byArea = x;
    private double[] byWidth = x;
    private double[] byShare = x;
    private double[] t = x;
    private double[] q = x;
    private double[] g = x;
    private double[] u = x;

    private static double[] taylor(int terms) {
        double[] c = new double[terms];
        c[0] = 1;
        for (int k = 1; k < c.length; k++) c[k] = -c[k - 1] / k;
        return c;
    }

    /**
     * Rows by position, area, width and, if there are four factors, share: for the Gaussian {@code f0 g t}, {@code f1 g},
     * {@code f0 g t^2 + f2 g}, {@code f3 g}; for the Lorentzian likewise with {@code f0 q^2 t}; summed.
     *
     * @param gauss factors of the Gaussian, none if there is none
     * @param lorentz factors of the Lorentzian, none if there is none
     */
    void evaluate(
            double[] newX,
            double newPosition,
            double width,
            double[] newGauss,
            double[] newLorentz,
            double[][] rows,
            int row,
            ShapeScratch scratch) {
        x = newX;
        position = newPosition;
        perWidth = 1 / width;
        gauss = newGauss;
        lorentz = newLorentz;
        byPosition = rows[row];
        byArea = rows[row + 1];
        byWidth = rows[row + 2];
        boolean share = Math.max(gauss.length, lorentz.length) > 3;
        if (share) byShare = rows[row + 3];
        int n = x.length;
        t = scratch.array(FIRST_SLOT, n);
        q = scratch.array(FIRST_SLOT + 1, n);
        g = scratch.array(FIRST_SLOT + 2, n);
        u = scratch.array(FIRST_SLOT + 3, n);
        if (lorentz.length > 0) {
            run(LORENTZ, 0, n);
            if (share) run(LORENTZ_SHARE, 0, n);
        } else {
            run(OFFSETS, 0, n);
            Arrays.fill(byPosition, 0, n, 0);
            Arrays.fill(byArea, 0, n, 0);
            Arrays.fill(byWidth, 0, n, 0);
        }
        if (gauss.length == 0) return;
        int from = 0;
        int to = n;
        if (scratch.ascends(x)) {
            double half = width * Math.sqrt(Gaussian.LARGEST_EXPONENT / Gaussian.FOUR_LN2);
            from = ShapeScratch.firstFrom(x, position - half);
            to = ShapeScratch.firstAbove(x, position + half);
            run(EXPONENTIAL, from, to);
        } else {
            for (int i = 0; i < n; i++) {
                double exponent = Gaussian.FOUR_LN2 * t[i] * t[i];
                g[i] = exponent > Gaussian.LARGEST_EXPONENT ? 0 : Math.exp(-exponent);
            }
        }
        run(GAUSS, from, to);
        if (share) run(GAUSS_SHARE, from, to);
    }

    private void run(Stage[] stages, int from, int to) {
        if (from >= to) return;
        for (Stage stage : stages) stage.run(this, from, to);
    }

    private void offsets(int from, int to) {
        double[] source = x;
        double[] target = t;
        double shift = position;
        double factor = perWidth;
        for (int i = from; i < to; i++) target[i] = (source[i] - shift) * factor;
    }

    private void lorentz(int from, int to) {
        double[] source = x;
        double[] offset = t;
        double[] target = q;
        double shift = position;
        double factor = perWidth;
        for (int i = from; i < to; i++) {
            double value = (source[i] - shift) * factor;
            offset[i] = value;
            target[i] = 1 / (1 + 4 * value * value);
        }
    }

    private void lorentzRows(int from, int to) {
        double[] offset = t;
        double[] bell = q;
        double[] first = byPosition;
        double[] second = byArea;
        double f0 = lorentz[0];
        double f1 = lorentz[1];
        for (int i = from; i < to; i++) {
            first[i] = f0 * bell[i] * bell[i] * offset[i];
            second[i] = f1 * bell[i];
        }
    }

    private void lorentzWidth(int from, int to) {
        double[] offset = t;
        double[] bell = q;
        double[] first = byPosition;
        double[] third = byWidth;
        double f2 = lorentz[2];
        for (int i = from; i < to; i++) third[i] = first[i] * offset[i] + f2 * bell[i];
    }

    private void lorentzShare(int from, int to) {
        double[] bell = q;
        double[] fourth = byShare;
        double f3 = lorentz[3];
        for (int i = from; i < to; i++) fourth[i] = f3 * bell[i];
    }

    private void exponentHigh(int from, int to) {
        double[] offset = t;
        double[] exponent = u;
        double[] value = g;
        double factor = Gaussian.FOUR_LN2 / 64;
        double c15 = TAYLOR[15];
        double c14 = TAYLOR[14];
        double c13 = TAYLOR[13];
        double c12 = TAYLOR[12];
        double c11 = TAYLOR[11];
        double c10 = TAYLOR[10];
        for (int i = from; i < to; i++) {
            double v = factor * offset[i] * offset[i];
            exponent[i] = v;
            value[i] = Math.fma(v, Math.fma(v, Math.fma(v, Math.fma(v, Math.fma(v, c15, c14), c13), c12), c11), c10);
        }
    }

    private void exponentMiddle(int from, int to) {
        five(u, g, from, to, TAYLOR[9], TAYLOR[8], TAYLOR[7], TAYLOR[6], TAYLOR[5]);
    }

    private void exponentLow(int from, int to) {
        five(u, g, from, to, TAYLOR[4], TAYLOR[3], TAYLOR[2], TAYLOR[1], TAYLOR[0]);
    }

    private static void five(
            double[] v, double[] value, int from, int to, double a4, double a3, double a2, double a1, double a0) {
        for (int i = from; i < to; i++) {
            double z = v[i];
            double high = Math.fma(z, Math.fma(z, value[i], a4), a3);
            value[i] = Math.fma(z, Math.fma(z, Math.fma(z, high, a2), a1), a0);
        }
    }

    /** To the 64th power. */
    private void squarings(int from, int to) {
        double[] value = g;
        for (int i = from; i < to; i++) {
            double a = value[i] * value[i];
            double b = a * a;
            double c = b * b;
            double d = c * c;
            double e = d * d;
            value[i] = e * e;
        }
    }

    private void gaussRows(int from, int to) {
        double[] offset = t;
        double[] bell = g;
        double[] slope = u;
        double[] first = byPosition;
        double[] second = byArea;
        double f0 = gauss[0];
        double f1 = gauss[1];
        for (int i = from; i < to; i++) {
            double here = f0 * bell[i] * offset[i];
            slope[i] = here;
            first[i] += here;
            second[i] += f1 * bell[i];
        }
    }

    private void gaussWidth(int from, int to) {
        double[] offset = t;
        double[] bell = g;
        double[] slope = u;
        double[] third = byWidth;
        double f2 = gauss[2];
        for (int i = from; i < to; i++) third[i] += slope[i] * offset[i] + f2 * bell[i];
    }

    private void gaussShare(int from, int to) {
        double[] bell = g;
        double[] fourth = byShare;
        double f3 = gauss[3];
        for (int i = from; i < to; i++) fourth[i] += f3 * bell[i];
    }
}
