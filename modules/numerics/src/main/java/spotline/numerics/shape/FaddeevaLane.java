package spotline.numerics.shape;

import java.util.ArrayList;
import java.util.List;

/**
 * The Faddeeva function over stretches of an array, as a chain of short loops.
 *
 * <p>Short loops without branches, calls or conversions are what the compiler turns into vector instructions. Each is a
 * class of its own called through one interface: so many that the compiler gives up inlining them into one method, in which
 * it would run out of patience before it had looked at all of them.
 *
 * <p>Both expansions are polynomials with real coefficients at a complex point Z, evaluated by the recursion
 * {@code b_k = a_k + 2 Re(Z) b_(k+1) - |Z|^2 b_(k+2)} (Knuth, The Art of Computer Programming 2, 4.6.4) with two
 * multiplications a coefficient.
 */
final class FaddeevaLane {
    /** One loop. */
    private interface Stage {
        void run(FaddeevaLane lane, int from, int to);
    }

    private static final double PER_ROOT_PI = Faddeeva.PER_ROOT_PI;
    private static final int TERMS = 38;
    private static final int STEPS = 5;
    private static final double L = Math.sqrt(TERMS / Math.sqrt(2));
    private static final Stage[] NEAR = nearStages(true);
    private static final Stage[] FAR = farStages(13, true);
    private static final Stage[] DISTANT = farStages(8, true);
    private static final Stage[] COMPLEX_NEAR = nearStages(false);
    private static final Stage[] COMPLEX_FAR = farStages(13, false);
    private static final Stage[] COMPLEX_DISTANT = farStages(8, false);

    // scratch slots
    private static final int FIRST_SLOT = 16;

    private double[] x = new double[0];
    private double position;
    private double scale;
    private double y;
    private double[][] out = new double[0][];
    private double[] factors = new double[0];
    // near: Re z, then 1 / |L - i z|^2, 2 Re Z, -|Z|^2, two terms of the recursion, one more; far: 1/z and 1/z^2
    // likewise
    private double[] zx = x;
    private double[] d = x;
    private double[] r = x;
    private double[] s = x;
    private double[] b1 = x;
    private double[] b2 = x;
    private double[] t = x;

    /**
     * @param out Re w, Re w', Im w', Re(w + z w'), Im w, and Im(w + z w') if there is a sixth
     * @param factors what the first four are multiplied by; none where there are six
     */
    void set(
            double[] x,
            double position,
            double scale,
            double y,
            double[][] out,
            double[] factors,
            ShapeScratch scratch) {
        this.x = x;
        this.position = position;
        this.scale = scale;
        this.y = y;
        this.out = out;
        this.factors = factors;
        int n = x.length;
        zx = scratch.array(FIRST_SLOT, n);
        d = scratch.array(FIRST_SLOT + 1, n);
        r = scratch.array(FIRST_SLOT + 2, n);
        s = scratch.array(FIRST_SLOT + 3, n);
        b1 = scratch.array(FIRST_SLOT + 4, n);
        b2 = scratch.array(FIRST_SLOT + 5, n);
        t = scratch.array(FIRST_SLOT + 6, n);
    }

    void near(int from, int to) {
        if (from < to) run(out.length > 5 ? COMPLEX_NEAR : NEAR, from, to);
    }

    /** @param distant |z| above 16, where fewer terms do */
    void far(int from, int to, boolean distant) {
        if (from >= to) return;
        if (out.length > 5) run(distant ? COMPLEX_DISTANT : COMPLEX_FAR, from, to);
        else run(distant ? DISTANT : FAR, from, to);
    }

    private void run(Stage[] stages, int from, int to) {
        for (Stage stage : stages) stage.run(this, from, to);
    }

    /** Fourier coefficients of {@code (L^2 + t^2) exp(-t^2)} in the variable of the expansion. */
    private static double[] weideman() {
        int m = 2 * TERMS;
        double[] a = new double[TERMS];
        for (int n = 1; n <= TERMS; n++) {
            double sum = L * L;
            for (int j = 1; j < m; j++) {
                double theta = j * Math.PI / m;
                double t = L * Math.tan(0.5 * theta);
                sum += 2 * Math.exp(-t * t) * (L * L + t * t) * Math.cos(n * theta);
            }
            a[n - 1] = sum / (2 * m);
        }
        return a;
    }

