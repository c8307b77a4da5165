package spotline.analysis.identify;

/**
 * What a survey holds besides its lines, as a random process: a smooth background that may bend, more freely where Auger
 * groups and losses are about, and scatter of every channel. Curves passed through it come out as independent deviations
 * of unit variance, so that least squares on them asks only for what the smooth part cannot make.
 *
 * <p>The smooth part is the integral of a Wiener process, which makes its best estimate a cubic smoothing spline; curves
 * are whitened by the one-step predictions of a Kalman filter.
 *
 * <p>Shape: n channels. Units: counts, eV. Errors: none.
 *
 * <p>Source: C.F. Ansley, R. Kohn, Ann. Statist. 13 (1985) 1286 and G. Wahba, J. R. Statist. Soc. B 40 (1978) 364,
 * smoothing splines as state-space models; from memory.
 */
final class Whitening {
    private final SurveyGrid grid;
    private final double[] bend;
    private final double[] variance;
    private final double[] levelGain;
    private final double[] slopeGain;
    /** One over the standard deviation of the prediction; 0 where a channel does not count. */
    private final double[] scale;

    /**
     * @param bend variance that the slope gains per eV, (counts/eV)^2/eV
     * @param variance of a channel by itself, counts^2; infinite where a channel does not count
     */
    Whitening(SurveyGrid grid, double[] bend, double[] variance) {
        this.grid = grid;
        this.bend = bend;
        this.variance = variance;
        int n = grid.channels;
        levelGain = new double[n];
        slopeGain = new double[n];
        scale = new double[n];
        double largest = 1;
        for (double y : grid.counts) largest = Math.max(largest, y);
        double p00 = 100 * largest * largest;
        double p01 = 0;
        double p11 = largest * largest;
        for (int i = 0; i < n; i++) {
            if (i > 0) {
                double h = grid.energy[i] - grid.energy[i - 1];
                double q = bend[i];
                double a00 = p00 + 2 * h * p01 + h * h * p11 + q * h * h * h / 3;
                double a01 = p01 + h * p11 + q * h * h / 2;
                p11 += q * h;
                p00 = a00;
                p01 = a01;
            }
            if (Double.isInfinite(variance[i])) continue;
            double s = p00 + variance[i];
            double k0 = p00 / s;
            double k1 = p01 / s;
            levelGain[i] = k0;
            slopeGain[i] = k1;
            scale[i] = 1 / Math.sqrt(s);
            p11 -= k1 * p01;
            p01 *= 1 - k0;
            p00 *= 1 - k0;
        }
    }

    double[] deviations() {
        double[] deviations = new double[variance.length];
        for (int i = 0; i < deviations.length; i++) deviations[i] = Math.sqrt(variance[i]);
        return deviations;
    }

    /** A curve as independent deviations of unit variance. */
    double[] apply(double[] curve) {
        double[] white = new double[grid.channels];
        apply(curve, white);
        return white;
    }

    /** The same into an array of zeros, which a caller may keep for the next curve. */
    void apply(double[] curve, double[] white) {
        int n = grid.channels;
        double level = 0;
        double slope = 0;
        boolean quiet = true;
        for (int i = 0; i < n; i++) {
            double value = curve[i];
            if (quiet) {
                if (value == 0) continue;
                quiet = false;
            } else {
                level += slope * (grid.energy[i] - grid.energy[i - 1]);
            }
            double surprise = value - level;
            white[i] = surprise * scale[i];
            if (scale[i] > 0) {
                level += levelGain[i] * surprise;
                slope += slopeGain[i] * surprise;
            }
        }
    }

    /**
     * What a curve on the channels must be multiplied with to give its product, once whitened, with an already white one:
     * the transposed filter. A curve of few channels need not be whitened itself for that.
     */
    double[] transposed(double[] white) {
        double[] pulled = new double[white.length];
        double level = 0;
        double slope = 0;
        for (int i = white.length - 1; i >= 0; i--) {
            double surprise = white[i] * scale[i] + levelGain[i] * level + slopeGain[i] * slope;
            pulled[i] = surprise;
            level -= surprise;
            if (i > 0) slope += (grid.energy[i] - grid.energy[i - 1]) * level;
        }
        return pulled;
    }

    /** Best estimate of the smooth part of a curve. */
    double[] smooth(double[] curve) {
        int n = grid.channels;
        double[][] m = new double[n][2];
        double[][] p = new double[n][3];
        double[][] mAhead = new double[n][2];
        double[][] pAhead = new double[n][3];
        double largest = 1;
        for (double y : grid.counts) largest = Math.max(largest, y);
        double level = 0;
        double slope = 0;
        double p00 = 100 * largest * largest;
        double p01 = 0;
        double p11 = largest * largest;
        for (int i = 0; i < n; i++) {
            if (i > 0) {
                double h = grid.energy[i] - grid.energy[i - 1];
                double q = bend[i];
                level += h * slope;
                double a00 = p00 + 2 * h * p01 + h * h * p11 + q * h * h * h / 3;
                double a01 = p01 + h * p11 + q * h * h / 2;
                p11 += q * h;
                p00 = a00;
                p01 = a01;
            }
            mAhead[i] = new double[] {level, slope};
            pAhead[i] = new double[] {p00, p01, p11};
            if (!Double.isInfinite(variance[i])) {
                double s = p00 + variance[i];
                double k0 = p00 / s;
                double k1 = p01 / s;
                double surprise = curve[i] - level;
                level += k0 * surprise;
                slope += k1 * surprise;
                p11 -= k1 * p01;
                p01 *= 1 - k0;
                p00 *= 1 - k0;
            }
            m[i] = new double[] {level, slope};
            p[i] = new double[] {p00, p01, p11};
        }
        double[] out = new double[n];
        double l = m[n - 1][0];
        double s = m[n - 1][1];
        out[n - 1] = l;
        for (int i = n - 2; i >= 0; i--) {
            double h = grid.energy[i + 1] - grid.energy[i];
            double c00 = p[i][0] + h * p[i][1];
            double c01 = p[i][1];
            double c10 = p[i][1] + h * p[i][2];
            double c11 = p[i][2];
            double[] a = pAhead[i + 1];
            double det = a[0] * a[2] - a[1] * a[1];
            if (!(det > 0)) {
                out[i] = m[i][0];
                l = m[i][0];
                s = m[i][1];
                continue;
            }
            double d0 = (a[2] * (l - mAhead[i + 1][0]) - a[1] * (s - mAhead[i + 1][1])) / det;
            double d1 = (a[0] * (s - mAhead[i + 1][1]) - a[1] * (l - mAhead[i + 1][0])) / det;
            l = m[i][0] + c00 * d0 + c01 * d1;
            s = m[i][1] + c10 * d0 + c11 * d1;
            out[i] = l;
        }
        return out;
    }
}
