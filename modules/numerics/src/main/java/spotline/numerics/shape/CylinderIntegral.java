package spotline.numerics.shape;

import java.util.Arrays;
import org.apache.commons.math3.special.Gamma;

/**
 * {@code Q(z, a) = 1 / Gamma(1 - a) int_0^inf s^-a exp(-s^2/2 - z s) ds = exp(z^2/4) D_(a-1)(z)} with its first two
 * derivatives by z and the one by a, at z = (g + i x) / sigma.
 *
 * <p>Source: NIST DLMF 12.5.1. Below |z| = 9 the integral is taken along a path turned by 18 degrees (towards the decay
 * of exp(-z s)) with the substitution {@code r = exp(t - exp(-t))}, which makes the trapezium rule converge
 * exponentially in spite of the singularity at 0; above, by the asymptotic series DLMF 12.9.1.
 */
final class CylinderIntegral {
    private static final double FAR = 9;
    private static final double TURN = Math.PI / 10;
    private static final double STEP = 0.08;
    private static final double FIRST = -4.6;
    private static final int NODES = 94;
    private static final int TERMS = 22;

    private CylinderIntegral() {}

    /** Re and Im of Q, Q', Q'', dQ/da in eight arrays that belong to the scratch; only Q without derivatives. */
    static double[][] evaluate(
            double[] x,
            double position,
            double sigma,
            double gamma,
            double alpha,
            boolean derivatives,
            ShapeScratch scratch) {
        double[][] out = new double[8][];
        for (int k = 0; k < 8; k++) out[k] = scratch.array(k, x.length);
        double[] weights = weights(gamma / sigma, alpha, scratch);
        double digamma = derivatives ? Gamma.digamma(1 - alpha) : 0;
        for (int i = 0; i < x.length; i++) {
            double im = (x[i] - position) / sigma;
            double re = gamma / sigma;
            if (re * re + im * im >= FAR * FAR) far(re, im, alpha, i, out, scratch.array(9, 8));
            else near(im, weights, digamma, i, out, derivatives);
        }
        return out;
    }

    /** Five numbers a node: s (complex), ln r, and the weight times everything that does not depend on x (complex). */
    private static double[] weights(double real, double alpha, ShapeScratch scratch) {
        double[] weights = scratch.array(8, 5 * NODES);
        double front = STEP / Gamma.gamma(1 - alpha);
        double cos = Math.cos(TURN);
        double sin = Math.sin(TURN);
        for (int j = 0; j < NODES; j++) {
            double t = FIRST + j * STEP;
            double log = t - Math.exp(-t);
            double r = Math.exp(log);
            double re = r * cos;
            double im = -r * sin;
            double exponent = (1 - alpha) * log - 0.5 * (re - im) * (re + im) - real * re;
            double angle = -(1 - alpha) * TURN - re * im - real * im;
            double size = front * (1 + Math.exp(-t)) * Math.exp(exponent);
            weights[5 * j] = re;
            weights[5 * j + 1] = im;
            weights[5 * j + 2] = log;
            weights[5 * j + 3] = size * Math.cos(angle);
            weights[5 * j + 4] = size * Math.sin(angle);
        }
        return weights;
    }

    private static void near(
            double signed, double[] weights, double digamma, int i, double[][] out, boolean derivatives) {
        double x = Math.abs(signed);
        double q0 = 0;
        double q1 = 0;
        double q2 = 0;
        double q3 = 0;
        double q4 = 0;
        double q5 = 0;
        double q6 = 0;
        double q7 = 0;
        for (int j = 0; j < 5 * NODES; j += 5) {
            double sRe = weights[j];
            double sIm = weights[j + 1];
            // exp(-i x s)
            double size = Math.exp(x * sIm);
            double cos = size * Math.cos(x * sRe);
            double sin = -size * Math.sin(x * sRe);
            double re = weights[j + 3] * cos - weights[j + 4] * sin;
            double im = weights[j + 3] * sin + weights[j + 4] * cos;
            q0 += re;
            q1 += im;
            if (!derivatives) continue;
            double firstRe = re * sRe - im * sIm;
            double firstIm = re * sIm + im * sRe;
            q2 -= firstRe;
            q3 -= firstIm;
            q4 += firstRe * sRe - firstIm * sIm;
            q5 += firstRe * sIm + firstIm * sRe;
            q6 -= re * weights[j + 2] + im * TURN;
            q7 -= im * weights[j + 2] - re * TURN;
        }
        double mirror = signed < 0 ? -1 : 1; // Q(conj z) = conj Q(z)
        out[0][i] = q0;
        out[1][i] = mirror * q1;
        if (!derivatives) return;
        out[2][i] = q2;
        out[3][i] = mirror * q3;
        out[4][i] = q4;
        out[5][i] = mirror * q5;
        out[6][i] = q6 + digamma * q0;
        out[7][i] = mirror * (q7 + digamma * q1);
    }

    /** {@code z^(a-1) sum_k (1-a)_2k / (k! (-2 z^2)^k)} and its derivatives term by term. */
    private static void far(double zRe, double zIm, double alpha, int i, double[][] out, double[] sums) {
        double square = zRe * zRe + zIm * zIm;
        double re = zRe / square;
        double im = -zIm / square;
        double sRe = -0.5 * (re - im) * (re + im);
        double sIm = -re * im;
        double termRe = 1;
        double termIm = 0;
        double byAlpha = 0;
        Arrays.fill(sums, 0, 8, 0);
        for (int k = 0; k < TERMS; k++) {
            double power = alpha - 1 - 2 * k;
            sums[0] += termRe;
            sums[1] += termIm;
            sums[2] += power * termRe;
            sums[3] += power * termIm;
            sums[4] += power * (power - 1) * termRe;
            sums[5] += power * (power - 1) * termIm;
            sums[6] += byAlpha * termRe;
            sums[7] += byAlpha * termIm;
            double a = 1 - alpha + 2 * k;
            double factor = a * (a + 1) / (k + 1);
            byAlpha -= 1 / a + 1 / (a + 1);
            double nextRe = factor * (termRe * sRe - termIm * sIm);
            termIm = factor * (termRe * sIm + termIm * sRe);
            termRe = nextRe;
        }
        double log = 0.5 * Math.log(square);
        double angle = Math.atan2(zIm, zRe);
        double size = Math.exp((alpha - 1) * log);
        double frontRe = size * Math.cos((alpha - 1) * angle);
        double frontIm = size * Math.sin((alpha - 1) * angle);
        sums[6] += log * sums[0] - angle * sums[1];
        sums[7] += log * sums[1] + angle * sums[0];
        for (int k = 0; k < 8; k += 2) {
            out[k][i] = frontRe * sums[k] - frontIm * sums[k + 1];
            out[k + 1][i] = frontRe * sums[k + 1] + frontIm * sums[k];
        }
        over(re, im, i, out[2], out[3]);
        over(re, im, i, out[4], out[5]);
        over(re, im, i, out[4], out[5]);
    }

    private static void over(double re, double im, int i, double[] outRe, double[] outIm) {
        double product = outRe[i] * re - outIm[i] * im;
        outIm[i] = outRe[i] * im + outIm[i] * re;
        outRe[i] = product;
    }
}
