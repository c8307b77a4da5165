package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import spotline.analysis.background.EndpointPlacement;
import spotline.analysis.background.Linear;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class FitMonteCarloTest {
    private static final double[] X = Made.grid(278, 294, 0.1);
    private static final FitModel MODEL = FitModel.of(
            new Window(280, 292),
            BackgroundModel.takenFirst(new Linear(4, EndpointPlacement.OUTSIDE)),
            ComponentModel.of("a", new Voigt())
                    .with("position", Free.within(284, 286))
                    .with("lorentzianFwhm", new Fixed(0.1)));

    private static BindingScan scan() {
        double[] expected = Made.sum(Made.flat(X, 400), Made.voigt(X, 285, 800, 1.1, 0.1));
        return Made.noisy(X, expected, RandomStreams.stream(1, "monte carlo"));
    }

    /** The scatter of 600 draws is known to 3 %. */
    @Test
    void itsSpreadIsThatOfTheCovariance() {
        BindingScan scan = scan();
        PeakFitResult fitted = Made.fit(scan, MODEL);
        FitMonteCarlo.Result result = new FitMonteCarlo(new PeakFit(Made.REFERENCE))
                .run(scan, fitted, 600, 5, Runnable::run, Work.UNWATCHED)
                .result()
                .orElseThrow();
        FitMonteCarlo.ComponentSpread a = result.components().get(0);
        FittedComponent c = fitted.component("a");
        assertThat(result.draws()).isEqualTo(600);
        assertThat(a.area().standardDeviation() / Made.u(c.area())).isCloseTo(1, within(0.1));
        assertThat(a.position().standardDeviation() / Made.u(c.position())).isCloseTo(1, within(0.1));
        assertThat(a.fwhm().standardDeviation() / Made.u(c.fwhm())).isCloseTo(1, within(0.1));
        assertThat((a.area().high95() - a.area().low95()) / (2 * 1.96 * Made.u(c.area())))
                .isCloseTo(1, within(0.15));
        assertThat(a.area().median()).isCloseTo(c.area().value(), within(0.2 * Made.u(c.area())));
        assertThat(a.fraction().orElseThrow().median()).isEqualTo(1);
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        BindingScan scan = scan();
        PeakFitResult fitted = Made.fit(scan, MODEL);
        FitMonteCarlo monteCarlo = new FitMonteCarlo(new PeakFit(Made.REFERENCE));
        ExecutorService three = Executors.newFixedThreadPool(3);
        try {
            assertThat(monteCarlo.run(scan, fitted, 40, 5, three, Work.UNWATCHED))
                    .isEqualTo(monteCarlo.run(scan, fitted, 40, 5, Runnable::run, Work.UNWATCHED));
        } finally {
            three.shutdownNow();
        }
        assertThat(monteCarlo.run(scan, fitted, 40, 6, Runnable::run, Work.UNWATCHED))
                .isNotEqualTo(monteCarlo.run(scan, fitted, 40, 5, Runnable::run, Work.UNWATCHED));
    }

    @Test
    void itCanBeStopped() {
        Work stopped = new Work() {
            @Override
            public void check() {
                throw new CancellationException("no longer wanted");
            }

            @Override
            public void progress(double done, String what) {}
        };
        BindingScan scan = scan();
        PeakFitResult fitted = Made.fit(scan, MODEL);
        assertThatThrownBy(() ->
                        new FitMonteCarlo(new PeakFit(Made.REFERENCE)).run(scan, fitted, 10, 1, Runnable::run, stopped))
                .isInstanceOf(CancellationException.class);
    }

    @Test
    void withoutCountsThereIsNothingToDraw() {
        BindingScan counts = scan();
        BindingScan rate = new BindingScan(
                "made", Made.PHOTON_EV, X, counts.counts(), false, OptionalDouble.empty(), OptionalDouble.empty());
        PeakFitResult fitted = Made.fit(rate, MODEL);
        assertThat(new FitMonteCarlo(new PeakFit(Made.REFERENCE))
                        .run(rate, fitted, 10, 1, Runnable::run, Work.UNWATCHED)
                        .allFindings())
                .singleElement()
                .matches(f -> f.rule().equals("monte-carlo-no-counts"));
    }
}
