package spotline.bench;

/**
 * The Faddeeva function at one point to about 1e-13: J. A. C. Weideman, SIAM J. Numer. Anal. 31 (1994) 1497, N = 36, below
 * |z| = 8 and the asymptotic series above; all loops unrolled by the compiler, no objects.
 */
final class PointwiseFaddeeva {
    private static final int N = 36;
    private static final double L = Math.sqrt(N / Math.sqrt(2));
    private static final double PER_ROOT_PI = 1 / Math.sqrt(Math.PI);
    private static final double[] A = coefficients();
    private static final double[] SERIES = series();

    private PointwiseFaddeeva() {}

    private static double[] coefficients() {
        int m = 2 * N;
        double[] a = new double[N];
        for (int n = 1; n <= N; n++) {
            double sum = 0;
            for (int j = -m + 1; j < m; j++) {
                double theta = j * Math.PI / m;
                double t = L * Math.tan(0.5 * theta);
                sum += Math.exp(-t * t) * (L * L + t * t) * Math.cos(n * theta);
            }
            a[n - 1] = sum / (2 * m);
        }
        return a;
    }

    private static double[] series() {
        double[] b = new double[14];
        double term = 1;
        for (int k = 0; k < b.length; k++) {
            b[k] = term;
            term *= (2 * k + 1) / 2.0;
        }
        return b;
    }

    static void w(double x, double y, double[] out) {
        if (x * x + y * y >= 64) {
            far(x, y, out);
            return;
        }
        // Z = (L + i z) / (L - i z)
        double dRe = L + y;
        double dIm = -x;
        double square = 1 / (dRe * dRe + dIm * dIm);
        double iRe = dRe * square;
        double iIm = -dIm * square;
        double nRe = L - y;
        double zRe = nRe * iRe - x * iIm;
        double zIm = nRe * iIm + x * iRe;
        double re = A[N - 1];
        double im = 0;
        for (int k = N - 2; k >= 0; k--) {
            double next = re * zRe - im * zIm + A[k];
            im = re * zIm + im * zRe;
            re = next;
        }
        double sRe = iRe * iRe - iIm * iIm;
        double sIm = 2 * iRe * iIm;
        out[0] = 2 * (re * sRe - im * sIm) + PER_ROOT_PI * iRe;
        out[1] = 2 * (re * sIm + im * sRe) + PER_ROOT_PI * iIm;
    }

    private static void far(double x, double y, double[] out) {
        double r = 1 / (x * x + y * y);
        double zRe = x * r;
        double zIm = -y * r;
        double sRe = zRe * zRe - zIm * zIm;
        double sIm = 2 * zRe * zIm;
        double re = SERIES[SERIES.length - 1];
        double im = 0;
        for (int k = SERIES.length - 2; k >= 0; k--) {
            double next = re * sRe - im * sIm + SERIES[k];
            im = re * sIm + im * sRe;
            re = next;
        }
        out[0] = -PER_ROOT_PI * (re * zIm + im * zRe);
        out[1] = PER_ROOT_PI * (re * zRe - im * zIm);
    }
}
