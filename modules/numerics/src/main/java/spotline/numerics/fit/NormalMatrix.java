package spotline.numerics.fit;

/**
 * Products of all pairs of rows, in blocks of 4 by 4 that stay in registers: a loop over one pair would wait for each
 * addition to finish.
 */
final class NormalMatrix {
    private double[] zeros = new double[0];

    /** {@code out[k * stride + l] = sum_i rows[k][i] rows[l][i]} for l up to k, k from {@code first} to below {@code count}. */
    void multiply(double[][] rows, int first, int count, int n, double[] out, int stride, double[] block) {
        if (zeros.length < n) zeros = new double[n];
        for (int k = first - first % 4; k < count; k += 4) {
            for (int l = 0; l <= k; l += 4) {
                block(
                        row(rows, k, count),
                        row(rows, k + 1, count),
                        row(rows, k + 2, count),
                        row(rows, k + 3, count),
                        row(rows, l, count),
                        row(rows, l + 1, count),
                        row(rows, l + 2, count),
                        row(rows, l + 3, count),
                        n,
                        block);
                for (int a = 0; a < 4 && k + a < count; a++) {
                    for (int b = 0; b < 4 && l + b <= k + a; b++) out[(k + a) * stride + l + b] = block[4 * a + b];
                }
            }
        }
    }

    private double[] row(double[][] rows, int k, int count) {
        return k < count ? rows[k] : zeros;
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
            int n,
            double[] out) {
        double s00 = 0, s01 = 0, s02 = 0, s03 = 0;
        double s10 = 0, s11 = 0, s12 = 0, s13 = 0;
        double s20 = 0, s21 = 0, s22 = 0, s23 = 0;
        double s30 = 0, s31 = 0, s32 = 0, s33 = 0;
        for (int i = 0; i < n; i++) {
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
        out[0] = s00;
        out[1] = s01;
        out[2] = s02;
        out[3] = s03;
        out[4] = s10;
        out[5] = s11;
        out[6] = s12;
        out[7] = s13;
        out[8] = s20;
        out[9] = s21;
        out[10] = s22;
        out[11] = s23;
        out[12] = s30;
        out[13] = s31;
        out[14] = s32;
        out[15] = s33;
    }
}
