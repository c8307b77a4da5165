package spotline.numerics.fit;

import java.util.Arrays;

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
                Arrays.fill(sums, 0);
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
                energy[t] = RowProducts.product(row, row, t * tile, Math.min(n, (t + 1) * tile));
                total += energy[t];
            }
            double least = NEGLECTED * total / tiles;
            for (int t = 0; t < tiles; t++) {
                if (!(energy[t] <= least)) mask |= 1L << t;
            }
        }
        return mask;
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
            addRun(rows, k, l, from, to);
        }
    }

    private void addRun(double[][] rows, int k, int l, int from, int to) {
        double[] a0 = rows[k];
        double[] a1 = row(rows, k + 1);
        double[] a2 = row(rows, k + 2);
        double[] a3 = row(rows, k + 3);
        if (k == l) {
            RowProducts.square(a0, a1, a2, a3, from, to, sums);
            return;
        }
        double[] b0 = rows[l];
        double[] b1 = rows[l + 1];
        double[] b2 = rows[l + 2];
        double[] b3 = rows[l + 3];
        switch (rowCount - k) {
            case 1 -> RowProducts.oneByFour(a0, b0, b1, b2, b3, from, to, sums);
            case 2, 3 -> RowProducts.threeByFour(a0, a1, a2, b0, b1, b2, b3, from, to, sums);
            default -> RowProducts.fourByFour(a0, a1, a2, a3, b0, b1, b2, b3, from, to, sums);
        }
    }

    private double[] row(double[][] rows, int k) {
        return k < rowCount ? rows[k] : zeros;
    }
}