    private static List<Stage> polynomial(double[] a) {
        List<Stage> stages = new ArrayList<>();
        int k = a.length - 1;
        stages.add(new Begin(a[k], a[k - 1]));
        k -= 2;
        for (; k >= STEPS; k -= STEPS) stages.add(new Five(a[k], a[k - 1], a[k - 2], a[k - 3], a[k - 4]));
        for (; k >= 1; k--) stages.add(new One(a[k]));
        stages.add(new End(a[0]));
        return stages;
    }

    private static Stage[] nearStages(boolean voigt) {
        List<Stage> stages = new ArrayList<>();
        stages.add(FaddeevaLane::nearVariable);
        stages.addAll(polynomial(weideman()));
        stages.add(FaddeevaLane::nearImaginary);
        stages.add(FaddeevaLane::nearFactor);
        stages.add(FaddeevaLane::nearReal);
        stages.add(FaddeevaLane::nearResult);
        stages.add(FaddeevaLane::nearResultEnd);
        if (voigt) {
            stages.add(FaddeevaLane::nearHalfSlope);
            stages.add(FaddeevaLane::nearScaledSum);
            stages.add(FaddeevaLane::nearScaled);
        } else {
            stages.add(FaddeevaLane::nearSlope);
            stages.add(FaddeevaLane::nearSum);
        }
        return stages.toArray(Stage[]::new);
    }

    private static Stage[] farStages(int terms, boolean voigt) {
        List<Stage> stages = new ArrayList<>();
        stages.add(FaddeevaLane::farInverse);
        stages.add(FaddeevaLane::farVariable);
        stages.addAll(polynomial(Faddeeva.etaSeries(terms)));
        stages.add(FaddeevaLane::farEta);
        stages.add(FaddeevaLane::farSlope);
        if (voigt) {
            stages.add(FaddeevaLane::farShared);
            stages.add(FaddeevaLane::farScaledSum);
            stages.add(FaddeevaLane::farScaled);
        } else {
            stages.add(FaddeevaLane::farResult);
            stages.add(FaddeevaLane::farSum);
        }
        return stages.toArray(Stage[]::new);
    }

    /** The two highest coefficients. */
    private record Begin(double last, double before) implements Stage {
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

    private record One(double a) implements Stage {
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

    private record Five(double a4, double a3, double a2, double a1, double a0) implements Stage {
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
    private record End(double a) implements Stage {
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

    /** z, 1 / |L - i z|^2, and Z = (L + i z) / (L - i z) as twice its real part and minus its square. */
    private void nearVariable(int from, int to) {
        double[] source = x;
        double[] real = zx;
        double[] inverse = d;
        double[] twice = r;
        double[] square = s;
        double shift = position;
        double factor = scale;
        double plus = (L + y) * (L + y);
        double minus = (L - y) * (L - y);
        double product = 2 * (L - y) * (L + y);
        for (int i = from; i < to; i++) {
            double z = (source[i] - shift) * factor;
            double zz = z * z;
            double per = 1 / (plus + zz);
            real[i] = z;
            inverse[i] = per;
            twice[i] = (product - 2 * zz) * per;
            square[i] = -(minus + zz) * per;
        }
    }

    /** Im p = Im Z b_1. */
    private void nearImaginary(int from, int to) {
        double[] real = zx;
        double[] inverse = d;
        double[] p = b1;
        double twoL = 2 * L;
        for (int i = from; i < to; i++) p[i] *= twoL * real[i] * inverse[i];
    }

    /** 2 / (L - i z)^2. */
    private void nearFactor(int from, int to) {
        double[] real = zx;
        double[] inverse = d;
        double[] re = r;
        double[] im = s;
        double square = 2 * (L + y) * (L + y);
        double twice = 4 * (L + y);
        for (int i = from; i < to; i++) {
            double per = inverse[i] * inverse[i];
            re[i] = (square - 2 * real[i] * real[i]) * per;
            im[i] = twice * real[i] * per;
        }
    }

