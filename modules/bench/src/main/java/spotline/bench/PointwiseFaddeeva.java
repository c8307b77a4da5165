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
        // even and odd coefficients apart, each by b_k = a_k + 2 Re(Z^2) b_(k+1) - |Z^2|^2 b_(k+2): two short chains
        double qRe = zRe * zRe - zIm * zIm;
        double qIm = 2 * zRe * zIm;
        double twice = 2 * qRe;
        double minus = -(qRe * qRe + qIm * qIm);
        double e1 = 0;
        double e2 = 0;
        double o1 = 0;
        double o2 = 0;
        for (int k = N - 2; k > 0; k -= 2) {
            double e = Math.fma(twice, e1, Math.fma(minus, e2, A[k]));
            double o = Math.fma(twice, o1, Math.fma(minus, o2, A[k + 1]));
            e2 = e1;
            e1 = e;
            o2 = o1;
            o1 = o;
        }
        double evenRe = A[0] + qRe * e1 + minus * e2;
        double evenIm = qIm * e1;
        double oddRe = A[1] + qRe * o1 + minus * o2;
        double oddIm = qIm * o1;
        double re = evenRe + zRe * oddRe - zIm * oddIm;
        double im = evenIm + zRe * oddIm + zIm * oddRe;
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
