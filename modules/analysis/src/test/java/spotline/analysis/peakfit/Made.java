package spotline.analysis.peakfit;

import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Voigt;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** Made scans with known truth. */
final class Made {
    static final ReferenceData REFERENCE = ReferenceData.shipped();
    static final double PHOTON_EV = 1486.6;

    private Made() {}

    static double[] grid(double low, double high, double step) {
        int n = (int) Math.round((high - low) / step) + 1;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = low + i * step;
        return x;
    }

    static double[] flat(double[] x, double level) {
        double[] y = new double[x.length];
        java.util.Arrays.fill(y, level);
        return y;
    }

    static double[] peak(double[] x, LineShape shape, double... parameters) {
        double[] y = new double[x.length];
        shape.evaluate(x, parameters, y);
        return y;
    }

    static double[] voigt(double[] x, double position, double area, double gaussian, double lorentzian) {
        return peak(x, new Voigt(), position, area, gaussian, lorentzian);
    }

    static double[] sum(double[]... curves) {
        double[] sum = new double[curves[0].length];
        for (double[] c : curves) for (int i = 0; i < sum.length; i++) sum[i] += c[i];
        return sum;
    }

    static double[] times(double[] y, double factor) {
        double[] scaled = y.clone();
        for (int i = 0; i < y.length; i++) scaled[i] *= factor;
        return scaled;
    }

    /** Area passed, by trapezoids: what a Shirley background is proportional to. */
    static double[] passed(double[] x, double[] y) {
        double[] passed = new double[x.length];
        for (int i = 1; i < x.length; i++) passed[i] = passed[i - 1] + 0.5 * (x[i] - x[i - 1]) * (y[i] + y[i - 1]);
        return passed;
    }

    static BindingScan scan(double[] x, double[] counts) {
        return new BindingScan("made", PHOTON_EV, x, counts, true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static BindingScan noisy(double[] x, double[] expected, RandomGenerator random) {
        return scan(x, PoissonSampler.sample(random, expected));
    }

    static PeakFitResult fit(BindingScan scan, FitModel model) {
        Outcome<PeakFitResult> outcome = new PeakFit(REFERENCE).fit(scan, model, Work.UNWATCHED);
        return outcome.result().orElseThrow(() -> new AssertionError(outcome.allFindings()));
    }

    static double u(spotline.core.Estimate e) {
        return e.standardUncertainty().orElseThrow();
    }
}
