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

/** One level: the mean of the averages of the two ends. */
public record Constant(int endpointChannels, EndpointPlacement placement) implements Background {
    public Constant {
        requireNonNull(placement, "placement");
        Problems.throwIfAny(check(endpointChannels));
    }

    public static Constant of(int endpointChannels) {
        return new Constant(endpointChannels, EndpointPlacement.INSIDE);
    }

    public static List<Problem> check(int endpointChannels) {
        return Endpoints.check(endpointChannels);
    }

    @Override
    public String describe() {
        return Endpoints.describe("constant", endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        double[] level = new double[energy.length];
        Arrays.fill(level, 1);
        return Optional.of(new FittedFunctions(List.of("level"), new double[][] {level}, counts -> {
            int m = endpointChannels;
            double ends = Endpoints.mean(counts, 0, m) + Endpoints.mean(counts, counts.length - m, m);
            return new double[] {0.5 * ends};
        }));
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(this, scan, window, key, 1, Constant::level);
    }

    private static Outcome<Subtraction> level(Region region) {
        double[] background = new double[region.channels()];
        Arrays.fill(background, 0.5 * (region.low() + region.high()));
        BackgroundAdjoint adjoint = weights -> {
            double half = 0.5 * Arrays.stream(weights).sum();
            double[] gradient = new double[region.counts.length];
            region.addEndpoints(half, half, gradient);
            return gradient;
        };
        return Outcome.done(
                new Subtraction(region, background, adjoint, Subtraction.Convergence.CLOSED_FORM), region.findings);
    }
}
