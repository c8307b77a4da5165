package spotline.demo;

import static org.apache.commons.math3.transform.DftNormalization.STANDARD;
import static org.apache.commons.math3.transform.TransformType.FORWARD;
import static org.apache.commons.math3.transform.TransformType.INVERSE;

import java.util.List;
import org.apache.commons.math3.transform.FastFourierTransformer;

/**
 * Zero-loss peaks with their inelastic tails, on a fine grid of binding energy.
 *
 * <p>With F the zero-loss spectrum of a homogeneous half-space and {@code lambda K} the loss function, the spectrum J
 * that leaves the surface satisfies {@code J(E) = F(E) + integral of lambda K(T) J(E - T) dT} (E: binding energy, which
 * a loss raises), that is the convolution series {@code J = F + (lambda K)*F + (lambda K)*(lambda K)*F + ...}: all
 * orders of multiple scattering. In Fourier space the series is {@code F / (1 - k)}; {@link Depth} gives the factor for
 * emitters below or within a layer. Peaks enter by the transform of the Voigt function, exact at any position:
 * {@code A exp(-i s E0) exp(-sigma^2 s^2 / 2) exp(-gamma |s| / 2)} (sigma: standard deviation of the Gaussian, gamma: full
 * width of the Lorentzian).
 *
 * <p>Shape: {@value #CHANNELS} points {@value #STEP_EV} eV apart from {@value #FIRST_EV} eV; the far end is padding that
 * keeps tails from wrapping round. Units: per eV times the unit of the areas. Errors of the grid: the loss function is
 * summed by the trapezoidal rule (relative 1e-4 of a tail); a Gaussian width below 0.3 eV is not resolved.
 *
 * <p>Source: S. Tougaard, Surf. Interface Anal. 11 (1988) 453 (homogeneous depth distribution and the depth integral);
 * the Voigt transform is the convolution theorem.
 */
public final class LossSpectrum {
    public static final double FIRST_EV = -200;
    public static final double STEP_EV = 0.1;
    static final int CHANNELS = 1 << 16;
    private static final int HALF = CHANNELS / 2;
    private static final double SIGMA_PER_FWHM = 1 / (2 * StrictMath.sqrt(2 * StrictMath.log(2)));
    /** A Gaussian factor below exp(-45) = 3e-20 adds nothing that a double can hold. */
    private static final double NEGLIGIBLE_EXPONENT = 45;

    private final double[] re = new double[HALF + 1];
    private final double[] im = new double[HALF + 1];

    private LossSpectrum() {}

    /** The loss function's transform: frequencies 0 to the highest the grid holds, real then imaginary parts. */
    static Complex[] transformOf(LossFunction loss) {
        double[][] data = new double[2][CHANNELS];
        for (int n = 0; n < HALF; n++) {
            data[0][n] = STEP_EV * loss.at(n * STEP_EV) * (n == 0 ? 0.5 : 1);
        }
        FastFourierTransformer.transformInPlace(data, STANDARD, FORWARD);
        Complex[] transform = new Complex[HALF + 1];
        for (int m = 0; m <= HALF; m++) transform[m] = new Complex(data[0][m], data[1][m]);
        return transform;
    }

    /** @param lossTransform from {@link #transformOf} */
    static LossSpectrum of(List<Emission> emissions, Complex[] lossTransform) {
        LossSpectrum spectrum = new LossSpectrum();
        for (Emission emission : emissions) spectrum.add(emission, lossTransform);
        return spectrum;
    }

    private void add(Emission emission, Complex[] lossTransform) {
        double[] peaksRe = new double[HALF + 1];
        double[] peaksIm = new double[HALF + 1];
        int highest = 0;
        for (ZeroLoss peak : emission.peaks()) {
            highest = Math.max(highest, addPeak(peak, peaksRe, peaksIm));
        }
        for (int m = 0; m <= highest; m++) {
            Complex transfer = emission.depth().transfer(lossTransform[m]);
            re[m] += peaksRe[m] * transfer.re() - peaksIm[m] * transfer.im();
            im[m] += peaksRe[m] * transfer.im() + peaksIm[m] * transfer.re();
        }
    }

    private static int addPeak(ZeroLoss peak, double[] re, double[] im) {
        double sigma = peak.gaussianFwhmEv() * SIGMA_PER_FWHM;
        int m = 0;
        for (; m <= HALF; m++) {
            double s = frequency(m);
            double exponent = 0.5 * sigma * sigma * s * s;
            if (exponent > NEGLIGIBLE_EXPONENT) break;
            Complex shape = peak.shape(s).times(peak.area() * StrictMath.exp(-exponent));
            double phase = s * (peak.bindingEv() - FIRST_EV);
            double cos = StrictMath.cos(phase);
            double sin = StrictMath.sin(phase);
            re[m] += shape.re() * cos + shape.im() * sin;
            im[m] += shape.im() * cos - shape.re() * sin;
        }
        return m - 1;
    }

    private static double frequency(int m) {
        return 2 * Math.PI * m / (CHANNELS * STEP_EV);
    }

    /**
     * The spectrum on the grid, every energy moved by {@code shiftEv}; point n stands at {@code FIRST_EV + n STEP_EV}.
     */
    double[] values(double shiftEv) {
        double[][] data = new double[2][CHANNELS];
        for (int m = 0; m <= HALF; m++) {
            double phase = frequency(m) * shiftEv;
            double cos = StrictMath.cos(phase);
            double sin = StrictMath.sin(phase);
            data[0][m] = (re[m] * cos + im[m] * sin) / STEP_EV;
            data[1][m] = (im[m] * cos - re[m] * sin) / STEP_EV;
            if (m > 0 && m < HALF) {
                data[0][CHANNELS - m] = data[0][m];
                data[1][CHANNELS - m] = -data[1][m];
            }
        }
        data[1][HALF] = 0;
        FastFourierTransformer.transformInPlace(data, STANDARD, INVERSE);
        return data[0];
    }
}
