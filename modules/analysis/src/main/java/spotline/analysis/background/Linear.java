package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * A straight line through the averages of the two ends, each average standing at the mean energy of its channels, so
 * that averaging more channels never tilts it.
 *
 * <p>On a step of height d it is low by d times the distance of the peak from the window's centre. Source: closed form.
 */
public record Linear(int endpointChannels, EndpointPlacement placement) implements Background {
    public Linear {
        requireNonNull(placement, "placement");
        Problems.throwIfAny(check(endpointChannels));
    }

    public static Linear of(int endpointChannels) {
        return new Linear(endpointChannels, EndpointPlacement.INSIDE);
    }

    public static List<Problem> check(int endpointChannels) {
        return Endpoints.check(endpointChannels);
    }

    @Override
    public String describe() {
        return Endpoints.describe("linear", endpointChannels, placement);
    }

    @Override
    public Optional<FittedBackground> fitted(double[] energy) {
        int m = endpointChannels;
        double lowEnergy = Endpoints.mean(energy, 0, m);
        double span = Endpoints.mean(energy, energy.length - m, m) - lowEnergy;
        double[][] functions = new double[2][energy.length];
        for (int i = 0; i < energy.length; i++) {
            functions[1][i] = (energy[i] - lowEnergy) / span;
            functions[0][i] = 1 - functions[1][i];
        }
        return Optional.of(new FittedFunctions(List.of("low", "high"), functions, counts ->
                new double[] {Endpoints.mean(counts, 0, m), Endpoints.mean(counts, counts.length - m, m)}));
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(this, scan, window, key, 1, Linear::through);
    }

    private static Outcome<Subtraction> through(Region region) {
        double lowEnergy = region.lowEnergy();
        double span = region.highEnergy() - lowEnergy;
        double low = region.low();
        double high = region.high();
        double[] share = region.windowEnergies();
        double[] background = new double[share.length];
        for (int i = 0; i < share.length; i++) {
            share[i] = (share[i] - lowEnergy) / span;
            background[i] = low + share[i] * (high - low);
        }
        BackgroundAdjoint adjoint = weights -> {
            double all = 0;
            double shared = 0;
            for (int i = 0; i < weights.length; i++) {
                all += weights[i];
                shared += weights[i] * share[i];
            }
            double[] gradient = new double[region.counts.length];
            region.addEndpoints(all - shared, shared, gradient);
            return gradient;
        };
        return Outcome.done(
                new Subtraction(region, background, adjoint, Subtraction.Convergence.CLOSED_FORM), region.findings);
    }
}
