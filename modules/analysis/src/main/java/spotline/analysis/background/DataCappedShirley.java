package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Iterative Shirley background that is kept at or below the running mean of the data. Never a default: its areas cannot
 * be compared with those of the plain one.
 *
 * <p>The running mean is over as many channels as an endpoint average (one more when that is even), fewer at the
 * window's ends. Sensitivities hold as long as the same channels stay limited. Source: common practice, no source.
 */
public record DataCappedShirley(
        int endpointChannels, EndpointPlacement placement, double relativeTolerance, int maxIterations)
        implements Background {
    /** Share of limited channels above which a finding says so; common practice, no source. */
    private static final double LIMITED_SHARE = 0.05;

    public DataCappedShirley {
        requireNonNull(placement, "placement");
        Problems.throwIfAny(check(endpointChannels, relativeTolerance, maxIterations));
    }

    public static DataCappedShirley of(int endpointChannels) {
        return new DataCappedShirley(
                endpointChannels, EndpointPlacement.INSIDE, Shirley.USUAL_TOLERANCE, Shirley.USUAL_ITERATIONS);
    }

    public static List<Problem> check(int endpointChannels, double relativeTolerance, int maxIterations) {
        return Shirley.check(endpointChannels, relativeTolerance, maxIterations);
    }

    @Override
    public String describe() {
        return Endpoints.describe("data-capped Shirley", endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        return Optional.empty();
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(this, scan, window, key, 3, region -> iterate(region, work));
    }

    private Outcome<Subtraction> iterate(Region region, Work work) {
        int reach = endpointChannels / 2;
        double[] cap = runningMean(region.windowCounts(), reach);
        Outcome<Subtraction> outcome =
                ShirleyTreatment.treat(region, cap, relativeTolerance, maxIterations, work, kernel -> weights -> {
                    ShirleyKernel.Derivative derivative = kernel.derivative(weights);
                    double[] gradient = ShirleyTreatment.gradient(region, derivative);
                    addRunningMean(derivative.caps(), reach, gradient, region.from);
                    return gradient;
                });
        if (!(outcome instanceof Outcome.Done<Subtraction> done)) return outcome;
        List<Finding> findings = new ArrayList<>(done.findings());
        findings.add(comparability(region, done.value().limitedChannels()));
        return Outcome.done(done.value(), findings);
    }

    private static Finding comparability(Region region, int limited) {
        double share = (double) limited / region.channels();
        String message = "The data-capped Shirley background was held down in " + limited + " of " + region.channels()
                + " channels (" + Decimal.fixed(100 * share, 1) + " %, limit "
                + Decimal.fixed(100 * LIMITED_SHARE, 0)
                + " %): its area is not comparable with one above a plain Shirley background.";
        Finding finding = share > LIMITED_SHARE
                ? Finding.caution("shirley-capped", message)
                : Finding.note("shirley-capped", message);
        return finding.in(region.scan.label());
    }

    private static double[] runningMean(double[] counts, int reach) {
        double[] means = new double[counts.length];
        for (int i = 0; i < counts.length; i++) {
            int start = Math.max(0, i - reach);
            int end = Math.min(counts.length, i + reach + 1);
            double sum = 0;
            for (int j = start; j < end; j++) sum += counts[j];
            means[i] = sum / (end - start);
        }
        return means;
    }

    /** Adds the derivative of the running means to a gradient whose window begins at {@code offset}. */
    private static void addRunningMean(double[] slopes, int reach, double[] gradient, int offset) {
        for (int i = 0; i < slopes.length; i++) {
            int start = Math.max(0, i - reach);
            int end = Math.min(slopes.length, i + reach + 1);
            for (int j = start; j < end; j++) gradient[offset + j] += slopes[i] / (end - start);
        }
    }
}
