package spotline.numerics.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import spotline.core.Work;
import spotline.numerics.random.MonteCarloResult;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Voigt;

/** Poor starts, bootstrap, comparison of models, residual tests. */
class RobustnessTest {
    private static final double[] OVERLAP = {284.6, 3000, 1.1, 285.5, 2500, 1.1, 286.5, 1800, 1.1, 100, 0};

    private static PeakModel overlapped() {
        return PeakModel.on(Spectra.axis(281, 0.1, 91))
                .plus("a", new Gaussian())
                .plus("b", new Gaussian())
                .plus("c", new Gaussian())
                .polynomialBackground(1, 285);
    }

    /** Positions and widths about right, areas wrong by up to a factor of 20. */
    private static FitProblem overlappedProblem(RandomGenerator random) {
        PeakModel model = overlapped();
        double[] start = OVERLAP.clone();
        for (int k = 0; k < 9; k++) {
            double u = 2 * random.nextDouble() - 1;
            if (k % 3 == 0) start[k] += 0.25 * u;
            if (k % 3 == 1) start[k] *= Math.exp(3 * u);
            if (k % 3 == 2) start[k] *= Math.exp(0.25 * u);
        }
        List<Parameter> parameters = new ArrayList<>();
        for (Parameter p : model.parameters(start)) {
            if (p.name().endsWith("position")) parameters.add(p.within(282, 289));
            else if (p.name().endsWith("area")) parameters.add(p.within(0, 1e6));
            else if (p.name().endsWith("fwhm")) parameters.add(p.within(0.3, 4));
            else parameters.add(p);
        }
        return FitProblem.of(
                model, Spectra.counts(model, "overlapped", OVERLAP), Weighting.POISSON_DEVIANCE, parameters);
    }

    @Test
    void solvingForAmplitudesComesRightFromAmplitudesThatAreWrong() {
        double good = fromTheTruth();
        int[] reached = new int[3];
        for (int k = 0; k < 60; k++) {
            FitProblem problem = overlappedProblem(RandomStreams.stream(5, "poor", Integer.toString(k)));
            for (FitSettings.Method method : FitSettings.Method.values()) {
                FitResult fit = Fit.solve(problem, FitSettings.DEFAULT.with(method), Work.UNWATCHED);
                if (fit.deviance() < good * (1 + 1e-5)) reached[method.ordinal()]++;
            }
        }
        assertThat(reached[FitSettings.Method.LEVENBERG_MARQUARDT.ordinal()]).isLessThan(36);
        assertThat(reached[FitSettings.Method.AMPLITUDES_FIRST.ordinal()]).isGreaterThan(52);
        assertThat(reached[FitSettings.Method.VARIABLE_PROJECTION.ordinal()]).isGreaterThan(52);
    }

    @Test
    void manyStartsFindWhatOneMisses() {
        FitProblem problem = overlappedProblem(RandomStreams.stream(5, "poor", "3"));
        FitSettings settings = FitSettings.DEFAULT.with(FitSettings.Method.AMPLITUDES_FIRST);
        MultiStart.Outcome outcome = new MultiStart(30, 9, 0.5).solve(problem, settings, Work.UNWATCHED);
        assertThat(outcome.objectives()).hasSize(30);
        assertThat(outcome.reached()).isGreaterThanOrEqualTo(1);
        assertThat(outcome.best().deviance())
                .isEqualTo(
                        outcome.objectives().stream().mapToDouble(v -> v).min().orElseThrow())
                .isLessThan(fromTheTruth() * (1 + 1e-5));
        assertThat(outcome.objectives().stream()
                        .filter(v -> v > fromTheTruth() * 1.5)
                        .count())
                .isGreaterThan(3);
        MultiStart.Outcome again = new MultiStart(30, 9, 0.5).solve(problem, settings, Work.UNWATCHED);
        assertThat(again.objectives()).isEqualTo(outcome.objectives());
    }

