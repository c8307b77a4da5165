package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.spectra.BindingScan;

/**
 * Repeats the whole treatment, endpoints, background and fit, on counts drawn about the fitted sum.
 *
 * <p>Shape: one scan and one fit of it in; for every component the median, the 95 % interval and the standard deviation of
 * its position, width, area and share. Units: eV, counts eV. Outside the fit's window counts are drawn about the measured
 * ones. Draws are numbered, so that the result does not depend on the executor. Errors: untreated without counts, and
 * where more than half of the draws could not be treated.
 *
 * <p>Source: JCGM 101:2008 (GUM supplement 1).
 */
public final class FitMonteCarlo {
    private final PeakFit fit;

    public FitMonteCarlo(PeakFit fit) {
        this.fit = requireNonNull(fit, "fit");
    }

    /** What the draws say of one quantity. */
    public record Spread(double median, double low95, double high95, double standardDeviation) {
        static Spread of(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double mean = Arrays.stream(sorted).average().orElse(Double.NaN);
            double squares = 0;
            for (double v : sorted) squares += (v - mean) * (v - mean);
            double deviation = sorted.length > 1 ? Math.sqrt(squares / (sorted.length - 1)) : Double.NaN;
            return new Spread(quantile(sorted, 0.5), quantile(sorted, 0.025), quantile(sorted, 0.975), deviation);
        }

        private static double quantile(double[] sorted, double share) {
            double at = share * (sorted.length - 1);
            int below = (int) Math.floor(at);
            int above = Math.min(sorted.length - 1, below + 1);
            return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
        }
    }

    /** @param fraction of the area of all components, doublet partner included */
    public record ComponentSpread(String name, Spread position, Spread fwhm, Spread area, Optional<Spread> fraction) {}

    /**
     * @param draws that could be treated
     * @param untreated draws for which the treatment had no result
     */
    public record Result(int draws, int untreated, List<ComponentSpread> components) {
        public Result {
            components = List.copyOf(components);
        }
    }

    /**
     * @param fitted the fit of the scan that the draws are made about
     * @param seed of the run
     * @param executor what runs the draws; its threads are the caller's
     */
    public Outcome<Result> run(
            BindingScan scan, PeakFitResult fitted, int draws, long seed, Executor executor, Work work) {
        if (draws < 2) throw new IllegalArgumentException("2 draws or more are needed, were " + draws);
        if (!fitted.counted()) {
            return Outcome.untreated(Finding.caution(
                            "monte-carlo-no-counts",
                            "Without counts of known statistics nothing can be drawn about the fitted sum.")
                    .in(scan.label()));
        }
        double[] expected = expected(scan, fitted);
        List<CompletableFuture<Optional<PeakFitResult>>> futures = new ArrayList<>();
        for (int k = 0; k < draws; k++) {
            int draw = k;
            futures.add(CompletableFuture.supplyAsync(() -> draw(scan, expected, fitted, seed, draw, work), executor));
        }
        List<PeakFitResult> treated = new ArrayList<>();
        for (int k = 0; k < draws; k++) {
            get(futures.get(k), futures).ifPresent(treated::add);
            work.progress((k + 1.0) / draws, "Monte-Carlo draws");
        }
        if (2 * treated.size() < draws) {
            return Outcome.untreated(Finding.caution(
                            "monte-carlo-untreated",
                            (draws - treated.size()) + " of " + draws + " draws could not be treated: their spread"
                                    + " says nothing.")
                    .in(scan.label()));
        }
        return Outcome.done(new Result(treated.size(), draws - treated.size(), spreads(fitted, treated)));
    }

    private static Optional<PeakFitResult> get(
            CompletableFuture<Optional<PeakFitResult>> future, List<CompletableFuture<Optional<PeakFitResult>>> all) {
        try {
            return future.join();
        } catch (CompletionException | CancellationException e) {
            all.forEach(f -> f.cancel(true));
            if (e.getCause() instanceof RuntimeException cause) throw cause;
            throw e;
        }
    }

    private static double[] expected(BindingScan scan, PeakFitResult fitted) {
        double[] expected = scan.counts();
        int from = scan.firstAtOrAbove(fitted.energies()[0]);
        double[] sum = fitted.sum();
        System.arraycopy(sum, 0, expected, from, sum.length);
        return expected;
    }

    private Optional<PeakFitResult> draw(
            BindingScan scan, double[] expected, PeakFitResult fitted, long seed, int draw, Work work) {
        work.check();
        double[] counts = PoissonSampler.sample(
                RandomStreams.stream(seed, scan.label(), "peak-fit-monte-carlo", Integer.toString(draw)), expected);
        BindingScan drawn = new BindingScan(
                scan.label(),
                scan.photonEnergyEv(),
                scan.energies(),
                counts,
                true,
                scan.secondsPerChannel(),
                scan.passEnergyEv());
        return fit.fit(drawn, fitted.model(), Work.UNWATCHED).result();
    }

    private static List<ComponentSpread> spreads(PeakFitResult fitted, List<PeakFitResult> treated) {
        List<ComponentSpread> spreads = new ArrayList<>();
        for (FittedComponent c : fitted.components()) {
            double[][] columns = new double[4][treated.size()];
            for (int k = 0; k < treated.size(); k++) {
                PeakFitResult one = treated.get(k);
                FittedComponent drawn = one.component(c.name());
                columns[0][k] = drawn.position().value();
                columns[1][k] = drawn.fwhm().value();
                columns[2][k] = drawn.area().value();
                if (c.partnerOf().isEmpty())
                    columns[3][k] = one.fraction(c.name()).value();
            }
            spreads.add(new ComponentSpread(
                    c.name(),
                    Spread.of(columns[0]),
                    Spread.of(columns[1]),
                    Spread.of(columns[2]),
                    c.partnerOf().isEmpty() ? Optional.of(Spread.of(columns[3])) : Optional.empty()));
        }
        return spreads;
    }
}
