package spotline.numerics.fit;

import java.util.Arrays;
import java.util.List;

/** All arrays of a fit, kept between fits of problems with the same models and the same linear map. */
final class Workspace {
    final Block[] blocks;
    final int count; // of free parameters
    final int points;
    final double[] parameters;
    final double[] normal; // Q x Q, lower triangle
    final double[] descent; // rows times residual: minus half the gradient
    final double[] scale;
    final double[] step;
    final double[] kept;
    final double[] amplitudeStep;
    final boolean[] all;
    final boolean[] linear;
    final BoxStep boxStep;
    final OrthogonalSolver orthogonal;
    double dataSize;
    boolean normalIsExact;
    Point current;
    Point trial;

    private final int[][] columns;
    private final double[][] ratios;
    private final int[][] models;

    /** State that belongs to one set of parameter values. */
    static final class Point {
        final double[] q;
        final Block.State[] states;
        double objective;

        Point(int count, Block[] blocks) {
            q = new double[count];
            states = new Block.State[blocks.length];
            for (int d = 0; d < blocks.length; d++) states[d] = blocks[d].newState();
        }
    }

    Workspace(FitProblem problem) {
        Layout layout = problem.layout();
        columns = layout.columns;
        ratios = layout.ratios;
        models = layout.models;
        count = layout.free.length;
        parameters = new double[layout.columns.length];
        List<DataSet> dataSets = problem.dataSets();
        blocks = new Block[dataSets.size()];
        int sum = 0;
        for (int d = 0; d < blocks.length; d++) {
            blocks[d] = new Block(dataSets.get(d).model(), layout, d);
            sum += dataSets.get(d).size();
        }
        points = sum;
        normal = new double[count * count];
        descent = new double[count];
        scale = new double[count];
        step = new double[count];
        kept = new double[count];
        amplitudeStep = new double[count];
        all = new boolean[count];
        Arrays.fill(all, true);
        linear = layout.linear;
        boxStep = new BoxStep(count);
        orthogonal = new OrthogonalSolver(count, points);
        current = new Point(count, blocks);
        trial = new Point(count, blocks);
    }

    boolean fits(FitProblem problem) {
        Layout layout = problem.layout();
        if (layout.columns != columns || layout.ratios != ratios || layout.models != models) return false;
        for (int d = 0; d < blocks.length; d++) {
            if (blocks[d].model() != problem.dataSets().get(d).model()) return false;
        }
        return true;
    }

    boolean anyLinear() {
        for (boolean value : linear) {
            if (value) return true;
        }
        return false;
    }

    /** Values, rows, weights and objective at the point's q. */
    void evaluate(Point point, FitProblem problem) {
        problem.layout().expand(point.q, parameters);
        double sum = 0;
        for (int d = 0; d < blocks.length; d++) {
            sum += blocks[d].evaluate(parameters, problem, problem.dataSets().get(d), point.states[d]);
        }
        point.objective = sum;
    }

    /** Sum of squares of the weighted data themselves. */
    void measureData(FitProblem problem) {
        dataSize = 0;
        for (int d = 0; d < blocks.length; d++) {
            double[] y = problem.dataSets().get(d).shared();
            double[] weight = current.states[d].rowWeight;
            for (int i = 0; i < y.length; i++) dataSize += y[i] * y[i] * weight[i] * weight[i];
        }
    }

    /** Normal matrix and descent at the point; without {@code exact} the former to a part in a thousand only. */
    void build(Point point, boolean exact) {
        Arrays.fill(normal, 0);
        Arrays.fill(descent, 0);
        for (int d = 0; d < blocks.length; d++) {
            blocks[d].addNormal(point.states[d], exact, normal, descent, count);
        }
        normalIsExact = exact;
    }

    /** The descent alone; the normal matrix stays that of an earlier point. */
    void buildDescent(Point point) {
        Arrays.fill(descent, 0);
        for (int d = 0; d < blocks.length; d++) blocks[d].addDescent(point.states[d], descent);
        normalIsExact = false;
    }

    void swap() {
        Point kept = current;
        current = trial;
        trial = kept;
    }
}
