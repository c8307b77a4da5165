package spotline.bench;

/** Voigts on a line; parameters position, area, Gaussian and Lorentzian full width for each, then constant and slope. */
final class VoigtPeer extends PeerModel {
    private static final double FWHM_PER_SIGMA = Math.sqrt(8 * Math.log(2));
    private final int peaks;
    private final double origin;

    VoigtPeer(double[] x, double[] y, double[] deviations, int peaks, double origin, double[] start) {
        super(x, y, deviations, start);
        this.peaks = peaks;
        this.origin = origin;
    }

    @Override
    void values(double[] p, double[] out) {
        double[] w = new double[2];
        for (int i = 0; i < x.length; i++) {
            double sum = p[4 * peaks] + p[4 * peaks + 1] * (x[i] - origin);
            for (int k = 0; k < 4 * peaks; k += 4) {
                double scale = Math.sqrt(0.5) * FWHM_PER_SIGMA / p[k + 2];
                PointwiseFaddeeva.w((x[i] - p[k]) * scale, 0.5 * p[k + 3] * scale, w);
                sum += p[k + 1] * scale / Math.sqrt(Math.PI) * w[0];
            }
            out[i] = sum * weight[i];
        }
    }

    @Override
    void evaluate(double[] p, double[] out, double[][] jacobian) {
        double[] w = new double[2];
        for (int i = 0; i < x.length; i++) {
            double[] row = jacobian[i];
            double root = weight[i];
            double sum = p[4 * peaks] + p[4 * peaks + 1] * (x[i] - origin);
            for (int k = 0; k < 4 * peaks; k += 4) {
                double scale = Math.sqrt(0.5) * FWHM_PER_SIGMA / p[k + 2];
                double unit = scale / Math.sqrt(Math.PI);
                double zx = (x[i] - p[k]) * scale;
                double zy = 0.5 * p[k + 3] * scale;
                PointwiseFaddeeva.w(zx, zy, w);
                double slopeRe = -2 * (zx * w[0] - zy * w[1]);
                double slopeIm = -2 * (zx * w[1] + zy * w[0]) + 2 / Math.sqrt(Math.PI);
                double size = p[k + 1] * unit * root;
                row[k] = -size * scale * slopeRe;
                row[k + 1] = unit * w[0] * root;
                row[k + 2] = -size / p[k + 2] * (w[0] + zx * slopeRe - zy * slopeIm);
                row[k + 3] = -0.5 * size * scale * slopeIm;
                sum += p[k + 1] * unit * w[0];
            }
            row[4 * peaks] = root;
            row[4 * peaks + 1] = (x[i] - origin) * root;
            out[i] = sum * root;
        }
    }
}
