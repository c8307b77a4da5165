package spotline.analysis.charge;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.special.Erf;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.ModelFunction;
import spotline.numerics.fit.Parameter;
import spotline.numerics.fit.Weighting;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * The Fermi edge of a valence-band scan: a straight density of states, occupied as the Fermi function says, broadened by
 * the instrument, on a constant background.
 *
 * @param spectrum it was fitted in
 * @param positionEv measured binding energy of the Fermi level, eV
 * @param instrumentFwhmEv Gaussian, eV
 * @param temperatureK held in the fit, K
 * @param width1090Ev from 10 to 90 % of the step, thermal and instrumental together, eV
 * @param reducedChiSquare of the fit
 */
public record FermiEdge(
        String spectrum,
        Estimate positionEv,
        Estimate instrumentFwhmEv,
        double temperatureK,
        double width1090Ev,
        double reducedChiSquare) {
    /** Boltzmann constant, eV/K: CODATA 2022. */
    static final double BOLTZMANN = 8.617333262e-5;

    private static final double SIGMA_PER_FWHM = 1 / (2 * Math.sqrt(2 * Math.log(2)));
    private static final double SEARCH_REACH = 1.5;
    private static final double AVERAGED = 0.6;
    private static final double MINIMUM_SIGNIFICANCE = 6;
    private static final double BELOW = 1.8;
    private static final double ABOVE = 1.5;
    private static final int FEWEST_CHANNELS = 12;
    /** The logistic density is followed this many kT to either side, in such steps: what is left out is under 1e-5. */
    private static final double THERMAL_REACH = 14;

    private static final double THERMAL_STEP = 1.5;

    /** Thermal 10-90 % width, eV: 2 ln 9 kT, closed form. */
    public static double thermalWidthEv(double temperatureK) {
        return 2 * Math.log(9) * BOLTZMANN * temperatureK;
    }

    /**
     * Fits the edge near where it is expected.
     *
     * @param expectedEv on the measured scale, eV
     * @param temperatureK of the sample
     *     <p>Errors: empty when the scan does not hold a step there that is significant, or the fit does not determine it.
     */
    public static Optional<FermiEdge> fit(BindingScan scan, double expectedEv, double temperatureK, Work work) {
        OptionalDouble step = step(scan, expectedEv);
        if (step.isEmpty()) return Optional.empty();
        double start = step.getAsDouble();
        Window window = Window.around(start, BELOW, ABOVE);
        int from = scan.firstAtOrAbove(window.lowEv());
        int to = scan.lastAtOrBelow(window.highEv()) + 1;
        if (to - from < FEWEST_CHANNELS) return Optional.empty();
        double[] x = Arrays.copyOfRange(scan.energies(), from, to);
        double[] y = Arrays.copyOfRange(scan.counts(), from, to);
        double kT = BOLTZMANN * temperatureK;
        ModelFunction model = ModelFunction.of(
                x.length,
                5,
                (p, values) -> curve(x, p, kT, values),
                (p, rows) -> new Broadened(p, kT).evaluate(x, p, new double[x.length], rows));
        double low = Arrays.stream(y).min().orElse(0);
        double high = Arrays.stream(y).max().orElse(1);
        List<Parameter> parameters = List.of(
                Parameter.bounded("edge", start, start - 1, start + 1),
                Parameter.bounded("instrument.fwhm", 0.4, 0.02, 3),
                Parameter.bounded("height", Math.max(1e-6, high - low), 0, Double.POSITIVE_INFINITY),
                Parameter.free("slope", 0),
                Parameter.free("background", low));
        Weighting weighting = scan.countsKnown() ? Weighting.POISSON_DEVIANCE : Weighting.UNWEIGHTED;
        FitResult fit = Fit.solve(FitProblem.of(model, y, weighting, parameters), FitSettings.DEFAULT, work);
        if (!fit.converged() || fit.state("edge") != FitResult.ParameterState.FREE) return Optional.empty();
        String prefix = "fit " + scan.label() + " Fermi edge";
        return Optional.of(new FermiEdge(
                scan.label(),
                fit.estimate("edge", prefix),
                fit.estimate("instrument.fwhm", prefix),
                temperatureK,
                width1090(fit.value("instrument.fwhm"), kT),
                fit.reducedChiSquare().orElse(Double.NaN)));
    }

    /** The place near the expected one where the counts rise most over their noise. */
    private static OptionalDouble step(BindingScan scan, double expectedEv) {
        int n = Math.max(2, (int) Math.round(AVERAGED / scan.stepEv()));
        double best = MINIMUM_SIGNIFICANCE;
        OptionalDouble found = OptionalDouble.empty();
        int from = Math.max(n, scan.firstAtOrAbove(expectedEv - SEARCH_REACH));
        int to = Math.min(scan.channels() - n, scan.lastAtOrBelow(expectedEv + SEARCH_REACH));
        for (int i = from; i <= to; i++) {
            double below = 0;
            double above = 0;
            for (int k = 0; k < n; k++) {
                below += scan.counts(i - 1 - k);
                above += scan.counts(i + k);
            }
            double significance = (above - below) / Math.sqrt(Math.max(1, above + below));
            if (significance > best) {
                best = significance;
                found = OptionalDouble.of(0.5 * (scan.energy(i - 1) + scan.energy(i)));
            }
        }
        return found;
    }

    /** Parameters: edge, FWHM of the instrument, height of the step, slope of the density of states, background. */
    static void curve(double[] x, double[] p, double kT, double[] values) {
        new Broadened(p, kT).evaluate(x, p, values, new double[0][]);
    }

    /** The logistic density of the thermal edge as a sum over steps of a Gaussian edge. */
    private static final class Broadened {
        private final double sigma;
        private final double h;
        private final double[] weights;

        Broadened(double[] p, double kT) {
            sigma = Math.max(1e-6, p[1] * SIGMA_PER_FWHM);
            h = Math.min(THERMAL_STEP * kT, sigma);
            int half = (int) Math.ceil(THERMAL_REACH * kT / h);
            weights = new double[2 * half + 1];
            double total = 0;
            for (int k = 0; k < weights.length; k++) {
                double cosh = Math.cosh(0.5 * (k - half) * h / kT);
                weights[k] = 1 / (cosh * cosh);
                total += weights[k];
            }
            for (int k = 0; k < weights.length; k++) weights[k] /= total;
        }

        /** @param rows derivatives by parameter, none wanted where empty */
        void evaluate(double[] x, double[] p, double[] values, double[][] rows) {
            int half = weights.length / 2;
            for (int i = 0; i < x.length; i++) {
                double above = x[i] - p[0];
                double occupied = 0;
                double bell = 0;
                double bellZ = 0;
                double bellZz = 0;
                for (int k = 0; k < weights.length; k++) {
                    double z = (above - (k - half) * h) / sigma;
                    double w = weights[k];
                    double phi = w * Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
                    occupied += z < -8 ? 0 : z > 8 ? w : w * 0.5 * Erf.erfc(-z / Math.sqrt(2));
                    bell += phi;
                    bellZ += phi * z;
                    bellZz += phi * z * z;
                }
                double ramp = above * occupied + sigma * bell;
                values[i] = p[4] + p[2] * occupied + p[3] * ramp;
                if (rows.length == 0) continue;
                double narrower = -bellZ / sigma;
                rows[0][i] = -(p[2] * bell / sigma + p[3] * (occupied + above * bell / sigma - bellZ));
                rows[1][i] = SIGMA_PER_FWHM * (p[2] * narrower + p[3] * (above * narrower + bell + bellZz));
                rows[2][i] = occupied;
                rows[3][i] = ramp;
                rows[4][i] = 1;
            }
        }
    }

    private static double width1090(double fwhm, double kT) {
        return quantile(0.9, fwhm, kT) - quantile(0.1, fwhm, kT);
    }

    private static double quantile(double share, double fwhm, double kT) {
        double low = -20 * kT - 4 * fwhm;
        double high = -low;
        double[] value = new double[1];
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            curve(new double[] {middle}, new double[] {0, fwhm, 1, 0, 0}, kT, value);
            if (value[0] < share) low = middle;
            else high = middle;
        }
        return 0.5 * (low + high);
    }
}
