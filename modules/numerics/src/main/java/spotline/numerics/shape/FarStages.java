package spotline.numerics.shape;

import java.util.ArrayList;
import java.util.List;

/** Loops for |z| from 8 up: the asymptotic series in Z = 1 / z^2, see {@link Faddeeva}. */
final class FarStages {
    private FarStages() {}

    static FaddeevaLane.Stage[] chain(int terms, boolean voigt) {
        List<FaddeevaLane.Stage> stages = new ArrayList<>();
        stages.add(FarStages::farInverse);
        stages.add(FarStages::farVariable);
        stages.addAll(PolynomialStages.chain(Faddeeva.etaSeries(terms)));
        stages.add(FarStages::farEta);
        stages.add(FarStages::farSlope);
        if (voigt) {
            stages.add(FarStages::farShared);
            stages.add(FarStages::farScaledSum);
            stages.add(FarStages::farScaled);
        } else {
            stages.add(FarStages::farResult);
            stages.add(FarStages::farSum);
        }
        return stages.toArray(FaddeevaLane.Stage[]::new);
    }

    /** 1 / z. */
    static void farInverse(FaddeevaLane lane, int from, int to) {
        double[] source = lane.x;
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] inverse = lane.s;
        double shift = lane.position;
        double factor = lane.scale;
        double square = lane.y * lane.y;
        double minus = -lane.y;
        for (int i = from; i < to; i++) {
            double z = (source[i] - shift) * factor;
            double per = 1 / (z * z + square);
            inverse[i] = per;
            im[i] = minus * per;
            re[i] = z * per;
        }
    }

    /** Z = 1 / z^2: twice its real part, its imaginary part, minus its square. */
    static void farVariable(FaddeevaLane lane, int from, int to) {
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] twice = lane.r;
        double[] imaginary = lane.t;
        double[] square = lane.s;
        for (int i = from; i < to; i++) {
            twice[i] = 2 * (re[i] - im[i]) * (re[i] + im[i]);
            imaginary[i] = 2 * re[i] * im[i];
            square[i] = -square[i] * square[i];
        }
    }

    /** eta = Z p. */
    static void farEta(FaddeevaLane lane, int from, int to) {
        double[] pRe = lane.b2;
        double[] pIm = lane.b1;
        double[] twice = lane.r;
        double[] zIm = lane.t;
        for (int i = from; i < to; i++) {
            double zRe = 0.5 * twice[i];
            double im = pIm[i] * zIm[i];
            double real = pRe[i] * zRe - im * zIm[i];
            pIm[i] = pRe[i] * zIm[i] + im * zRe;
            pRe[i] = real;
        }
    }

    /** w' = -2 i delta / sqrt(pi), delta = (1 + eta) Z / 2; over Z. */
    static void farSlope(FaddeevaLane lane, int from, int to) {
        double[] etaRe = lane.b2;
        double[] etaIm = lane.b1;
        double[] twice = lane.r;
        double[] zIm = lane.t;
        for (int i = from; i < to; i++) {
            double one = 1 + etaRe[i];
            double zRe = 0.5 * twice[i];
            double slopeIm = -Faddeeva.PER_ROOT_PI * (one * zRe - etaIm[i] * zIm[i]);
            zIm[i] = Faddeeva.PER_ROOT_PI * (one * zIm[i] + etaIm[i] * zRe);
            twice[i] = slopeIm;
        }
    }

    /** w - i / (sqrt(pi) z), which w and w + z w' share. */
    static void farShared(FaddeevaLane lane, int from, int to) {
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] slopeRe = lane.t;
        double[] slopeIm = lane.r;
        double[] shared = lane.s;
        for (int i = from; i < to; i++) shared[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i]);
    }

    /** w + z w' = i (delta - eta) / (sqrt(pi) z). */
    static void farScaledSum(FaddeevaLane lane, int from, int to) {
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] etaRe = lane.b2;
        double[] etaIm = lane.b1;
        double[] shared = lane.s;
        double[] third = lane.out[3];
        double factor = lane.factors[3];
        double front = lane.factors[3] * Faddeeva.PER_ROOT_PI;
        for (int i = from; i < to; i++) {
            third[i] = factor * shared[i] + front * (etaRe[i] * im[i] + etaIm[i] * re[i]);
        }
    }

    static void farScaled(FaddeevaLane lane, int from, int to) {
        double[] im = lane.d;
        double[] shared = lane.s;
        double[] slopeRe = lane.t;
        double[] slopeIm = lane.r;
        double[] zeroth = lane.out[0];
        double[] first = lane.out[1];
        double[] second = lane.out[2];
        double f0 = lane.factors[0];
        double front = lane.factors[0] * Faddeeva.PER_ROOT_PI;
        double f1 = lane.factors[1];
        double f2 = lane.factors[2];
        for (int i = from; i < to; i++) {
            zeroth[i] = f0 * shared[i] - front * im[i];
            first[i] = f1 * slopeRe[i];
            second[i] = f2 * slopeIm[i];
        }
    }

    static void farResult(FaddeevaLane lane, int from, int to) {
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] slopeRe = lane.t;
        double[] slopeIm = lane.r;
        double[] wRe = lane.out[0];
        double[] wIm = lane.out[4];
        double[] first = lane.out[1];
        double[] second = lane.out[2];
        for (int i = from; i < to; i++) {
            first[i] = slopeRe[i];
            second[i] = slopeIm[i];
            wRe[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i]) - Faddeeva.PER_ROOT_PI * im[i];
            wIm[i] = -0.5 * (slopeIm[i] * re[i] + slopeRe[i] * im[i]) + Faddeeva.PER_ROOT_PI * re[i];
        }
    }

    static void farSum(FaddeevaLane lane, int from, int to) {
        double[] re = lane.zx;
        double[] im = lane.d;
        double[] etaRe = lane.b2;
        double[] etaIm = lane.b1;
        double[] slopeRe = lane.t;
        double[] slopeIm = lane.r;
        double[] sumRe = lane.out[3];
        double[] sumIm = lane.out[5];
        for (int i = from; i < to; i++) {
            sumRe[i] = 0.5 * (slopeIm[i] * im[i] - slopeRe[i] * re[i])
                    + Faddeeva.PER_ROOT_PI * (etaRe[i] * im[i] + etaIm[i] * re[i]);
            sumIm[i] = -0.5 * (slopeIm[i] * re[i] + slopeRe[i] * im[i])
                    - Faddeeva.PER_ROOT_PI * (etaRe[i] * re[i] - etaIm[i] * im[i]);
        }
    }
}
