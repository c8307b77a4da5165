package spotline.numerics.fit;

import java.util.List;

/** All arrays of a fit, kept between fits of problems with the same models and the same linear map. */
final class Workspace {
    final Block[] blocks;
    final int count; // of free parameters
    final double[] parameters;
    final double[] normal; // Q x Q, lower triangle
    final double[] descent; // rows times residual: minus half the gradient
    final double[] scale;
    final double[] step;
    final BoxStep boxStep;
    final OrthogonalSolver orthogonal;
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
        int points = 0;
        for (int d = 0; d < blocks.length; d++) {
            blocks[d] = new Block(dataSets.get(d).model(), layout, d);
            points += dataSets.get(d).size();
        }
        normal = new double[count * count];
        descent = new double[count];
        scale = new double[count];
        step = new double[count];
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

    /** Values, rows, weights and objective at the point's q. */
    void evaluate(Point point, FitProblem problem) {
        problem.layout().expand(point.q, parameters);
        double sum = 0;
        for (int d = 0; d < blocks.length; d++) {
            sum += blocks[d].evaluate(parameters, problem, problem.dataSets().get(d), point.states[d]);
        }
        point.objective = sum;
    }

    void buildDescent(Point point) {
        java.util.Arrays.fill(descent, 0);
        for (int d = 0; d < blocks.length; d++) blocks[d].addDescent(point.states[d], descent);
    }

    void buildNormal(Point point) {
        java.util.Arrays.fill(normal, 0);
        for (int d = 0; d < blocks.length; d++) blocks[d].addNormal(point.states[d], normal, count);
    }

    void swap() {
        Point kept = current;
        current = trial;
        trial = kept;
    }
}
