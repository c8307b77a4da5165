package spotline.analysis.background;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import spotline.core.Work;

/**
 * A Tougaard background under fitted peaks: low + what the peaks scatter, any number of times.
 *
 * <p>With peaks F and y = F + b K y the background is low + y - F; its derivative by b solves z = K y + b K z.
 */
final class FittedLosses implements FittedBackground {
    private final LossConvolution perB;
    private final OptionalDouble fixedB;
    private final double usualB;
    private final int endpointChannels;

    FittedLosses(LossConvolution perB, OptionalDouble fixedB, double usualB, int endpointChannels) {
        this.perB = perB;
        this.fixedB = fixedB;
        this.usualB = usualB;
        this.endpointChannels = endpointChannels;
    }

    @Override
    public List<String> parameters() {
        return fixedB.isPresent() ? List.of("low") : List.of("low", "b, eV^2");
    }

    /** A free B starts where the high end is met, within the range from a tenth of its usual value to ten of them. */
    @Override
    public double[] start(double[] counts) {
        double low = Endpoints.mean(counts, 0, endpointChannels);
        if (fixedB.isPresent()) return new double[] {low};
        double[] above = counts.clone();
        for (int i = 0; i < above.length; i++) above[i] -= low;
        int highStart = counts.length - endpointChannels;
        double scattered = Endpoints.mean(perB.apply(above), highStart, endpointChannels);
        double rise = Endpoints.mean(above, highStart, endpointChannels);
        double b = scattered > 0 ? Math.min(10 * usualB, Math.max(0.1 * usualB, rise / scattered)) : usualB;
        return new double[] {low, b};
    }

    @Override
    public double[] curve(double[] parameters, double[] peaks) {
        double[] curve = response(parameters, peaks);
        for (int i = 0; i < curve.length; i++) curve[i] += parameters[0];
        return curve;
    }

    @Override
    public double[] slope(int parameter, double[] parameters, double[] peaks) {
        if (parameter == 0) {
            double[] ones = new double[peaks.length];
            Arrays.fill(ones, 1);
            return ones;
        }
        double b = b(parameters);
        return perB.multiplied(perB.apply(perB.multiplied(peaks, b)), b);
    }

    @Override
    public double[] response(double[] parameters, double[] peakChange) {
        double[] scattered = perB.multiplied(peakChange, b(parameters));
        for (int i = 0; i < scattered.length; i++) scattered[i] -= peakChange[i];
        return scattered;
    }

    private double b(double[] parameters) {
        return fixedB.orElseGet(() -> parameters[1]);
    }

    static LossConvolution convolution(double[] energy, DoubleUnaryOperator perB) {
        return new LossConvolution(energy.clone(), LossBackground.widths(energy), perB, Work.UNWATCHED);
    }
}