    /** w = 2 p / (L - i z)^2 + 1 / (sqrt(pi) (L - i z)). */
    private void nearReal(int from, int to) {
        double[] factorRe = r;
        double[] factorIm = s;
        double[] inverse = d;
        double[] pRe = b2;
        double[] pIm = b1;
        double[] re = out[0];
        double constant = PER_ROOT_PI * (L + y);
        for (int i = from; i < to; i++) {
            re[i] = pRe[i] * factorRe[i] - pIm[i] * factorIm[i] + constant * inverse[i];
        }
    }

    private void nearResult(int from, int to) {
        double[] factorRe = r;
        double[] factorIm = s;
        double[] pRe = b2;
        double[] pIm = b1;
        double[] im = out[4];
        for (int i = from; i < to; i++) im[i] = pRe[i] * factorIm[i] + pIm[i] * factorRe[i];
    }

    private void nearResultEnd(int from, int to) {
        double[] inverse = d;
        double[] real = zx;
        double[] im = out[4];
        for (int i = from; i < to; i++) im[i] += PER_ROOT_PI * real[i] * inverse[i];
    }

    /** w' = -2 z w + 2 i / sqrt(pi), halved, into what is free. */
    private void nearHalfSlope(int from, int to) {
        double[] re = out[0];
        double[] im = out[4];
        double[] real = zx;
        double[] slopeRe = r;
        double[] slopeIm = s;
        double height = y;
        for (int i = from; i < to; i++) {
            slopeRe[i] = height * im[i] - real[i] * re[i];
            slopeIm[i] = PER_ROOT_PI - real[i] * im[i] - height * re[i];
        }
    }

    private void nearScaledSum(int from, int to) {
        double[] re = out[0];
        double[] real = zx;
        double[] slopeRe = r;
        double[] slopeIm = s;
        double[] third = out[3];
        double height = 2 * y * factors[3];
        double half = factors[3];
        double twice = 2 * factors[3];
        for (int i = from; i < to; i++) {
            third[i] = half * re[i] + twice * real[i] * slopeRe[i] - height * slopeIm[i];
        }
    }

    private void nearScaled(int from, int to) {
        double[] zeroth = out[0];
        double[] slopeRe = r;
        double[] slopeIm = s;
        double[] first = out[1];
        double[] second = out[2];
        double f0 = factors[0];
        double f1 = 2 * factors[1];
        double f2 = 2 * factors[2];
        for (int i = from; i < to; i++) {
            first[i] = f1 * slopeRe[i];
            second[i] = f2 * slopeIm[i];
            zeroth[i] *= f0;
        }
    }

    private void nearSlope(int from, int to) {
        double[] re = out[0];
        double[] im = out[4];
        double[] real = zx;
        double[] slopeRe = out[1];
        double[] slopeIm = out[2];
        double height = y;
        for (int i = from; i < to; i++) {
            slopeRe[i] = 2 * (height * im[i] - real[i] * re[i]);
            slopeIm[i] = 2 * (PER_ROOT_PI - real[i] * im[i] - height * re[i]);
        }
    }

    private void nearSum(int from, int to) {
        double[] re = out[0];
        double[] im = out[4];
        double[] real = zx;
        double[] slopeRe = out[1];
        double[] slopeIm = out[2];
        double[] sumRe = out[3];
        double[] sumIm = out[5];
        double height = y;
        for (int i = from; i < to; i++) {
            sumRe[i] = re[i] + real[i] * slopeRe[i] - height * slopeIm[i];
            sumIm[i] = im[i] + real[i] * slopeIm[i] + height * slopeRe[i];
        }
    }

    /** 1 / z. */
    private void farInverse(int from, int to) {
        double[] source = x;
        double[] re = zx;
        double[] im = d;
        double[] inverse = s;
        double shift = position;
        double factor = scale;
        double square = y * y;
        double minus = -y;
        for (int i = from; i < to; i++) {
            double z = (source[i] - shift) * factor;
            double per = 1 / (z * z + square);
            inverse[i] = per;
            im[i] = minus * per;
            re[i] = z * per;
        }
    }

