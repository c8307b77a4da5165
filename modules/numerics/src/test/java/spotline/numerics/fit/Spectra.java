package spotline.numerics.fit;

import java.util.random.RandomGenerator;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.Voigt;

/** Invented spectra for the tests: stated parameters, counts with a fixed seed. */
final class Spectra {
    private Spectra() {}

    static double[] axis(double from, double step, int n) {
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = from + i * step;
        return x;
    }

    static double[] mean(ModelFunction model, double... truth) {
        double[] mean = new double[model.pointCount()];
        model.evaluator().values(truth, mean);
        return mean;
    }

    static double[] counts(ModelFunction model, String key, double... truth) {
        RandomGenerator random = RandomStreams.stream(20260501, key);
        return PoissonSampler.sample(random, mean(model, truth));
    }

    static final double[] TWO_VOIGTS = {284.8, 5000, 0.9, 0.25, 286.4, 2000, 1.0, 0.25, 500, 10};
    static final double[] TWO_VOIGTS_START = {284.6, 4000, 1.1, 0.3, 286.6, 1500, 0.8, 0.3, 400, 0};

    static PeakModel twoVoigts() {
        return PeakModel.on(axis(280, 0.05, 241))
                .plus("a", new Voigt())
                .plus("b", new Voigt())
                .polynomialBackground(1, 286);
    }

    /** Twelve lines on 1361 channels, with truth in the order of the model's parameters. */
    static PeakModel survey(double[] truth) {
        PeakModel model = PeakModel.on(axis(0, 1, 1361));
        for (int k = 0; k < 12; k++) {
            model = model.plus("line" + k, new GaussianLorentzianSum());
            double[] p = {60 + 105.3 * k, 20_000 + 9000 * (k % 5), 2.6 + 0.1 * k, 0.3};
            System.arraycopy(p, 0, truth, 4 * k, 4);
        }
        truth[48] = 5000;
        truth[49] = 3;
        return model.polynomialBackground(1, 680);
    }
}
