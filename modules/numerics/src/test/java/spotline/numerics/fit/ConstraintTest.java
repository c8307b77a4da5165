package spotline.numerics.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.Voigt;

/** Bounds and ties. */
class ConstraintTest {
    private static PeakModel doublet() {
        return PeakModel.on(Spectra.axis(450, 0.1, 201))
                .plus("a", new Voigt())
                .plus("b", new Voigt())
                .polynomialBackground(1, 460);
    }

    private static final double[] TRUTH = {457.4, 6000, 1.0, 0.3, 463.1, 3000, 1.0, 0.3, 300, 2};

    private static List<Tie> ties() {
        return List.of(
                Tie.offset("b.position", "a.position", 5.7),
                Tie.ratio("b.area", "a.area", 0.5),
                Tie.equal("b.gaussianFwhm", "a.gaussianFwhm"),
                Tie.equal("b.lorentzianFwhm", "a.lorentzianFwhm"));
    }

    @ParameterizedTest
    @EnumSource(FitSettings.Method.class)
    void aTiedFitIsTheFitOfASmallerModel(FitSettings.Method method) {
        PeakModel model = doublet();
        double[] y = Spectra.counts(model, "tied", TRUTH);
        FitResult tied = Fit.solve(
                FitProblem.of(
                        model,
                        y,
                        Weighting.POISSON_DEVIANCE,
                        model.parameters(457.2, 5000, 1.2, 0.2, 460, 1, 1, 1, 250, 0),
                        ties()),
                FitSettings.DEFAULT.with(method).withTolerance(1e-13),
                Work.UNWATCHED);
        ModelFunction small = ModelFunction.of(
                201,
                6,
                (p, out) -> model.evaluator()
                        .values(
                                new double[] {p[0], p[1], p[2], p[3], p[0] + 5.7, 0.5 * p[1], p[2], p[3], p[4], p[5]},
                                out));
        List<Parameter> parameters = new ArrayList<>();
        double[] start = {457.2, 5000, 1.2, 0.2, 250, 0};
        for (int k = 0; k < 6; k++) parameters.add(Parameter.free("p" + k, start[k]));
        FitResult plain = Fit.solve(
                FitProblem.of(small, y, Weighting.POISSON_DEVIANCE, parameters),
                FitSettings.DEFAULT.withTolerance(1e-13),
                Work.UNWATCHED);
        int[] place = {0, 1, 2, 3, 8, 9};
        for (int k = 0; k < 6; k++) {
            double u = plain.standardUncertainty(k).orElseThrow();
            assertThat(tied.value(place[k])).isCloseTo(plain.value(k), within(1e-3 * u));
            assertThat(tied.standardUncertainty(place[k]).orElseThrow()).isCloseTo(u, within(1e-3 * u));
        }
        assertThat(tied.freeParameters()).isEqualTo(6);
        assertThat(tied.value("b.position")).isEqualTo(tied.value("a.position") + 5.7);
        assertThat(tied.value("b.area")).isEqualTo(0.5 * tied.value("a.area"));
        assertThat(tied.state("b.area")).isEqualTo(FitResult.ParameterState.TIED);
    }

