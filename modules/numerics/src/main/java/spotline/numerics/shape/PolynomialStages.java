package spotline.numerics.shape;

import java.util.ArrayList;
import java.util.List;

/**
 * A polynomial with real coefficients at complex points Z, by the recursion
 * {@code b_k = a_k + 2 Re(Z) b_(k+1) - |Z|^2 b_(k+2)} (Knuth, The Art of Computer Programming 2, 4.6.4) with two
 * multiplications a coefficient. The lane's r holds 2 Re(Z), its s minus |Z|^2; at the end b2 holds the real part and b1 what
 * Im(Z) must still be multiplied with for the imaginary one.
 */
final class PolynomialStages {
    private static final int STEPS = 5;

    private PolynomialStages() {}

    static List<FaddeevaLane.Stage> chain(double[] a) {
        List<FaddeevaLane.Stage> stages = new ArrayList<>();
        int k = a.length - 1;
        stages.add(new Begin(a[k], a[k - 1]));
        k -= 2;
        for (; k >= STEPS; k -= STEPS) stages.add(new Five(a[k], a[k - 1], a[k - 2], a[k - 3], a[k - 4]));
        for (; k >= 1; k--) stages.add(new One(a[k]));
        stages.add(new End(a[0]));
        return stages;
    }

    /** The two highest coefficients. */
    private record Begin(double last, double before) implements FaddeevaLane.Stage {
        @Override
        public void run(FaddeevaLane lane, int from, int to) {
            double[] r = lane.r;
            double[] b1 = lane.b1;
            double[] b2 = lane.b2;
            double high = last;
            double low = before;
            for (int i = from; i < to; i++) {
                b2[i] = high;
                b1[i] = Math.fma(r[i], high, low);
            }
        }
    }

    private record One(double a) implements FaddeevaLane.Stage {
        @Override
        public void run(FaddeevaLane lane, int from, int to) {
            double[] r = lane.r;
            double[] s = lane.s;
            double[] b1 = lane.b1;
            double[] b2 = lane.b2;
            double c = a;
            for (int i = from; i < to; i++) {
                double b = Math.fma(r[i], b1[i], Math.fma(s[i], b2[i], c));
                b2[i] = b1[i];
                b1[i] = b;
            }
        }
    }

    private record Five(double a4, double a3, double a2, double a1, double a0) implements FaddeevaLane.Stage {
        @Override
        public void run(FaddeevaLane lane, int from, int to) {
            double[] r = lane.r;
            double[] s = lane.s;
            double[] b1 = lane.b1;
            double[] b2 = lane.b2;
            double e4 = a4;
            double e3 = a3;
            double e2 = a2;
            double e1 = a1;
            double e0 = a0;
            for (int i = from; i < to; i++) {
                double c4 = Math.fma(r[i], b1[i], Math.fma(s[i], b2[i], e4));
                double c3 = Math.fma(r[i], c4, Math.fma(s[i], b1[i], e3));
                double c2 = Math.fma(r[i], c3, Math.fma(s[i], c4, e2));
                double c1 = Math.fma(r[i], c2, Math.fma(s[i], c3, e1));
                b1[i] = Math.fma(r[i], c1, Math.fma(s[i], c2, e0));
                b2[i] = c1;
            }
        }
    }

    /** {@code Re p = a_0 + Re Z b_1 - |Z|^2 b_2}, into b2; the imaginary part is {@code Im Z b_1}. */
    private record End(double a) implements FaddeevaLane.Stage {
        @Override
        public void run(FaddeevaLane lane, int from, int to) {
            double[] r = lane.r;
            double[] s = lane.s;
            double[] b1 = lane.b1;
            double[] b2 = lane.b2;
            double first = a;
            for (int i = from; i < to; i++) {
                b2[i] = Math.fma(0.5 * r[i], b1[i], Math.fma(s[i], b2[i], first));
            }
        }
    }
}
