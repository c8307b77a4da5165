package spotline.numerics.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.Voigt;

class FitTest {
    private static ModelFunction constant(int n) {
        return ModelFunction.of(
                n, 1, (p, out) -> Arrays.fill(out, p[0]), (p, rows) -> Arrays.fill(rows[0], 1), java.util.Set.of(0));
    }

    private static double fitConstant(double[] y, Weighting weighting) {
        return Fit.solve(FitProblem.of(constant(y.length), y, weighting, List.of(Parameter.free("level", 20))))
                .value("level");
    }

    // derived: Poisson data of mean 10 fitted by a constant; 1/observed 8.85, model variance 10.49, likelihood 10.00
    @Test
    void onlyTheLikelihoodOfCountsIsUnbiased() {
        int n = 200_000;
        double[] y = PoissonSampler.sample(RandomStreams.stream(1, "constant"), Spectra.mean(constant(n), 10));
        double mean = Arrays.stream(y).average().orElseThrow();
        assertThat(fitConstant(y, Weighting.POISSON_DEVIANCE)).isCloseTo(mean, within(2e-5));
        assertThat(mean).isCloseTo(10.00, within(0.03));
        assertThat(fitConstant(y, Weighting.MODEL_VARIANCE)).isCloseTo(10.49, within(0.03));
        double[] observed = new double[n];
        for (int i = 0; i < n; i++) observed[i] = Math.sqrt(Math.max(y[i], 1));
        assertThat(fitConstant(y, Weighting.given(observed))).isCloseTo(8.85, within(0.04));
    }

    // derived, closed form: 10000 counts in a Gaussian of 1.2 eV without background
    @Test
    void positionAndAreaOfAGaussianAreAsSureAsCountingAllows() {
        PeakModel model = PeakModel.on(Spectra.axis(278, 0.1, 141)).plus("a", new Gaussian());
        double[] truth = {284.8, 1000, 1.2};
        // noiseless data: the covariance of the expectation itself; 1000 counts eV / 0.1 eV = 10000 counts
        FitResult fit = Fit.solve(FitProblem.of(
                model, Spectra.mean(model, truth), Weighting.POISSON_DEVIANCE, model.parameters(284.7, 900, 1.3)));
        assertThat(fit.standardUncertainty("a.position").orElseThrow()).isCloseTo(0.0051, within(5e-5));
        assertThat(fit.standardUncertainty("a.area").orElseThrow() / 0.1).isCloseTo(100, within(0.5));
        assertThat(fit.value("a.position")).isCloseTo(284.8, within(1e-7));
    }