    @Test
    void theCovarianceCarriesThroughTies() {
        PeakModel model = doublet();
        double[] y = Spectra.counts(model, "carried", TRUTH);
        FitResult fit = Fit.solve(FitProblem.of(
                model,
                y,
                Weighting.POISSON_DEVIANCE,
                model.parameters(457.2, 5000, 1.2, 0.2, 460, 1, 1, 1, 250, 0),
                ties()));
        double u = fit.standardUncertainty("a.area").orElseThrow();
        assertThat(fit.standardUncertainty("b.area").orElseThrow()).isCloseTo(0.5 * u, within(1e-12 * u));
        assertThat(fit.correlation("a.area", "b.area").orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(fit.correlation("a.position", "b.position").orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(fit.covariance().size()).isEqualTo(10);
        double mixed = fit.covariance().get(1, 2).orElseThrow();
        assertThat(fit.covariance().get(5, 6).orElseThrow()).isCloseTo(0.5 * mixed, within(1e-9 * Math.abs(mixed)));
        // the sum of both areas, by the full covariance, by the function and by estimates with shared sources
        assertThat(fit.uncertaintyOf(p -> p[1] + p[5]).orElseThrow()).isCloseTo(1.5 * u, within(1e-6 * u));
        Estimate sum = fit.estimate("a.area", "s").plus(fit.estimate("b.area", "s"));
        assertThat(sum.standardUncertainty().orElseThrow()).isCloseTo(1.5 * u, within(1e-9 * u));
        Estimate ratio = fit.estimate("b.area", "s").dividedBy(fit.estimate("a.area", "s"));
        assertThat(ratio.standardUncertainty().orElseThrow()).isCloseTo(0, within(1e-9));
        double covariance = fit.covariance().get(0, 2).orElseThrow();
        assertThat(fit.estimate("a.position", "s")
                        .covariance(fit.estimate("a.gaussianFwhm", "s"))
                        .orElseThrow())
                .isCloseTo(covariance, within(1e-9 * Math.abs(covariance) + 1e-18));
    }

    @Test
    void tiesMayBeChainedAndMayRestOnWhatIsFixed() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .plus("b", new Gaussian())
                .plus("c", new Gaussian());
        double[] y = Spectra.mean(model, 284, 800, 1.1, 285.5, 400, 1.1, 287, 200, 1.1);
        List<Parameter> parameters = new ArrayList<>(model.parameters(284.2, 700, 1.1, 0, 0, 0, 0, 0, 0));
        parameters.set(2, Parameter.fixed("a.fwhm", 1.1));
        FitResult fit = Fit.solve(FitProblem.of(
                model,
                y,
                Weighting.POISSON_DEVIANCE,
                parameters,
                List.of(
                        Tie.offset("c.position", "b.position", 1.5),
                        Tie.offset("b.position", "a.position", 1.5),
                        Tie.ratio("c.area", "b.area", 0.5),
                        Tie.ratio("b.area", "a.area", 0.5),
                        Tie.equal("b.fwhm", "a.fwhm"),
                        Tie.equal("c.fwhm", "b.fwhm"))));
        assertThat(fit.freeParameters()).isEqualTo(2);
        assertThat(fit.value("c.position")).isCloseTo(287, within(1e-5));
        assertThat(fit.value("c.area")).isCloseTo(200, within(1e-2));
        assertThat(fit.value("c.fwhm")).isEqualTo(1.1);
        assertThat(fit.standardUncertainty("c.fwhm")).isEmpty();
        assertThat(fit.state("c.fwhm")).isEqualTo(FitResult.ParameterState.FIXED);
    }

    @Test
    void namesAndCirclesAreChecked() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101)).plus("a", new Gaussian());
        double[] y = Spectra.mean(model, 284, 800, 1.1);
        List<Parameter> parameters = model.parameters(284, 700, 1);
        assertThatThrownBy(() -> FitProblem.of(
                        model,
                        y,
                        Weighting.UNWEIGHTED,
                        parameters,
                        List.of(Tie.equal("a.fwhm", "a.area"), Tie.equal("a.area", "a.fwhm"))))
                .hasMessageContaining("circle");
        assertThatThrownBy(() -> FitProblem.of(
                        model, y, Weighting.UNWEIGHTED, parameters, List.of(Tie.equal("a.fwhm", "nobody"))))
                .hasMessageContaining("nobody");
        assertThatThrownBy(() -> FitProblem.of(
                        model,
                        y,
                        Weighting.UNWEIGHTED,
                        parameters,
                        List.of(Tie.equal("a.fwhm", "a.area"), Tie.equal("a.fwhm", "a.position"))))
                .hasMessageContaining("twice");
        assertThatThrownBy(() -> FitProblem.of(model, y, Weighting.UNWEIGHTED, parameters.subList(0, 2)))
                .hasMessageContaining("3 parameters");
        assertThatThrownBy(() -> Parameter.bounded("x", 5, 0, 1)).hasMessageContaining("outside");
        assertThatThrownBy(() -> FitProblem.of(
                        model,
                        y,
                        Weighting.UNWEIGHTED,
                        List.of(
                                parameters.get(0),
                                Parameter.bounded("a.area", 10, 0, 20),
                                Parameter.bounded("a.fwhm", 1, 1, 2)),
                        List.of(Tie.ratio("a.fwhm", "a.area", 0.001))))
                .hasMessageContaining("no value satisfies");
    }

    @Test
    void boundsOfATiedParameterActOnItsSource() {
        PeakModel model = doublet();
        double[] y = Spectra.counts(model, "bound by a tie", TRUTH);
        List<Parameter> parameters = new ArrayList<>(model.parameters(457.2, 5000, 1.2, 0.2, 462.5, 1, 1, 1, 250, 0));
        parameters.set(4, Parameter.bounded("b.position", 462.5, 462, 463));
        FitResult fit = Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters, ties()));
        assertThat(fit.value("b.position")).isCloseTo(463, within(1e-9));
        assertThat(fit.state("a.position")).isEqualTo(FitResult.ParameterState.AT_UPPER_BOUND);
    }

    @ParameterizedTest
    @EnumSource(FitSettings.Method.class)
    void aBoundHoldsAndTheRestIsTheBestThereIs(FitSettings.Method method) {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "held", Spectra.TWO_VOIGTS);
        List<Parameter> parameters = new ArrayList<>(model.parameters(Spectra.TWO_VOIGTS_START));
        parameters.set(4, Parameter.bounded("b.position", 286.6, 286.55, 287));
        parameters.set(5, Parameter.bounded("b.area", 1400, 0, 1500));
        FitSettings settings = FitSettings.DEFAULT.with(method).withTolerance(1e-13);
        FitResult bounded =
                Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters), settings, Work.UNWATCHED);
        assertThat(bounded.converged()).isTrue();
        assertThat(bounded.value("b.position")).isEqualTo(286.55);
        assertThat(bounded.value("b.area")).isEqualTo(1500);
        assertThat(bounded.state("b.position")).isEqualTo(FitResult.ParameterState.AT_LOWER_BOUND);
        assertThat(bounded.state("b.area")).isEqualTo(FitResult.ParameterState.AT_UPPER_BOUND);
        parameters.set(4, Parameter.fixed("b.position", 286.55));
        parameters.set(5, Parameter.fixed("b.area", 1500));
        FitResult held =
                Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters), settings, Work.UNWATCHED);
        assertThat(bounded.deviance()).isCloseTo(held.deviance(), within(1e-8 * held.deviance()));
        for (String name : List.of("a.position", "a.area", "b.gaussianFwhm", "background.0")) {
            double u = held.standardUncertainty(name).orElseThrow();
            assertThat(bounded.value(name)).isCloseTo(held.value(name), within(1e-3 * u));
        }
    }

    @Test
    void aBoundThatIsPassedOnTheWayIsLeftAgain() {
        PeakModel model = Spectra.twoVoigts();
        double[] y = Spectra.counts(model, "left again", Spectra.TWO_VOIGTS);
        List<Parameter> parameters = new ArrayList<>(model.parameters(Spectra.TWO_VOIGTS_START));
        // started on their bounds
        parameters.set(2, Parameter.bounded("a.gaussianFwhm", 2.0, 0.3, 2.0));
        parameters.set(3, Parameter.bounded("a.lorentzianFwhm", 0.0, 0.0, 1.0));
        parameters.set(5, Parameter.bounded("b.area", 0, 0, 1e6));
        FitResult fit = Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters));
        FitResult free = Fit.solve(
                FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, model.parameters(Spectra.TWO_VOIGTS_START)));
        assertThat(fit.converged()).isTrue();
        assertThat(fit.deviance()).isCloseTo(free.deviance(), within(1e-6 * free.deviance()));
    }

    /** At a bound the interval of one standard uncertainty must hold the truth at least as often as away from it. */
    @Test
    void uncertaintiesNearABoundAreHonest() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .polynomialBackground(0, 285);
        FitWorker worker = new FitWorker();
        for (double area : new double[] {0, 10}) {
            int trials = 400;
            int covered = 0;
            int atBound = 0;
            for (int k = 0; k < trials; k++) {
                double[] y = Spectra.counts(model, "bound" + area + "-" + k, 284.8, area, 1.2, 100);
                List<Parameter> parameters = List.of(
                        Parameter.fixed("a.position", 284.8),
                        Parameter.bounded("a.area", 20, 0, 1e6),
                        Parameter.fixed("a.fwhm", 1.2),
                        Parameter.free("background.0", 90));
                FitResult fit = worker.solve(
                        FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters),
                        FitSettings.DEFAULT.with(FitSettings.Scaling.NEVER),
                        Work.UNWATCHED);
                double u = fit.standardUncertainty("a.area").orElseThrow();
                assertThat(u).isBetween(3.0, 6.0);
                if (Math.abs(fit.value("a.area") - area) <= u) covered++;
                if (fit.state("a.area") == FitResult.ParameterState.AT_LOWER_BOUND) atBound++;
            }
            if (area == 0) assertThat((double) atBound / trials).isBetween(0.42, 0.58);
            assertThat((double) covered / trials).isGreaterThan(0.62);
        }
    }

    @Test
    void aProfileIntervalEndsAtTheBound() {
        PeakModel model = PeakModel.on(Spectra.axis(280, 0.1, 101))
                .plus("a", new Gaussian())
                .polynomialBackground(0, 285);
        double[] y = Spectra.mean(model, 284.8, 2, 1.2, 100);
        List<Parameter> parameters = List.of(
                Parameter.fixed("a.position", 284.8),
                Parameter.bounded("a.area", 20, 0, 1e6),
                Parameter.fixed("a.fwhm", 1.2),
                Parameter.free("background.0", 90));
        FitResult fit = Fit.solve(FitProblem.of(model, y, Weighting.POISSON_DEVIANCE, parameters));
        double u = fit.standardUncertainty("a.area").orElseThrow();
        assertThat(u).isGreaterThan(3);
        ProfileInterval interval = ProfileInterval.of(fit, "a.area", FitSettings.DEFAULT, Work.UNWATCHED);
        assertThat(interval.low()).isEmpty();
        assertThat(interval.high().orElseThrow() - 2).isCloseTo(u, within(0.1 * u));
        ProfileInterval level = ProfileInterval.of(fit, "background.0", FitSettings.DEFAULT, Work.UNWATCHED);
        double spread = fit.standardUncertainty("background.0").orElseThrow();
        assertThat(level.high().orElseThrow() - fit.value("background.0")).isCloseTo(spread, within(0.05 * spread));
        assertThatThrownBy(() -> ProfileInterval.of(fit, "a.fwhm", FitSettings.DEFAULT, Work.UNWATCHED))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
