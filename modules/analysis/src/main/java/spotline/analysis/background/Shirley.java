package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Iterative Shirley background: it rises, from the low to the high binding-energy end, with the net area passed.
 *
 * <p>Errors: untreated when the counts fall beyond noise towards the high end, when no area is left above the background,
 * and when the area shrinks without end (a step without a peak: after n updates the n+1st part of it is left). Source:
 * D. A. Shirley, Phys. Rev. B 5 (1972) 4709.
 *
 * @param relativeTolerance relative change of the area at which the iteration ends
 */
public record Shirley(int endpointChannels, EndpointPlacement placement, double relativeTolerance, int maxIterations)
        implements Background {
    static final double USUAL_TOLERANCE = 1e-6; // common practice, no source
    static final int USUAL_ITERATIONS = 50; // common practice, no source

    public Shirley {
        requireNonNull(placement, "placement");
        Problems.throwIfAny(check(endpointChannels, relativeTolerance, maxIterations));
    }

    public static Shirley of(int endpointChannels) {
        return new Shirley(endpointChannels, EndpointPlacement.INSIDE, USUAL_TOLERANCE, USUAL_ITERATIONS);
    }

    public static List<Problem> check(int endpointChannels, double relativeTolerance, int maxIterations) {
        List<Problem> problems = Endpoints.check(endpointChannels);
        if (!(relativeTolerance > 0 && relativeTolerance < 1)) {
            problems.add(new Problem("relativeTolerance", String.valueOf(relativeTolerance), "above 0 and below 1"));
        }
        if (maxIterations < 1) problems.add(new Problem("maxIterations", String.valueOf(maxIterations), "1 or more"));
        return problems;
    }

    @Override
    public String describe() {
        return Endpoints.describe("iterative Shirley", endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        return Optional.of(new FittedShirley(energy, this));
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(this, scan, window, key, 3, region -> iterate(region, work));
    }

    private Outcome<Subtraction> iterate(Region region, Work work) {
        double[] noCap = new double[region.channels()];
        Arrays.fill(noCap, Double.POSITIVE_INFINITY);
        return ShirleyTreatment.treat(
                region,
                noCap,
                relativeTolerance,
                maxIterations,
                work,
                kernel -> weights -> ShirleyTreatment.gradient(region, kernel.derivative(weights)));
    }
}
