package spotline.numerics.shape;

import java.util.ArrayList;
import java.util.List;

/** Loops for |z| below 8: the expansion of J. A. C. Weideman, SIAM J. Numer. Anal. 31 (1994) 1497. */
final class NearStages {
    private static final int TERMS = 38;
    private static final double L = Math.sqrt(TERMS / Math.sqrt(2));

    private NearStages() {}

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

    static FaddeevaLane.Stage[] chain(boolean voigt) {
        List<FaddeevaLane.Stage> stages = new ArrayList<>();
        stages.add(NearStages::nearVariable);
        stages.addAll(PolynomialStages.chain(weideman()));
        stages.add(NearStages::nearImaginary);
        stages.add(NearStages::nearFactor);
        stages.add(NearStages::nearReal);
        stages.add(NearStages::nearResult);
        if (voigt) {
            stages.add(NearStages::nearHalfSlope);
            stages.add(NearStages::nearScaled);
        } else {
            stages.add(NearStages::nearSlope);
            stages.add(NearStages::nearSum);
        }
        return stages.toArray(FaddeevaLane.Stage[]::new);
    }

    /** z, 1 / |L - i z|^2, and Z = (L + i z) / (L - i z) as twice its real part and minus its square. */
    static void nearVariable(FaddeevaLane lane, int from, int to) {
        double[] source = lane.x;
        double[] real = lane.zx;
        double[] inverse = lane.d;
        double[] twice = lane.r;
        double[] square = lane.s;
        double shift = lane.position;
        double factor = lane.scale;
        double plus = (L + lane.y) * (L + lane.y);
        double minus = (L - lane.y) * (L - lane.y);
        double product = 2 * (L - lane.y) * (L + lane.y);
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
    static void nearImaginary(FaddeevaLane lane, int from, int to) {
        double[] real = lane.zx;
        double[] inverse = lane.d;
        double[] p = lane.b1;
        double twoL = 2 * L;
        for (int i = from; i < to; i++) p[i] *= twoL * real[i] * inverse[i];
    }

    /** 2 / (L - i z)^2. */
    static void nearFactor(FaddeevaLane lane, int from, int to) {
        double[] real = lane.zx;
        double[] inverse = lane.d;
        double[] re = lane.r;
        double[] im = lane.s;
        double square = 2 * (L + lane.y) * (L + lane.y);
        double twice = 4 * (L + lane.y);
        for (int i = from; i < to; i++) {
            double per = inverse[i] * inverse[i];
            re[i] = (square - 2 * real[i] * real[i]) * per;
            im[i] = twice * real[i] * per;
        }
    }

    /** w = 2 p / (L - i z)^2 + 1 / (sqrt(pi) (L - i z)). */
    static void nearReal(FaddeevaLane lane, int from, int to) {
        double[] factorRe = lane.r;
        double[] factorIm = lane.s;
        double[] inverse = lane.d;
        double[] pRe = lane.b2;
        double[] pIm = lane.b1;
        double[] re = lane.out[0];
        double constant = Faddeeva.PER_ROOT_PI * (L + lane.y);
        for (int i = from; i < to; i++) {
            re[i] = pRe[i] * factorRe[i] - pIm[i] * factorIm[i] + constant * inverse[i];
        }
    }

    static void nearResult(FaddeevaLane lane, int from, int to) {
        double[] factorRe = lane.r;
        double[] factorIm = lane.s;
        double[] inverse = lane.d;
        double[] real = lane.zx;
        double[] pRe = lane.b2;
        double[] pIm = lane.b1;
        double[] im = lane.out[4];
        for (int i = from; i < to; i++) {
            im[i] = pRe[i] * factorIm[i] + pIm[i] * factorRe[i] + Faddeeva.PER_ROOT_PI * real[i] * inverse[i];
        }
    }

    /** w' = -2 z w + 2 i / sqrt(pi), halved, into what is free. */
    static void nearHalfSlope(FaddeevaLane lane, int from, int to) {
        double[] re = lane.out[0];
        double[] im = lane.out[4];
        double[] real = lane.zx;
        double[] slopeRe = lane.r;
        double[] slopeIm = lane.s;
        double height = lane.y;
        for (int i = from; i < to; i++) {
            slopeRe[i] = height * im[i] - real[i] * re[i];
            slopeIm[i] = Faddeeva.PER_ROOT_PI - real[i] * im[i] - height * re[i];
        }
    }

    static void nearScaled(FaddeevaLane lane, int from, int to) {
        double[] zeroth = lane.out[0];
        double[] real = lane.zx;
        double[] slopeRe = lane.r;
        double[] slopeIm = lane.s;
        double[] first = lane.out[1];
        double[] second = lane.out[2];
        double[] third = lane.out[3];
        double f0 = lane.factors[0];
        double f1 = 2 * lane.factors[1];
        double f2 = 2 * lane.factors[2];
        double height = 2 * lane.y * lane.factors[3];
        double half = lane.factors[3];
        double twice = 2 * lane.factors[3];
        for (int i = from; i < to; i++) {
            double re = zeroth[i];
            double a = slopeRe[i];
            double b = slopeIm[i];
            third[i] = half * re + twice * real[i] * a - height * b;
            first[i] = f1 * a;
            second[i] = f2 * b;
            zeroth[i] = f0 * re;
        }
    }

    static void nearSlope(FaddeevaLane lane, int from, int to) {
        double[] re = lane.out[0];
        double[] im = lane.out[4];
        double[] real = lane.zx;
        double[] slopeRe = lane.out[1];
        double[] slopeIm = lane.out[2];
        double height = lane.y;
        for (int i = from; i < to; i++) {
            slopeRe[i] = 2 * (height * im[i] - real[i] * re[i]);
            slopeIm[i] = 2 * (Faddeeva.PER_ROOT_PI - real[i] * im[i] - height * re[i]);
        }
    }

    static void nearSum(FaddeevaLane lane, int from, int to) {
        double[] re = lane.out[0];
        double[] im = lane.out[4];
        double[] real = lane.zx;
        double[] slopeRe = lane.out[1];
        double[] slopeIm = lane.out[2];
        double[] sumRe = lane.out[3];
        double[] sumIm = lane.out[5];
        double height = lane.y;
        for (int i = from; i < to; i++) {
            sumRe[i] = re[i] + real[i] * slopeRe[i] - height * slopeIm[i];
            sumIm[i] = im[i] + real[i] * slopeIm[i] + height * slopeRe[i];
        }
    }
}
