package spotline.analysis.background;

import java.util.List;
import java.util.function.UnaryOperator;

/** A background that is a sum of functions of energy alone: the peaks do not move it. */
final class FittedFunctions implements FittedBackground {
    private final List<String> names;
    private final double[][] functions;
    private final UnaryOperator<double[]> start;

    FittedFunctions(List<String> names, double[][] functions, UnaryOperator<double[]> start) {
        this.names = List.copyOf(names);
        this.functions = functions;
        this.start = start;
    }

    @Override
    public List<String> parameters() {
        return names;
    }

    @Override
    public double[] start(double[] counts) {
        return start.apply(counts);
    }

    @Override
    public double[] curve(double[] parameters, double[] peaks) {
        double[] curve = new double[peaks.length];
        for (int p = 0; p < functions.length; p++) {
            for (int i = 0; i < curve.length; i++) curve[i] += parameters[p] * functions[p][i];
        }
        return curve;
    }

    @Override
    public double[] slope(int parameter, double[] parameters, double[] peaks) {
        return functions[parameter].clone();
    }

    @Override
    public double[] response(double[] parameters, double[] peakChange) {
        return new double[peakChange.length];
    }
}