    // derived: chi-square a degree of freedom 1 +- 0.10, von Neumann ratio 2 +- 0.14 for N = 200 and 6 parameters
    @Test
    void theStatisticsOfAPerfectModelAreAsExpected() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.05, 200))
                .plus("a", new Voigt())
                .polynomialBackground(1, 285);
        double[] truth = {284.8, 3000, 1.0, 0.3, 400, 8};
        int trials = 300;
        double[] reduced = new double[trials];
        double[] ratio = new double[trials];
        double runs = 0;
        FitWorker worker = new FitWorker();
        for (int k = 0; k < trials; k++) {
            double[] y = Spectra.counts(model, "statistics" + k, truth);
            FitResult fit = worker.solve(
                    FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(truth)),
                    FitSettings.DEFAULT,
                    Work.UNWATCHED);
            reduced[k] = fit.reducedChiSquare().orElseThrow();
            ratio[k] = fit.vonNeumannRatio().orElseThrow();
            runs += fit.runsTest().z().orElseThrow() / trials;
            assertThat(fit.degreesOfFreedom()).isEqualTo(194);
        }
        assertThat(mean(reduced)).isCloseTo(1.00, within(0.02));
        assertThat(deviation(reduced)).isCloseTo(0.10, within(0.02));
        assertThat(mean(ratio)).isCloseTo(2.03, within(0.04)); // 2 and a little: the fit takes slow residuals away
        assertThat(deviation(ratio)).isCloseTo(0.14, within(0.03));
        assertThat(runs).isCloseTo(0.2, within(0.3));
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double deviation(double[] values) {
        double mean = mean(values);
        return Math.sqrt(Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (values.length - 1));
    }

    @Test
    void uncertaintiesAreThoseThatRepetitionShows() {
        PeakModel model = Spectra.twoVoigts();
        int trials = 400;
        double[][] pulls = new double[model.parameterCount()][trials];
        FitWorker worker = new FitWorker();
        for (int k = 0; k < trials; k++) {
            double[] y = Spectra.counts(model, "pulls" + k, Spectra.TWO_VOIGTS);
            FitResult fit = worker.solve(
                    FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START)),
                    FitSettings.DEFAULT.with(FitSettings.Scaling.NEVER),
                    Work.UNWATCHED);
            assertThat(fit.converged()).isTrue();
            for (int p = 0; p < pulls.length; p++) {
                pulls[p][k] = (fit.value(p) - Spectra.TWO_VOIGTS[p])
                        / fit.standardUncertainty(p).orElseThrow();
            }
        }
        for (double[] pull : pulls) {
            assertThat(deviation(pull)).isBetween(0.88, 1.12);
            assertThat(mean(pull)).isBetween(-0.3, 0.3);
        }
    }

    @Test
    void ratesAreFittedAsTheCountsTheyComeFrom() {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "rates", Spectra.TWO_VOIGTS);
        double perUnit = 0.4; // counts a unit of rate
        double[] rates = y.clone();
        double[] scaled = Spectra.TWO_VOIGTS_START.clone();
        for (int i = 0; i < rates.length; i++) rates[i] /= perUnit;
        for (int k : new int[] {1, 5, 8, 9}) scaled[k] /= perUnit;
        FitResult counts = Fit.solve(
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START)));
        FitResult rate = Fit.solve(FitProblem.of(model, rates, Weighting.poisson(perUnit), model.parameters(scaled)));
        assertThat(rate.deviance()).isCloseTo(counts.deviance(), within(1e-6 * counts.deviance()));
        for (String name : List.of("a.area", "background.0")) {
            assertThat(rate.value(name) * perUnit).isCloseTo(counts.value(name), within(1e-4 * counts.value(name)));
            double u = counts.standardUncertainty(name).orElseThrow();
            assertThat(rate.standardUncertainty(name).orElseThrow() * perUnit).isCloseTo(u, within(1e-4 * u));
        }
    }

    @Test
    void aWorkerForgetsWhatItSolvedBefore() {
        PeakModel model = Spectra.twoVoigts();
        FitProblem first = FitProblem.of(
                model,
                Spectra.counts(model, "first", Spectra.TWO_VOIGTS),
                Weighting.POISSON_DEVIANCE,
                model.parameters(Spectra.TWO_VOIGTS_START));
        FitProblem second = first.withOrdinates(Spectra.counts(model, "second", Spectra.TWO_VOIGTS));
        FitResult fresh = Fit.solve(second);
        FitWorker worker = new FitWorker();
        worker.solve(first, FitSettings.DEFAULT, Work.UNWATCHED);
        FitResult used = worker.solve(second, FitSettings.DEFAULT, Work.UNWATCHED);
        assertThat(used.values()).containsExactly(fresh.values());
        assertThat(used.fitted()).containsExactly(fresh.fitted());
        assertThat(used.standardUncertainty("a.position")).isEqualTo(fresh.standardUncertainty("a.position"));
    }

    @Test
    void approximatingTheNormalMatrixOfASurveyChangesNothingOfTheResult() {
        double[] truth = new double[50];
        PeakModel model = Spectra.survey(truth);
        double[] start = truth.clone();
        for (int k = 0; k < 12; k++) {
            start[4 * k] += k % 2 == 0 ? 0.7 : -0.5;
            start[4 * k + 1] *= 0.8;
            start[4 * k + 2] = 3.3;
        }
        double[] y = Spectra.counts(model, "survey", truth);
        FitProblem problem = FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(start));
        FitResult approximated = Fit.solve(problem, FitSettings.DEFAULT.withTolerance(1e-12), Work.UNWATCHED);
        // variable projection always takes all products
        FitResult exact = Fit.solve(
                problem,
                FitSettings.DEFAULT.withTolerance(1e-12).with(FitSettings.Method.VARIABLE_PROJECTION),
                Work.UNWATCHED);
        assertThat(approximated.converged()).isTrue();
        assertThat(approximated.deviance()).isCloseTo(exact.deviance(), within(1e-9 * exact.deviance()));
        for (int i = 0; i < truth.length; i++) {
            double u = exact.standardUncertainty(i).orElseThrow();
            assertThat(approximated.value(i)).isCloseTo(exact.value(i), within(1e-4 * u));
            assertThat(approximated.standardUncertainty(i).orElseThrow()).isCloseTo(u, within(1e-5 * u));
        }
    }

    @ParameterizedTest
    @EnumSource(FitSettings.Method.class)
    void dataSetsShareParameters(FitSettings.Method method) {
        PeakModel model =
                PeakModel.on(Spectra.axis(280, 0.1, 101)).plus("a", new Voigt()).polynomialBackground(0, 285);
        double[] one = {284.8, 900, 1.1, 0.3, 100};
        double[] two = {285.3, 4000, 1.1, 0.3, 250};
        List<Parameter> parameters = List.of(
                Parameter.free("position", 284.5),
                Parameter.bounded("area 1", 500, 0, 1e9),
                Parameter.bounded("gaussian", 1.4, 0, 5),
                Parameter.bounded("lorentzian", 0.2, 0, 5),
                Parameter.free("level 1", 50),
                Parameter.free("shift", 0.3),
                Parameter.free("position 2", 0),
                Parameter.bounded("area 2", 3000, 0, 1e9),
                Parameter.free("level 2", 200));
        List<DataSet> sets = List.of(
                new DataSet(
                        model,
                        Spectra.counts(model, "shared 1", one),
                        Weighting.POISSON_DEVIANCE,
                        List.of("position", "area 1", "gaussian", "lorentzian", "level 1")),
                new DataSet(
                        model,
                        Spectra.counts(model, "shared 2", two),
                        Weighting.POISSON_DEVIANCE,
                        List.of("position 2", "area 2", "gaussian", "lorentzian", "level 2")));
        FitResult fit = Fit.solve(
                new FitProblem(sets, parameters, List.of(Tie.freeOffset("position 2", "position", "shift"))),
                FitSettings.DEFAULT.with(method),
                Work.UNWATCHED);
        assertThat(fit.converged()).isTrue();
        assertThat(fit.degreesOfFreedom()).isEqualTo(202 - 8);
        double[] expected = {284.8, 900, 1.1, 0.3, 100, 0.5, 285.3, 4000, 250};
        for (int i = 0; i < expected.length; i++) {
            assertThat(fit.value(i))
                    .as(fit.names().get(i))
                    .isCloseTo(
                            expected[i], within(4 * fit.standardUncertainty(i).orElseThrow()));
        }
        // the second set has the counts: it must have helped the shared width
        FitResult alone = Fit.solve(new FitProblem(List.of(sets.get(0)), parameters.subList(0, 5), List.of()));
        assertThat(fit.standardUncertainty("gaussian").orElseThrow())
                .isLessThan(0.6 * alone.standardUncertainty("gaussian").orElseThrow());
        // position 2 = position + shift, and its own data fix it alone
        Estimate position = fit.estimate("position", "f");
        Estimate sum = position.plus(fit.estimate("shift", "f"));
        assertThat(sum.standardUncertainty().orElseThrow())
                .isCloseTo(fit.standardUncertainty("position 2").orElseThrow(), within(1e-9));
    }

    @Test
    void differencesDoForDerivatives() {
        PeakModel model = Spectra.twoVoigts();
        ModelFunction without = ModelFunction.of(
                model.pointCount(),
                model.parameterCount(),
                (p, out) -> model.evaluator().values(p, out));
        double[] y = Spectra.counts(model, "differences", Spectra.TWO_VOIGTS);
        FitProblem problem =
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START));
        FitResult analytic = Fit.solve(problem);
        FitResult numeric = Fit.solve(FitProblem.of(without, y, Weighting.POISSON_DEVIANCE, problem.parameters()));
        for (int i = 0; i < model.parameterCount(); i++) {
            double u = analytic.standardUncertainty(i).orElseThrow();
            assertThat(numeric.value(i)).isCloseTo(analytic.value(i), within(2e-3 * u));
            assertThat(numeric.standardUncertainty(i).orElseThrow()).isCloseTo(u, within(1e-3 * u));
        }
    }

    @Test
    void fewCountsAndEmptyChannelsAreFittedToo() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .polynomialBackground(0, 285);
        double[] truth = {284.8, 6, 1.2, 0.15};
        double[] y = Spectra.counts(model, "few", truth);
        assertThat(Arrays.stream(y).filter(v -> v == 0).count()).isGreaterThan(60);
        List<Parameter> parameters = new ArrayList<>(model.parameters(284.4, 3, 1.5, 1));
        FitResult fit = Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters));
        assertThat(fit.converged()).isTrue();
        // the likelihood keeps the sum of counts
        assertThat(Arrays.stream(fit.fitted()).sum()).isCloseTo(Arrays.stream(y).sum(), within(1e-3));
        for (int i = 0; i < 4; i++) {
            assertThat(fit.value(i))
                    .isCloseTo(truth[i], within(4 * fit.standardUncertainty(i).orElseThrow()));
        }
    }

    @Test
    void whatTheDataDoNotDetermineIsUnknown() {
        // the position of a component without area
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .plus("none", new Gaussian())
                .polynomialBackground(0, 285);
        double[] y = Spectra.counts(model, "nothing there", 284.8, 800, 1.2, 283, 0, 1.2, 50);
        List<Parameter> parameters = new ArrayList<>(model.parameters(284.7, 700, 1.3, 283, 0, 1.2, 40));
        parameters.set(4, Parameter.fixed("none.area", 0));
        FitResult fit = Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters));
        assertThat(fit.standardUncertainty("none.position")).isEmpty();
        assertThat(fit.standardUncertainty("none.fwhm")).isEmpty();
        assertThat(fit.standardUncertainty("none.area")).isEmpty();
        assertThat(fit.correlation("none.position", "a.position")).isEmpty();
        assertThat(fit.estimate("none.position", "f").standardUncertainty()).isEmpty();
        assertThat(fit.standardUncertainty("a.position").orElseThrow()).isGreaterThan(0);
        assertThat(fit.uncertaintyOf(p -> p[0] + p[3])).isEmpty();
        assertThat(fit.uncertaintyOf(p -> p[0]).orElseThrow())
                .isCloseTo(fit.standardUncertainty("a.position").orElseThrow(), within(1e-9));
    }

    @Test
    void withoutDegreesOfFreedomAnUnweightedFitKnowsNoUncertainty() {
        ModelFunction line = ModelFunction.of(2, 2, (p, out) -> {
            out[0] = p[0];
            out[1] = p[0] + p[1];
        });
        FitResult fit = Fit.solve(FitProblem.of(
                line,
                new double[] {3, 5},
                Weighting.UNWEIGHTED,
                List.of(Parameter.free("level", 0), Parameter.free("slope", 0))));
        assertThat(fit.value("slope")).isCloseTo(2, within(1e-9));
        assertThat(fit.standardUncertainty("slope")).isEmpty();
        assertThat(fit.reducedChiSquare()).isEmpty();
    }

    @Test
    void twoParametersThatOnlyActTogetherAreBothUnknown() {
        ModelFunction sum = ModelFunction.of(20, 3, (p, out) -> {
            for (int i = 0; i < 20; i++) out[i] = p[0] + p[1] + p[2] * i;
        });
        double[] y = Spectra.mean(sum, 3, 4, 0.5);
        FitResult fit = Fit.solve(FitProblem.of(
                sum,
                y,
                Weighting.given(Spectra.axis(1, 0, 20)),
                List.of(Parameter.free("a", 1), Parameter.free("b", 1), Parameter.free("slope", 0))));
        assertThat(fit.value("a") + fit.value("b")).isCloseTo(7, within(1e-6));
        assertThat(fit.standardUncertainty("a")).isEmpty();
        assertThat(fit.standardUncertainty("b")).isEmpty();
        // derived: 1 / sqrt(sum (i - 9.5)^2) = 1 / sqrt(665)
        assertThat(fit.standardUncertainty("slope").orElseThrow()).isCloseTo(1 / Math.sqrt(665), within(1e-6));
    }

    @Test
    void aModelThatIsNotFiniteAtTheStartSaysSo() {
        ModelFunction log = ModelFunction.of(4, 1, (p, out) -> Arrays.fill(out, Math.log(p[0])));
        FitResult fit = Fit.solve(
                FitProblem.of(log, new double[] {1, 1, 1, 1}, Weighting.UNWEIGHTED, List.of(Parameter.free("p", -1))));
        assertThat(fit.stopReason()).isEqualTo(StopReason.NOT_FINITE);
        assertThat(fit.converged()).isFalse();
        assertThat(fit.standardUncertainty("p")).isEmpty();
    }

    @Test
    void nothingFreeIsNoFailure() {
        FitResult fit = Fit.solve(FitProblem.of(
                constant(3),
                new double[] {9, 10, 11},
                Weighting.POISSON_DEVIANCE,
                List.of(Parameter.fixed("level", 10))));
        assertThat(fit.stopReason()).isEqualTo(StopReason.NOTHING_FREE);
        assertThat(fit.chiSquare()).isCloseTo(0.2, within(1e-12)); // derived: (1 + 0 + 1) / 10
        assertThat(fit.state("level")).isEqualTo(FitResult.ParameterState.FIXED);
    }

    @Test
    void theIterationLimitIsKept() {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "limit", Spectra.TWO_VOIGTS);
        FitResult fit = Fit.solve(
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START)),
                FitSettings.DEFAULT.withMaxIterations(2),
                Work.UNWATCHED);
        assertThat(fit.stopReason()).isEqualTo(StopReason.ITERATION_LIMIT);
        assertThat(fit.iterations()).isEqualTo(2);
        assertThat(fit.converged()).isFalse();
    }

    @Test
    void cancellingStopsAFit() {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "cancel", Spectra.TWO_VOIGTS);
        FitProblem problem =
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START));
        int[] checks = {0};
        Work work = new Work() {
            @Override
            public void check() {
                if (++checks[0] == 3) throw new CancellationException();
            }

            @Override
            public void progress(double done, String what) {
                assertThat(done).isBetween(0.0, 1.0);
            }
        };
        assertThatThrownBy(() -> Fit.solve(problem, FitSettings.DEFAULT, work))
                .isInstanceOf(CancellationException.class);
    }
}
