package spotline.analysis.background;

import java.util.Arrays;
import java.util.List;
import spotline.core.Work;

/**
 * A Shirley background under fitted peaks: low + k times the area of the peaks passed. No iteration is left, because the
 * peaks are known.
 */
final class FittedShirley implements FittedBackground {
    private final double[] energy;
    private final Shirley settings;

    FittedShirley(double[] energy, Shirley settings) {
        this.energy = energy.clone();
        this.settings = settings;
    }

    @Override
    public List<String> parameters() {
        return List.of("low", "rise per area, 1/eV");
    }

    /** From the iterated background; no rise where that does not settle. */
    @Override
    public double[] start(double[] counts) {
        int m = settings.endpointChannels();
        double low = Endpoints.mean(counts, 0, m);
        double high = Endpoints.mean(counts, counts.length - m, m);
        double[] noCap = new double[counts.length];
        Arrays.fill(noCap, Double.POSITIVE_INFINITY);
        ShirleyKernel kernel = ShirleyKernel.iterate(
                energy,
                counts,
                low,
                high,
                noCap,
                settings.relativeTolerance(),
                settings.maxIterations(),
                Work.UNWATCHED);
        boolean settled = kernel.ending == ShirleyKernel.Ending.CONVERGED && high > low;
        return new double[] {low, settled ? (high - low) / kernel.area() : 0};
    }

    @Override
    public double[] curve(double[] parameters, double[] peaks) {
        double[] curve = response(parameters, peaks);
        for (int i = 0; i < curve.length; i++) curve[i] += parameters[0];
        return curve;
    }

    @Override
    public double[] slope(int parameter, double[] parameters, double[] peaks) {
        if (parameter == 1) return areaPassed(peaks);
        double[] ones = new double[peaks.length];
        Arrays.fill(ones, 1);
        return ones;
    }

    @Override
    public double[] response(double[] parameters, double[] peakChange) {
        double[] response = areaPassed(peakChange);
        for (int i = 0; i < response.length; i++) response[i] *= parameters[1];
        return response;
    }

    private double[] areaPassed(double[] peaks) {
        double[] passed = new double[peaks.length];
        for (int i = 1; i < passed.length; i++) {
            passed[i] = passed[i - 1] + 0.5 * (energy[i] - energy[i - 1]) * (peaks[i - 1] + peaks[i]);
        }
        return passed;
    }
}
