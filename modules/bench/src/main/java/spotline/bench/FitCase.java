package spotline.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.fit.Tie;
import spotline.numerics.fit.Weighting;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Voigt;

/**
 * One fit, as a problem for the solver and as a plain weighted model for its peers. All spectra are invented: stated
 * parameters, counts drawn with a fixed seed.
 */
record FitCase(FitProblem problem, PeerModel peer) {
    /** Standard deviations from the counts, the same fixed ones for every peer. */
    private static double[] deviations(double[] counts) {
        double[] s = new double[counts.length];
        for (int i = 0; i < s.length; i++) s[i] = Math.sqrt(Math.max(counts[i], 1));
        return s;
    }

    private static double[] axis(double from, double step, int n) {
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = from + i * step;
        return x;
    }

    private static double[] counts(PeakModel model, double[] truth, RandomGenerator random) {
        double[] mean = new double[model.pointCount()];
        model.evaluator().values(truth, mean);
        return PoissonSampler.sample(random, mean);
    }

    /** (a) 241 channels of 0.05 eV, four Voigts on a line, 18 parameters. */
    static FitCase narrowScan() {
        double[] x = axis(281, 0.05, 241);
        double[] truth = {
            284.8, 21000, 0.95, 0.25, 286.4, 9000, 1.00, 0.30, 288.2, 6200, 1.05, 0.30, 290.4, 4300, 1.10, 0.35, 1500,
            20
        };
        double[] start = {
            284.7, 18000, 1.20, 0.30, 286.5, 10000, 1.20, 0.30, 288.1, 5000, 1.20, 0.30, 290.5, 5000, 1.20, 0.30, 1400,
            0
        };
        return voigts(x, 4, truth, start, RandomStreams.stream(1, "narrow-scan"));
    }

    private static FitCase voigts(double[] x, int peaks, double[] truth, double[] start, RandomGenerator random) {
        PeakModel model = PeakModel.on(x);
        for (int k = 0; k < peaks; k++) model = model.plus("peak" + k, new Voigt());
        model = model.polynomialBackground(1, 286);
        double[] y = counts(model, truth, random);
        FitProblem problem = FitProblem.of(model, y, Weighting.given(deviations(y)), positive(model.parameters(start)));
        return new FitCase(problem, new VoigtPeer(x, y, deviations(y), peaks, 286, start));
    }

    private static List<Parameter> positive(List<Parameter> parameters) {
        List<Parameter> bounded = new ArrayList<>();
        for (Parameter p : parameters) {
            bounded.add(p.name().endsWith(".area") ? p.within(0, Double.POSITIVE_INFINITY) : p);
        }
        return bounded;
    }

    /** (b) 251 channels of 0.1 eV, two doublets of fixed splitting and area ratio with widths of their own, 12 parameters. */
    static FitCase doublets() {
        double[] x = axis(450, 0.1, 251);
        double splitting = 5.7;
        double ratio = 0.5;
        // position, area, width of each member, Lorentzian fraction
        double[] truth = {457.2, 5200, 1.3, 1.9, 0.35, 459.0, 14000, 1.1, 2.0, 0.25, 900, 12};
        double[] start = {457.0, 4000, 1.6, 1.6, 0.30, 459.2, 12000, 1.5, 1.5, 0.30, 850, 0};
        PeakModel model = PeakModel.on(x)
                .plus("a1", new GaussianLorentzianSum())
                .plus("a2", new GaussianLorentzianSum())
                .plus("b1", new GaussianLorentzianSum())
                .plus("b2", new GaussianLorentzianSum())
                .polynomialBackground(1, 462);
        double[] y = counts(model, members(truth, splitting, ratio), RandomStreams.stream(1, "doublets"));
        List<Tie> ties = new ArrayList<>();
        for (String name : List.of("a", "b")) {
            ties.add(Tie.offset(name + "2.position", name + "1.position", splitting));
            ties.add(Tie.ratio(name + "2.area", name + "1.area", ratio));
            ties.add(Tie.equal(name + "2.lorentzianFraction", name + "1.lorentzianFraction"));
        }
        FitProblem problem = FitProblem.of(
                model,
                y,
                Weighting.given(deviations(y)),
                positive(model.parameters(members(start, splitting, ratio))),
                ties);
        return new FitCase(problem, new DoubletPeer(x, y, deviations(y), splitting, ratio, 462, start));
    }

