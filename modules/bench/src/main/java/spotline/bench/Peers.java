package spotline.bench;

import java.util.Locale;
import spotline.core.Work;
import spotline.numerics.fit.Fit;
import spotline.numerics.fit.FitProblem;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.FitSettings;
import spotline.numerics.fit.FitWorker;

/** The same fit by each peer, with one stop rule: a relative decrease of the sum of squares below {@link #TOLERANCE}. */
final class Peers {
    static final double TOLERANCE = 1e-8;
    static final FitSettings SETTINGS = FitSettings.DEFAULT.withTolerance(TOLERANCE);

    private Peers() {}

    /** The chi-square that each peer ends at, so that a faster wrong answer shows. */
    static String chiSquares(FitCase fit) {
        PeerModel model = fit.peer();
        return String.format(
                Locale.ROOT,
                "chi-square: spotline %.9f, commons analytic %.9f, commons differences %.9f, hipparchus %.9f",
                spotline(fit.problem()).chiSquare(),
                model.chiSquare(commons(model, true)),
                model.chiSquare(commons(model, false)),
                model.chiSquare(hipparchus(model)));
    }

    static FitResult spotline(FitProblem problem) {
        return Fit.solve(problem, SETTINGS, Work.UNWATCHED);
    }

    static FitResult spotline(FitWorker worker, FitProblem problem) {
        return worker.solve(problem, SETTINGS, Work.UNWATCHED);
    }

    static double[] commons(PeerModel model, boolean analytic) {
        org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction function = point -> {
            double[] p = point.toArray();
            double[] out = new double[model.x.length];
            double[][] jacobian = new double[out.length][p.length];
            if (analytic) model.evaluate(p, out, jacobian);
            else model.differences(p, out, jacobian);
            return new org.apache.commons.math3.util.Pair<>(
                    new org.apache.commons.math3.linear.ArrayRealVector(out, false),
                    new org.apache.commons.math3.linear.Array2DRowRealMatrix(jacobian, false));
        };
        return new org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(TOLERANCE)
                .withParameterRelativeTolerance(TOLERANCE)
                .withOrthoTolerance(TOLERANCE)
                .optimize(new org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder()
                        .start(model.start)
                        .model(function)
                        .target(model.target)
                        .lazyEvaluation(false)
                        .maxEvaluations(1000)
                        .maxIterations(1000)
                        .build())
                .getPoint()
                .toArray();
    }

    static double[] hipparchus(PeerModel model) {
        org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction function = point -> {
            double[] p = point.toArray();
            double[] out = new double[model.x.length];
            double[][] jacobian = new double[out.length][p.length];
            model.evaluate(p, out, jacobian);
            return new org.hipparchus.util.Pair<>(
                    new org.hipparchus.linear.ArrayRealVector(out, false),
                    new org.hipparchus.linear.Array2DRowRealMatrix(jacobian, false));
        };
        return new org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(TOLERANCE)
                .withParameterRelativeTolerance(TOLERANCE)
                .withOrthoTolerance(TOLERANCE)
                .optimize(new org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder()
                        .start(model.start)
                        .model(function)
                        .target(model.target)
                        .lazyEvaluation(false)
                        .maxEvaluations(1000)
                        .maxIterations(1000)
                        .build())
                .getPoint()
                .toArray();
    }
}
