package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import spotline.numerics.random.PoissonSampler;
import spotline.spectra.BindingScan;

/**
 * An invented C 1s of adventitious carbon of which everything is known, and the least uncertainty that any estimate of its
 * position can have (Cramer and Rao): from the derivatives of the expected counts alone, none of the fit's own code.
 *
 * @param values hydrocarbon's position (eV), area (counts eV) and width (eV); three areas; three distances (eV); background,
 *     its slope, its rise by area passed
 */
record CarbonTruth(double[] energy, List<Double> values) {
    private static final int UNKNOWNS = 11;

    /** A spot with its surface charged by -10 to +12 eV, of usual shares and widths. */
    static CarbonTruth drawn(RandomGenerator random, double area) {
        return drawn(random, area, 1.1 + 0.25 * random.nextDouble());
    }

    /** @param width Gaussian, eV */
    static CarbonTruth drawn(RandomGenerator random, double area, double width) {
        double charging = -10 + 22 * random.nextDouble();
        double position = 284.8 + charging;
        double oxidised = 0.5 + random.nextDouble();
        double background = 0.05 * area;
        return of(
                position - 8 - random.nextDouble(),
                List.of(
                        position,
                        area,
                        width,
                        0.19 * oxidised * area,
                        0.08 * oxidised * area,
                        0.06 * oxidised * area,
                        1.5 + 0.1 * random.nextGaussian(),
                        3.0 + 0.1 * random.nextGaussian(),
                        4.2 + 0.1 * random.nextGaussian(),
                        background,
                        0.01 * background * (random.nextDouble() - 0.5),
                        0.02 * random.nextDouble()));
    }

    static CarbonTruth of(double lowEv, List<Double> values) {
        return new CarbonTruth(Made.grid(lowEv, lowEv + 23), values);
    }

    double positionEv() {
        return values.get(0);
    }

    BindingScan scan(RandomGenerator random, String label) {
        double[] p = values.stream().mapToDouble(Double::doubleValue).toArray();
        return Made.scan(label, energy, PoissonSampler.sample(random, means(p)));
    }

    /** Two equal patches of the surface at potentials so far apart. */
    BindingScan scan(RandomGenerator random, String label, double separationEv) {
        double[] p = values.stream().mapToDouble(Double::doubleValue).toArray();
        double[] above = p.clone();
        p[0] -= 0.5 * separationEv;
        above[0] += 0.5 * separationEv;
        double[] means = means(p);
        double[] others = means(above);
        for (int i = 0; i < means.length; i++) means[i] = 0.5 * (means[i] + others[i]);
        return Made.scan(label, energy, PoissonSampler.sample(random, means));
    }

    private double[] means(double[] p) {
        List<Made.Peak> peaks = new ArrayList<>(List.of(new Made.Peak(p[0], p[1], p[2])));
        for (int k = 0; k < 3; k++) peaks.add(new Made.Peak(p[0] + p[6 + k], p[3 + k], p[2]));
        double[] lines = Made.means(energy, peaks, 0, 0);
        double[] means = new double[energy.length];
        double passed = 0;
        for (int i = 0; i < means.length; i++) {
            if (i > 0) passed += 0.5 * (energy[i] - energy[i - 1]) * (lines[i] + lines[i - 1]);
            means[i] = lines[i] + p[9] + p[10] * (energy[i] - energy[0]) + p[11] * passed;
        }
        return means;
    }

    /**
     * Least standard deviation of the position, eV, when areas, distances, width, background and its slope are unknown too,
     * and its rise is known.
     */
    double limitEv() {
        double[] p = values.stream().mapToDouble(Double::doubleValue).toArray();
        double[] means = means(p);
        double[][] slopes = new double[UNKNOWNS][];
        for (int a = 0; a < UNKNOWNS; a++) {
            boolean counts = a == 1 || (a >= 3 && a < 6) || a >= 9;
            double h = counts ? 1e-3 * p[1] : 1e-5;
            double[] up = p.clone();
            double[] down = p.clone();
            up[a] += h;
            down[a] -= h;
            double[] above = means(up);
            double[] below = means(down);
            slopes[a] = new double[means.length];
            for (int i = 0; i < means.length; i++) slopes[a][i] = (above[i] - below[i]) / (2 * h);
        }
        double[][] information = new double[UNKNOWNS][UNKNOWNS];
        for (int a = 0; a < UNKNOWNS; a++) {
            for (int b = 0; b < UNKNOWNS; b++) {
                for (int i = 0; i < means.length; i++) information[a][b] += slopes[a][i] * slopes[b][i] / means[i];
            }
        }
        return Math.sqrt(new LUDecomposition(new Array2DRowRealMatrix(information))
                .getSolver()
                .getInverse()
                .getEntry(0, 0));
    }
}
