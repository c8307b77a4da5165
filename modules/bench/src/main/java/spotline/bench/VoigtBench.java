package spotline.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeScratch;
import spotline.numerics.shape.Voigt;

/** A line's value and all its derivatives over 241 channels, processor time a point, in turns. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(2)
public class VoigtBench {
    private static final int POINTS = 241;
    private static final int TURNS = 200;

    private final double[] narrowWindow = axis(279, 0.05);
    private final double[] wideWindow = axis(273, 0.1);
    private final double[][] rows = new double[4][POINTS];
    private final ShapeScratch scratch = new ShapeScratch();

    /** Nanoseconds a point, times a thousand to be kept in whole numbers, summed over the turns. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Points {
        public long turns;
        /** 12 eV in steps of 0.05 eV. */
        public long voigtNarrowWindow;
        /** 24 eV in steps of 0.1 eV. */
        public long voigtWideWindow;
        /** A Lorentzian width of 3 % of the Gaussian one, where points are taken one by one to keep their digits. */
        public long voigtNearlyGaussian;

        public long gaussianLorentzianSum;
        /** The value alone, as the peers of the fits compute it. */
        public long pointwiseFaddeevaValue;
    }

    private static double[] axis(double from, double step) {
        double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) x[i] = from + i * step;
        return x;
    }

    private long time(LineShape shape, double[] x, double... p) {
        long since = Times.now();
        for (int i = 0; i < TURNS; i++) shape.derivatives(x, p, 0, rows, 0, scratch);
        return (Times.now() - since) * 1000 / (TURNS * POINTS);
    }

    private long pointwise(Blackhole hole) {
        double[] w = new double[2];
        double scale = Math.sqrt(4 * Math.log(2));
        long since = Times.now();
        for (int i = 0; i < TURNS; i++) {
            for (double x : narrowWindow) {
                PointwiseFaddeeva.w((x - 285) * scale, 0.125 * scale, w);
                hole.consume(w[0]);
            }
        }
        return (Times.now() - since) * 1000 / (TURNS * POINTS);
    }

    @Benchmark
    public void sideBySide(Points points, Blackhole hole) {
        points.turns++;
        points.voigtNarrowWindow += time(new Voigt(), narrowWindow, 285, 1000, 1.0, 0.25);
        points.voigtWideWindow += time(new Voigt(), wideWindow, 285, 1000, 1.0, 0.25);
        points.voigtNearlyGaussian += time(new Voigt(), narrowWindow, 285, 1000, 1.0, 0.03);
        points.gaussianLorentzianSum += time(new GaussianLorentzianSum(), narrowWindow, 285, 1000, 1.2, 0.3);
        points.pointwiseFaddeevaValue += pointwise(hole);
    }
}