    /** Deviance of the fit that the true parameters lead to. */
    private static double fromTheTruth() {
        PeakModel model = overlapped();
        FitResult fit = Fit.solve(FitProblem.of(
                model,
                Spectra.counts(model, "overlapped", OVERLAP),
                Weighting.POISSON_DEVIANCE,
                model.parameters(OVERLAP)));
        assertThat(fit.reducedChiSquare().orElseThrow()).isBetween(0.6, 1.4);
        return fit.deviance();
    }

    @Test
    void theBootstrapAgreesWithTheCovariance() {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "bootstrap", Spectra.TWO_VOIGTS);
        FitResult fit = Fit.solve(
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START)),
                FitSettings.DEFAULT.with(FitSettings.Scaling.NEVER),
                Work.UNWATCHED);
        MonteCarloResult trials = FitBootstrap.run(
                fit, FitSettings.DEFAULT, 400, 3, List.of("spot 1", "C 1s"), Runnable::run, Work.UNWATCHED);
        assertThat(trials.count(0)).isGreaterThan(390);
        for (String name : List.of("a.position", "a.area", "b.area", "background.0")) {
            double u = fit.standardUncertainty(name).orElseThrow();
            // common practice, no source: 10 % for well-posed fits, which 400 trials know to 3.5 %
            assertThat(trials.standardDeviation(fit.index(name)).orElseThrow()).isCloseTo(u, within(0.12 * u));
            assertThat(trials.median(fit.index(name)).orElseThrow()).isCloseTo(fit.value(name), within(0.2 * u));
        }
        assertThatThrownBy(() -> FitBootstrap.run(
                        Fit.solve(FitProblem.of(
                                model, y, Weighting.UNWEIGHTED, model.parameters(Spectra.TWO_VOIGTS_START))),
                        FitSettings.DEFAULT,
                        10,
                        1,
                        List.of(),
                        Runnable::run,
                        Work.UNWATCHED))
                .isInstanceOf(IllegalArgumentException.class);
    }

    // derived: a component added to nothing is refused by the F test at 5 % in 95 of 100 cases
    @Test
    void aComponentThatIsNotThereIsRefused() {
        PeakModel simple = PeakModel.on(Spectra.axis(280, 0.1, 101)).polynomialBackground(1, 285);
        PeakModel fuller = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .polynomialBackground(1, 285);
        int trials = 300;
        int accepted = 0;
        int byAic = 0;
        for (int k = 0; k < trials; k++) {
            double[] y = Spectra.counts(simple, "noise" + k, 400, 3);
            FitResult without =
                    Fit.solve(FitProblem.of(simple, y, Weighting.POISSON_DEVIANCE, simple.parameters(380, 0)));
            FitResult with = Fit.solve(FitProblem.of(
                    fuller,
                    y,
                    Weighting.POISSON_DEVIANCE,
                    List.of(
                            Parameter.fixed("a.position", 284.8),
                            Parameter.free("a.area", 10),
                            Parameter.fixed("a.fwhm", 1.2),
                            Parameter.free("background.0", 380),
                            Parameter.free("background.1", 0))));
            ModelComparison.FTest test = ModelComparison.nested(without, with);
            assertThat(test.addedParameters()).isEqualTo(1);
            assertThat(test.degreesOfFreedom()).isEqualTo(98);
            if (test.probability() < 0.05) accepted++;
            if (ModelComparison.criteria(with).aicc().orElseThrow()
                    < ModelComparison.criteria(without).aicc().orElseThrow()) byAic++;
        }
        assertThat((double) accepted / trials).isBetween(0.02, 0.085);
        assertThat((double) byAic / trials).isBetween(0.09, 0.22); // derived: P(chi-square_1 > 2.1) = 0.15
    }

    // derived, closed form
    @Test
    void criteriaOfAnUnweightedFit() {
        ModelFunction level = ModelFunction.of(5, 1, (p, out) -> java.util.Arrays.fill(out, p[0]));
        FitResult fit = Fit.solve(FitProblem.of(
                level, new double[] {1, 2, 3, 4, 5}, Weighting.UNWEIGHTED, List.of(Parameter.free("level", 0))));
        // sum of squares 10, two parameters with the variance
        ModelComparison.Criteria criteria = ModelComparison.criteria(fit);
        assertThat(criteria.aic()).isCloseTo(5 * Math.log(2) + 4, within(1e-9));
        assertThat(criteria.aicc().orElseThrow()).isCloseTo(5 * Math.log(2) + 4 + 6, within(1e-9));
        assertThat(criteria.bic()).isCloseTo(5 * Math.log(2) + 2 * Math.log(5), within(1e-9));
    }

    // derived: a sine of period 50 over N = 200 gives 0.016
    @Test
    void vonNeumannRatioOfASine() {
        double[] sine = new double[200];
        double[] alternating = new double[200];
        for (int i = 0; i < 200; i++) {
            sine[i] = Math.sin(2 * Math.PI * i / 50);
            alternating[i] = i % 2 == 0 ? 1 : -1;
        }
        assertThat(ResidualTests.vonNeumannRatio(sine).orElseThrow()).isCloseTo(0.016, within(5e-4));
        assertThat(ResidualTests.vonNeumannRatio(alternating).orElseThrow()).isCloseTo(4 * 199.0 / 200, within(1e-12));
        assertThat(ResidualTests.vonNeumannRatio(new double[3])).isEmpty();
        RunsTest runs = ResidualTests.runs(sine);
        assertThat(runs.runs()).isEqualTo(8);
        assertThat(runs.z().orElseThrow()).isLessThan(-12);
        assertThat(ResidualTests.runs(alternating).z().orElseThrow()).isGreaterThan(13);
        assertThat(ResidualTests.runs(1, 2, 3).z()).isEmpty();
    }

    // derived: 6 positive and 4 negative in 5 runs; 1 + 48/10 expected, variance 48 * 38 / (100 * 9)
    @Test
    void runsOfTenSigns() {
        RunsTest test = ResidualTests.runs(1, 1, -1, -1, 1, 1, 1, -1, -1, 1);
        assertThat(test.runs()).isEqualTo(5);
        assertThat(test.expected()).isCloseTo(5.8, within(1e-12));
        double z = -0.8 / Math.sqrt(48 * 38 / 900.0);
        assertThat(test.z().orElseThrow()).isCloseTo(z, within(1e-12));
        assertThat(test.probability().orElseThrow()).isCloseTo(0.574, within(1e-3));
    }

    @Test
    void theModelSplitsIntoItsParts() {
        double[] x = Spectra.axis(280, 0.1, 51);
        double[] fixed = new double[51];
        double[] step = new double[51];
        for (int i = 0; i < 51; i++) {
            fixed[i] = 5;
            step[i] = i > 25 ? 1 : 0;
        }
        PeakModel model = PeakModel.on(x)
                .plus("a", new Voigt())
                .polynomialBackground(2, 282)
                .plusFitted("step", step)
                .plusFixed(fixed);
        assertThat(model.parameterNames())
                .containsExactly(
                        "a.position",
                        "a.area",
                        "a.gaussianFwhm",
                        "a.lorentzianFwhm",
                        "background.0",
                        "background.1",
                        "background.2",
                        "amplitude.step");
        double[] p = {282.5, 100, 1, 0.2, 30, 2, 0.5, 11};
        double[] sum = Spectra.mean(model, p);
        double[] component = model.component(0, p);
        double[] background = model.background(p);
        double[] together = new double[51];
        double[][] rows = new double[8][51];
        assertThat(model.evaluator().derivatives(p, together, rows)).isTrue();
        for (int i = 0; i < 51; i++) {
            double d = x[i] - 282;
            double level = 30 + 2 * d + 0.5 * d * d + 11 * step[i] + 5;
            assertThat(background[i]).isCloseTo(level, within(1e-11));
            assertThat(sum[i]).isCloseTo(component[i] + level, within(1e-10));
            assertThat(together[i]).isCloseTo(sum[i], within(1e-10));
            assertThat(rows[6][i]).isCloseTo(d * d, within(1e-11));
            assertThat(rows[7][i]).isEqualTo(step[i]);
        }
        assertThat(model.linear(LineShape.AREA)).isTrue();
        assertThat(model.linear(LineShape.POSITION)).isFalse();
        assertThat(model.linear(7)).isTrue();
    }
}
