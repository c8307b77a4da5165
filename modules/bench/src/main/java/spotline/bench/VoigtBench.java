package spotline.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeScratch;
import spotline.numerics.shape.Voigt;

/** A line's value and all its derivatives over 241 channels, per point. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 8, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Fork(2)
public class VoigtBench {
    private static final int POINTS = 241;

    private final double[] narrowStep = axis(279, 0.05);
    private final double[] wideStep = axis(273, 0.1);
    private final double[][] rows = new double[4][POINTS];
    private final double[] voigt = {285, 1000, 1.0, 0.25};
    private final double[] nearlyGaussian = {285, 1000, 1.0, 0.03};
    private final double[] sum = {285, 1000, 1.2, 0.3};
    private final ShapeScratch scratch = new ShapeScratch();

    private static double[] axis(double from, double step) {
        double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) x[i] = from + i * step;
        return x;
    }

    private double[][] derivatives(LineShape shape, double[] x, double[] p) {
        shape.derivatives(x, p, 0, rows, 0, scratch);
        return rows;
    }

    /** 12 eV in steps of 0.05 eV. */
    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double[][] voigtNarrowWindow() {
        return derivatives(new Voigt(), narrowStep, voigt);
    }

    /** 24 eV in steps of 0.1 eV. */
    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double[][] voigtWideWindow() {
        return derivatives(new Voigt(), wideStep, voigt);
    }

    /** A Lorentzian width of 3 % of the Gaussian one, where points are taken one by one to keep their digits. */
    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double[][] voigtNearlyGaussian() {
        return derivatives(new Voigt(), narrowStep, nearlyGaussian);
    }

    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double[][] gaussianLorentzianSum() {
        return derivatives(new GaussianLorentzianSum(), narrowStep, sum);
    }
}
