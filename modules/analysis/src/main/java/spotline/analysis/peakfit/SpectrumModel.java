package spotline.analysis.peakfit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spotline.analysis.background.FittedBackground;
import spotline.numerics.fit.ModelFunction;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeScratch;

/**
 * The counts of a narrow scan as a function of the free numbers of a model: peaks with their satellites on a background
 * that is given or fitted along.
 *
 * <p>Shape: n channels; slots of the graph, then the background's own parameters. Units: eV, counts.
 */
final class SpectrumModel implements ModelFunction {
    private final double[] x;
    private final ParameterGraph graph;
    private final List<Satellite> satellites;
    private final double[] given; // background taken first; zeros where it is fitted along
    private final Optional<FittedBackground> fitted;
    private final int backgroundParameters;
    private final boolean peaksMoveBackground;

    SpectrumModel(
            double[] x,
            ParameterGraph graph,
            List<Satellite> satellites,
            double[] given,
            Optional<FittedBackground> fitted) {
        this.x = x;
        this.graph = graph;
        this.satellites = satellites;
        this.given = given;
        this.fitted = fitted;
        backgroundParameters = fitted.map(b -> b.parameters().size()).orElse(0);
        peaksMoveBackground = fitted.isPresent() && moves(fitted.get());
    }

    /** A background that answers to no peaks at all is a sum of functions of energy. */
    private boolean moves(FittedBackground background) {
        double[] parameters = new double[backgroundParameters];
        Arrays.fill(parameters, 1);
        double[] peaks = new double[x.length];
        Arrays.fill(peaks, 1);
        for (double change : background.response(parameters, peaks)) {
            if (change != 0) return true;
        }
        return false;
    }

    ParameterGraph graph() {
        return graph;
    }

    Optional<FittedBackground> fittedBackground() {
        return fitted;
    }

    @Override
    public int pointCount() {
        return x.length;
    }

    @Override
    public int parameterCount() {
        return graph.slots().size() + backgroundParameters;
    }

    @Override
    public boolean linear(int parameter) {
        int slots = graph.slots().size();
        if (parameter < slots) return graph.isArea(parameter);
        return !peaksMoveBackground || parameter == slots;
    }

    /** Values of all shape parameters. */
    double[] values(double[] parameters) {
        double[] values = new double[graph.values()];
        graph.expand(parameters, values);
        return values;
    }

    /** A member's curve, satellites included, above the background. */
    double[] curve(int member, double[] values) {
        double[] curve = new double[x.length];
        addCurve(member, values.clone(), curve, new double[x.length], new ShapeScratch());
        return curve;
    }

    /** The background under all peaks. */
    double[] background(double[] parameters) {
        if (fitted.isEmpty()) return given.clone();
        double[] values = values(parameters);
        double[] peaks = new double[x.length];
        ShapeScratch scratch = new ShapeScratch();
        for (int m = 0; m < graph.members().size(); m++) addCurve(m, values, peaks, new double[x.length], scratch);
        return fitted.get().curve(backgroundPart(parameters), peaks);
    }

    private double[] backgroundPart(double[] parameters) {
        return Arrays.copyOfRange(
                parameters, graph.slots().size(), graph.slots().size() + backgroundParameters);
    }

    /** Leaves {@code values} as it found them. */
    private void addCurve(int member, double[] values, double[] to, double[] unit, ShapeScratch scratch) {
        LineShape shape = graph.members().get(member).shape();
        int at = graph.first(member);
        double area = values[at + LineShape.AREA];
        double position = values[at];
        shape.unitArea(x, values, at, unit, scratch);
        for (int i = 0; i < x.length; i++) to[i] += area * unit[i];
        for (Satellite s : satellites) {
            values[at] = position - s.displacementEv();
            shape.unitArea(x, values, at, unit, scratch);
            for (int i = 0; i < x.length; i++) to[i] += area * s.relativeArea() * unit[i];
        }
        values[at] = position;
    }

    @Override
    public Evaluator evaluator() {
        return new SpectrumEvaluator();
    }

    private final class SpectrumEvaluator implements Evaluator {
        private final ShapeScratch scratch = new ShapeScratch();
        private final double[] values = new double[graph.values()];
        private final double[] unit = new double[x.length];
        private final double[] peaks = new double[x.length];
        private double[][] byValue = new double[0][];
        private double[][] spare = new double[0][];

        @Override
        public void values(double[] p, double[] out) {
            graph.expand(p, values);
            Arrays.fill(peaks, 0);
            for (int m = 0; m < graph.members().size(); m++) addCurve(m, values, peaks, unit, scratch);
            finish(p, out);
        }

        private void finish(double[] p, double[] out) {
            double[] background = fitted.isPresent() ? fitted.get().curve(backgroundPart(p), peaks) : given;
            for (int i = 0; i < x.length; i++) out[i] = peaks[i] + background[i];
        }

        @Override
        public boolean derivatives(double[] p, double[] out, double[][] rows) {
            if (byValue.length == 0) byValue = new double[values.length][x.length];
            graph.expand(p, values);
            Arrays.fill(peaks, 0);
            for (int m = 0; m < graph.members().size(); m++) addMember(m);
            graph.pullBack(p, values, byValue, rows, x.length);
            finish(p, out);
            if (fitted.isPresent()) backgroundRows(fitted.get(), p, rows);
            return true;
        }

        private void addMember(int member) {
            LineShape shape = graph.members().get(member).shape();
            int at = graph.first(member);
            int count = shape.parameterCount();
            shape.derivatives(x, values, at, byValue, at, scratch);
            double position = values[at];
            for (Satellite s : satellites) {
                if (spare.length < count) spare = new double[count][x.length];
                values[at] = position - s.displacementEv();
                shape.derivatives(x, values, at, spare, 0, scratch);
                for (int k = 0; k < count; k++) {
                    double[] row = byValue[at + k];
                    for (int i = 0; i < x.length; i++) row[i] += s.relativeArea() * spare[k][i];
                }
            }
            values[at] = position;
            double area = values[at + LineShape.AREA];
            double[] perArea = byValue[at + LineShape.AREA];
            for (int i = 0; i < x.length; i++) peaks[i] += area * perArea[i];
        }

        private void backgroundRows(FittedBackground background, double[] p, double[][] rows) {
            double[] own = backgroundPart(p);
            int slots = graph.slots().size();
            for (int k = 0; k < slots && peaksMoveBackground; k++) {
                double[] response = background.response(own, rows[k]);
                for (int i = 0; i < x.length; i++) rows[k][i] += response[i];
            }
            for (int b = 0; b < own.length; b++) {
                System.arraycopy(background.slope(b, own, peaks), 0, rows[slots + b], 0, x.length);
            }
        }
    }
}