    /** Z = 1 / z^2: twice its real part, its imaginary part, minus its square. */
    private void farVariable(int from, int to) {
        double[] re = zx;
        double[] im = d;
        double[] twice = r;
        double[] imaginary = t;
        double[] square = s;
        for (int i = from; i < to; i++) {
            twice[i] = 2 * (re[i] - im[i]) * (re[i] + im[i]);
            imaginary[i] = 2 * re[i] * im[i];
            square[i] = -square[i] * square[i];
        }
    }

    /** eta = Z p. */
    private void farEta(int from, int to) {
        double[] pRe = b2;
        double[] pIm = b1;
        double[] twice = r;
        double[] zIm = t;
        for (int i = from; i < to; i++) {
            double zRe = 0.5 * twice[i];
            double im = pIm[i] * zIm[i];
            double real = pRe[i] * zRe - im * zIm[i];
            pIm[i] = pRe[i] * zIm[i] + im * zRe;
            pRe[i] = real;
        }
    }

    /** w' = -2 i delta / sqrt(pi), delta = (1 + eta) Z / 2; over Z. */
    private void farSlope(int from, int to) {
        double[] etaRe = b2;
        double[] etaIm = b1;
        double[] twice = r;
        double[] zIm = t;
        for (int i = from; i < to; i++) {
            double one = 1 + etaRe[i];
            double zRe = 0.5 * twice[i];
            double slopeIm = -PER_ROOT_PI * (one * zRe - etaIm[i] * zIm[i]);
            zIm[i] = PER_ROOT_PI * (one * zIm[i] + etaIm[i] * zRe);
            twice[i] = slopeIm;
        }
    }

    /** w - i / (sqrt(pi) z), which w and w + z w' share. */
    private void farShared(int from, int to) {
        double[] re = zx;
        double[] im = d;
        double[] slopeRe = t;
        double[] slopeIm = r;
        double[] shared = s;
        for (int i = from; i < to; i++) shared[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i]);
    }

    /** w + z w' = i (delta - eta) / (sqrt(pi) z). */
    private void farScaledSum(int from, int to) {
        double[] re = zx;
        double[] im = d;
        double[] etaRe = b2;
        double[] etaIm = b1;
        double[] shared = s;
        double[] third = out[3];
        double factor = factors[3];
        double front = factors[3] * PER_ROOT_PI;
        for (int i = from; i < to; i++) {
            third[i] = factor * shared[i] + front * (etaRe[i] * im[i] + etaIm[i] * re[i]);
        }
    }

    private void farScaled(int from, int to) {
        double[] im = d;
        double[] shared = s;
        double[] slopeRe = t;
        double[] slopeIm = r;
        double[] zeroth = out[0];
        double[] first = out[1];
        double[] second = out[2];
        double f0 = factors[0];
        double front = factors[0] * PER_ROOT_PI;
        double f1 = factors[1];
        double f2 = factors[2];
        for (int i = from; i < to; i++) {
            zeroth[i] = f0 * shared[i] - front * im[i];
            first[i] = f1 * slopeRe[i];
            second[i] = f2 * slopeIm[i];
        }
    }

    private void farResult(int from, int to) {
        double[] re = zx;
        double[] im = d;
        double[] slopeRe = t;
        double[] slopeIm = r;
        double[] wRe = out[0];
        double[] wIm = out[4];
        double[] first = out[1];
        double[] second = out[2];
        for (int i = from; i < to; i++) {
            first[i] = slopeRe[i];
            second[i] = slopeIm[i];
            wRe[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i]) - PER_ROOT_PI * im[i];
            wIm[i] = -0.5 * (slopeIm[i] * re[i] + slopeRe[i] * im[i]) + PER_ROOT_PI * re[i];
        }
    }

    private void farSum(int from, int to) {
        double[] re = zx;
        double[] im = d;
        double[] etaRe = b2;
        double[] etaIm = b1;
        double[] slopeRe = t;
        double[] slopeIm = r;
        double[] sumRe = out[3];
        double[] sumIm = out[5];
        for (int i = from; i < to; i++) {
            sumRe[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i])
                    + PER_ROOT_PI * (etaRe[i] * im[i] + etaIm[i] * re[i]);
            sumIm[i] = -0.5 * (slopeIm[i] * re[i] + slopeRe[i] * im[i])
                    - PER_ROOT_PI * (etaRe[i] * re[i] - etaIm[i] * im[i]);
        }
    }
}
