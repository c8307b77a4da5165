package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * A polynomial of degree 2 to 5 through the endpoint channels by least squares, each channel with the same weight
 * (weights from the counts themselves would pull it down).
 *
 * <p>Between the ends it is extrapolated: the more its degree, the more the endpoints' noise is in the area.
 */
public record Polynomial(int degree, int endpointChannels, EndpointPlacement placement) implements Background {
    private static final int HIGHEST = 5;

    public Polynomial {
        requireNonNull(placement, "placement");
        Problems.throwIfAny(check(degree, endpointChannels));
    }

    public static Polynomial of(int degree, int endpointChannels) {
        return new Polynomial(degree, endpointChannels, EndpointPlacement.INSIDE);
    }

    public static List<Problem> check(int degree, int endpointChannels) {
        List<Problem> problems = Endpoints.check(endpointChannels);
        if (degree < 2 || degree > HIGHEST) {
            problems.add(new Problem("degree", String.valueOf(degree), "2 to " + HIGHEST));
        } else if (endpointChannels >= 1 && 2 * endpointChannels < degree + 1) {
            problems.add(new Problem(
                    "endpointChannels",
                    endpointChannels + " channels at each end",
                    (degree + 2) / 2 + " or more for degree " + degree));
        }
        return problems;
    }

    @Override
    public String describe() {
        return Endpoints.describe("polynomial of degree " + degree, endpointChannels, placement);
    }

    @Override
    public Outcome<Subtraction> subtract(BindingScan scan, Window window, String key, Work work) {
        return Region.treat(this, scan, window, key, 1, this::through);
    }

    private Outcome<Subtraction> through(Region region) {
        int m = endpointChannels;
        double[] ends = new double[2 * m];
        RealMatrix endPowers = new Array2DRowRealMatrix(2 * m, degree + 1);
        for (int i = 0; i < 2 * m; i++) {
            int channel = endChannel(region, i);
            ends[i] = region.counts[channel];
            endPowers.setRow(i, powers(region, region.energy[channel]));
        }
        RealMatrix windowPowers = new Array2DRowRealMatrix(region.channels(), degree + 1);
        for (int i = 0; i < region.channels(); i++) {
            windowPowers.setRow(i, powers(region, region.energy[region.from + i]));
        }
        RealMatrix hat =
                windowPowers.multiply(new QRDecomposition(endPowers).getSolver().getInverse());
        BackgroundAdjoint adjoint = weights -> {
            double[] towardsEnds = hat.preMultiply(weights);
            double[] gradient = new double[region.counts.length];
            for (int i = 0; i < 2 * m; i++) gradient[endChannel(region, i)] += towardsEnds[i];
            return gradient;
        };
        return Outcome.done(
                new Subtraction(region, hat.operate(ends), adjoint, Subtraction.Convergence.CLOSED_FORM),
                region.findings);
    }

    private int endChannel(Region region, int i) {
        return i < endpointChannels ? region.lowStart + i : region.highStart + i - endpointChannels;
    }

    /** Powers of the energy scaled to about -1 to 1, which keeps the least squares well conditioned. */
    private double[] powers(Region region, double energy) {
        double centre = 0.5 * (region.lowEnergy() + region.highEnergy());
        double x = 2 * (energy - centre) / (region.highEnergy() - region.lowEnergy());
        double[] powers = new double[degree + 1];
        powers[0] = 1;
        for (int p = 1; p <= degree; p++) powers[p] = powers[p - 1] * x;
        return powers;
    }
}
