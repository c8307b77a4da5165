package spotline.numerics.fit;

/**
 * Products of all pairs of rows, in blocks of 4 by 4 that stay in registers: a loop over one pair would wait for each
 * addition to finish.
 *
 * <p>On the way to a solution the products of derivatives need not be exact, only the descent must be. A row that lives in
 * a part of the channels, as a line of a survey does, is then taken as 0 where all it holds together is less than
 * {@link #NEGLECTED} of its sum of squares; where either row of a pair is taken, both are, so that no scaled element is
 * wrong by more than that.
 */
final class NormalMatrix {
    static final double NEGLECTED = 1e-3;
    private static final int TILES = 64;
    private static final int SMALLEST_TILE = 8;

    private final int rowCount; // the last one is the residual, whose products are always exact
    private final int n;
    private final int tile;
    private final int tiles;
    private final double[] zeros;
    private final double[] energy = new double[TILES];
    private final long[] masks;
    private final double[] sums = new double[16];

    NormalMatrix(int rowCount, int n) {
        this.rowCount = rowCount;
        this.n = n;
        tile = Math.max(SMALLEST_TILE, (n + TILES - 1) / TILES);
        tiles = (n + tile - 1) / tile;
        zeros = new double[n];
        masks = new long[(rowCount + 3) / 4];
    }

    /** {@code out[k * rowCount + l] = sum_i rows[k][i] rows[l][i]} for l up to k. */
    void multiply(double[][] rows, boolean exact, double[] out) {
        long all = tiles == TILES ? -1L : (1L << tiles) - 1;
        for (int b = 0; b < masks.length; b++) {
            boolean last = b == masks.length - 1;
            masks[b] = exact || last ? all : mask(rows, 4 * b);
        }
        for (int b = 0; b < masks.length; b++) {
            for (int c = 0; c <= b; c++) {
                java.util.Arrays.fill(sums, 0);
                addRuns(rows, 4 * b, 4 * c, masks[b] | masks[c]);
                store(4 * b, 4 * c, out);
            }
        }
    }

    private void store(int k, int l, double[] out) {
        for (int a = 0; a < 4 && k + a < rowCount; a++) {
            for (int b = 0; b < 4 && l + b <= k + a; b++) out[(k + a) * rowCount + l + b] = sums[4 * a + b];
        }
    }

    private long mask(double[][] rows, int first) {
        long mask = 0;
        for (int k = first; k < first + 4 && k < rowCount; k++) {
            double[] row = rows[k];
            double total = 0;
            for (int t = 0; t < tiles; t++) {
                energy[t] = energy(row, t * tile, Math.min(n, (t + 1) * tile));
                total += energy[t];
            }
            double least = NEGLECTED * total / tiles;
            for (int t = 0; t < tiles; t++) {
                if (!(energy[t] <= least)) mask |= 1L << t;
            }
        }
        return mask;
    }

    private static double energy(double[] row, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = from;
        for (; i < to - 3; i += 4) {
            a = Math.fma(row[i], row[i], a);
            b = Math.fma(row[i + 1], row[i + 1], b);
            c = Math.fma(row[i + 2], row[i + 2], c);
            d = Math.fma(row[i + 3], row[i + 3], d);
        }
        for (; i < to; i++) a = Math.fma(row[i], row[i], a);
        return (a + b) + (c + d);
    }

    private void addRuns(double[][] rows, int k, int l, long mask) {
        int t = 0;
        while (t < tiles) {
            if ((mask >>> t & 1) == 0) {
                t++;
                continue;
            }
            int from = t * tile;
            while (t < tiles && (mask >>> t & 1) != 0) t++;
            int to = Math.min(n, t * tile);
            if (k == l) {
                diagonal(row(rows, k), row(rows, k + 1), row(rows, k + 2), row(rows, k + 3), from, to, sums);
            } else {
                block(
                        row(rows, k),
                        row(rows, k + 1),
                        row(rows, k + 2),
                        row(rows, k + 3),
                        row(rows, l),
                        row(rows, l + 1),
                        row(rows, l + 2),
                        row(rows, l + 3),
                        from,
                        to,
                        sums);
            }
        }
    }

    private double[] row(double[][] rows, int k) {
        return k < rowCount ? rows[k] : zeros;
    }

    private static void diagonal(double[] a0, double[] a1, double[] a2, double[] a3, int from, int to, double[] sums) {
        double s00 = sums[0];
        double s10 = sums[4], s11 = sums[5];
        double s20 = sums[8], s21 = sums[9], s22 = sums[10];
        double s30 = sums[12], s31 = sums[13], s32 = sums[14], s33 = sums[15];
        for (int i = from; i < to; i++) {
            double x = a0[i];
            double y = a1[i];
            double z = a2[i];
            double t = a3[i];
            s00 = Math.fma(x, x, s00);
            s10 = Math.fma(y, x, s10);
            s11 = Math.fma(y, y, s11);
            s20 = Math.fma(z, x, s20);
            s21 = Math.fma(z, y, s21);
            s22 = Math.fma(z, z, s22);
            s30 = Math.fma(t, x, s30);
            s31 = Math.fma(t, y, s31);
            s32 = Math.fma(t, z, s32);
            s33 = Math.fma(t, t, s33);
        }
        sums[0] = s00;
        sums[4] = s10;
        sums[5] = s11;
        sums[8] = s20;
        sums[9] = s21;
        sums[10] = s22;
        sums[12] = s30;
        sums[13] = s31;
        sums[14] = s32;
        sums[15] = s33;
    }

    private static void block(
            double[] a0,
            double[] a1,
            double[] a2,
            double[] a3,
            double[] b0,
            double[] b1,
            double[] b2,
            double[] b3,
            int from,
            int to,
            double[] sums) {
        double s00 = sums[0], s01 = sums[1], s02 = sums[2], s03 = sums[3];
        double s10 = sums[4], s11 = sums[5], s12 = sums[6], s13 = sums[7];
        double s20 = sums[8], s21 = sums[9], s22 = sums[10], s23 = sums[11];
        double s30 = sums[12], s31 = sums[13], s32 = sums[14], s33 = sums[15];
        for (int i = from; i < to; i++) {
            double x = b0[i];
            double y = b1[i];
            double z = b2[i];
            double t = b3[i];
            double a = a0[i];
            s00 = Math.fma(a, x, s00);
            s01 = Math.fma(a, y, s01);
            s02 = Math.fma(a, z, s02);
            s03 = Math.fma(a, t, s03);
            a = a1[i];
            s10 = Math.fma(a, x, s10);
            s11 = Math.fma(a, y, s11);
            s12 = Math.fma(a, z, s12);
            s13 = Math.fma(a, t, s13);
            a = a2[i];
            s20 = Math.fma(a, x, s20);
            s21 = Math.fma(a, y, s21);
            s22 = Math.fma(a, z, s22);
            s23 = Math.fma(a, t, s23);
            a = a3[i];
            s30 = Math.fma(a, x, s30);
            s31 = Math.fma(a, y, s31);
            s32 = Math.fma(a, z, s32);
            s33 = Math.fma(a, t, s33);
        }
        sums[0] = s00;
        sums[1] = s01;
        sums[2] = s02;
        sums[3] = s03;
        sums[4] = s10;
        sums[5] = s11;
        sums[6] = s12;
        sums[7] = s13;
        sums[8] = s20;
        sums[9] = s21;
        sums[10] = s22;
        sums[11] = s23;
        sums[12] = s30;
        sums[13] = s31;
        sums[14] = s32;
        sums[15] = s33;
    }
}