    private static double[] members(double[] p, double splitting, double ratio) {
        double[] all = new double[18];
        for (int d = 0; d < 2; d++) {
            for (int m = 0; m < 2; m++) {
                int at = 8 * d + 4 * m;
                all[at] = p[5 * d] + m * splitting;
                all[at + 1] = p[5 * d + 1] * (m == 0 ? 1 : ratio);
                all[at + 2] = p[5 * d + 2 + m];
                all[at + 3] = p[5 * d + 4];
            }
        }
        all[16] = p[10];
        all[17] = p[11];
        return all;
    }

    /** (c) A survey of 1361 channels of 1 eV, twelve lines of fixed Lorentzian fraction, 38 parameters. */
    static FitCase survey() {
        double[] x = axis(0, 1, 1361);
        double fraction = 0.3;
        double[] positions = {74.3, 101.8, 154.0, 198.6, 285.1, 347.4, 399.8, 458.9, 531.6, 688.7, 933.1, 1071.9};
        double[] areas = {9000, 21000, 16000, 12000, 64000, 30000, 11000, 42000, 150000, 38000, 90000, 52000};
        LineShape shape = new GaussianLorentzianSum();
        PeakModel model = PeakModel.on(x);
        double[] truth = new double[50];
        double[] start = new double[50];
        for (int k = 0; k < 12; k++) {
            model = model.plus("line" + k, shape);
            double width = 2.6 + 0.1 * k;
            double[] here = {positions[k], areas[k], width, fraction};
            double[] from = {
                positions[k] + (k % 2 == 0 ? 0.6 : -0.5), areas[k] * (k % 3 == 0 ? 0.7 : 1.25), 3.4, fraction
            };
            System.arraycopy(here, 0, truth, 4 * k, 4);
            System.arraycopy(from, 0, start, 4 * k, 4);
        }
        model = model.polynomialBackground(1, 680);
        truth[48] = 5200;
        truth[49] = 3.1;
        start[48] = 5000;
        double[] y = counts(model, truth, RandomStreams.stream(1, "survey"));
        List<Parameter> parameters = new ArrayList<>();
        for (Parameter p : positive(model.parameters(start))) {
            parameters.add(p.name().endsWith("Fraction") ? p.held(fraction) : p);
        }
        FitProblem problem = FitProblem.of(model, y, Weighting.given(deviations(y)), parameters);
        double[] free = new double[38];
        for (int k = 0; k < 12; k++) System.arraycopy(start, 4 * k, free, 3 * k, 3);
        free[36] = start[48];
        free[37] = start[49];
        return new FitCase(problem, new SurveyPeer(x, y, deviations(y), 12, fraction, 680, free));
    }

    /** (d) Small fits of one or two Voigts on 241 channels, 6 or 10 parameters. */
    static List<FitCase> batch(int count) {
        double[] x = axis(280, 0.05, 241);
        List<FitCase> cases = new ArrayList<>();
        FitProblem one = null;
        FitProblem two = null;
        for (int i = 0; i < count; i++) {
            RandomGenerator random = RandomStreams.stream(1, "batch", Integer.toString(i));
            int peaks = 1 + i % 2;
            double[] truth = new double[4 * peaks + 2];
            double[] start = new double[truth.length];
            for (int k = 0; k < peaks; k++) {
                double[] here = {
                    284.8 + 1.6 * k + 0.2 * (random.nextDouble() - 0.5),
                    (k == 0 ? 9000 : 4000) * (0.5 + random.nextDouble()),
                    0.9 + 0.3 * random.nextDouble(),
                    0.15 + 0.2 * random.nextDouble()
                };
                double[] from = {284.8 + 1.6 * k, k == 0 ? 8000 : 3500, 1.1, 0.3};
                System.arraycopy(here, 0, truth, 4 * k, 4);
                System.arraycopy(from, 0, start, 4 * k, 4);
            }
            truth[4 * peaks] = 600;
            truth[4 * peaks + 1] = 5;
            start[4 * peaks] = 550;
            FitCase made = voigts(x, peaks, truth, start, random);
            // one model and one set of names for all spectra of a kind, as a batch has
            FitProblem shared = peaks == 1 ? one : two;
            if (shared == null) {
                shared = made.problem();
                if (peaks == 1) one = shared;
                else two = shared;
            }
            double[] y = made.problem().dataSets().get(0).ordinates();
            cases.add(new FitCase(shared.withData(y, Weighting.given(deviations(y))), made.peer()));
        }
        return cases;
    }
}
