package spotline.analysis.background;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
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
    public Optional<FittedBackground> fitted(double[] energy) {
        int m = endpointChannels;
        int n = energy.length;
        double lowEnergy = Endpoints.mean(energy, 0, m);
        double highEnergy = Endpoints.mean(energy, n - m, m);
        double[][] functions = new double[degree + 1][n];
        double[][] ends = new double[2 * m][];
        for (int i = 0; i < n; i++) {
            double[] powers = powers(lowEnergy, highEnergy, energy[i]);
            for (int p = 0; p <= degree; p++) functions[p][i] = powers[p];
            if (i < m) ends[i] = powers;
            if (i >= n - m) ends[i - n + 2 * m] = powers;
        }
        DecompositionSolver solver = new QRDecomposition(new Array2DRowRealMatrix(ends, false)).getSolver();
        List<String> names = new ArrayList<>();
        for (int p = 0; p <= degree; p++) names.add("coefficient " + p);
        return Optional.of(new FittedFunctions(names, functions, counts -> {
            double[] values = Arrays.copyOf(counts, 2 * m);
            System.arraycopy(counts, n - m, values, m, m);
            return solver.solve(new ArrayRealVector(values, false)).toArray();
        }));
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
            endPowers.setRow(i, powers(region.lowEnergy(), region.highEnergy(), region.energy[channel]));
        }
        RealMatrix windowPowers = new Array2DRowRealMatrix(region.channels(), degree + 1);
        for (int i = 0; i < region.channels(); i++) {
            windowPowers.setRow(i, powers(region.lowEnergy(), region.highEnergy(), region.energy[region.from + i]));
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
    private double[] powers(double lowEnergy, double highEnergy, double energy) {
        double x = (2 * energy - lowEnergy - highEnergy) / (highEnergy - lowEnergy);
        double[] powers = new double[degree + 1];
        powers[0] = 1;
        for (int p = 1; p <= degree; p++) powers[p] = powers[p - 1] * x;
        return powers;
    }
}
