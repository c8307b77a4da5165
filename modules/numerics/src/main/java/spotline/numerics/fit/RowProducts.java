package spotline.numerics.fit;

/**
 * Products of a few rows with a few others over a stretch, added to 16 sums by {@code 4 * row + column}. All sums of a block
 * stay in registers and none waits for another.
 */
final class RowProducts {
    private RowProducts() {}

    /** One product, in four sums. */
    static double product(double[] a, double[] b, int from, int to) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = from;
        for (; i < to - 3; i += 4) {
            s0 = Math.fma(a[i], b[i], s0);
            s1 = Math.fma(a[i + 1], b[i + 1], s1);
            s2 = Math.fma(a[i + 2], b[i + 2], s2);
            s3 = Math.fma(a[i + 3], b[i + 3], s3);
        }
        for (; i < to; i++) s0 = Math.fma(a[i], b[i], s0);
        return (s0 + s1) + (s2 + s3);
    }

    static void oneByFour(
            double[] a0, double[] b0, double[] b1, double[] b2, double[] b3, int from, int to, double[] sums) {
        double s00 = sums[0], s01 = sums[1], s02 = sums[2], s03 = sums[3];
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
        }
        sums[0] = s00;
        sums[1] = s01;
        sums[2] = s02;
        sums[3] = s03;
    }

    static void threeByFour(
            double[] a0,
            double[] a1,
            double[] a2,
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
    }

    static void square(double[] a0, double[] a1, double[] a2, double[] a3, int from, int to, double[] sums) {
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

    static void fourByFour(
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
