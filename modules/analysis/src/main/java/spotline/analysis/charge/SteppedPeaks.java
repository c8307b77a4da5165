package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import spotline.numerics.fit.ModelFunction;
import spotline.numerics.fit.PeakModel;

/**
 * Peaks on a background that slopes, and rises in proportion to the area of the peaks passed.
 *
 * <p>Shape: parameters of the peaks in their order, then {@code background.0} (counts), {@code background.1} (counts per
 * eV from the origin), {@code background.rise} (1/eV). Units: eV, counts.
 *
 * <p>Source: D. A. Shirley, Phys. Rev. B 5 (1972) 4709, for the rise.
 */
final class SteppedPeaks implements ModelFunction {
    static final List<String> BACKGROUND = List.of("background.0", "background.1", "background.rise");

    private final PeakModel peaks;
    private final double[] x;
    private final double origin;

    SteppedPeaks(PeakModel peaks, double origin) {
        this.peaks = peaks;
        this.x = peaks.abscissae();
        this.origin = origin;
    }

    List<String> parameterNames() {
        List<String> names = new ArrayList<>(peaks.parameterNames());
        names.addAll(BACKGROUND);
        return names;
    }

    @Override
    public int pointCount() {
        return x.length;
    }

    @Override
    public int parameterCount() {
        return peaks.parameterCount() + BACKGROUND.size();
    }

    /** Background under all the peaks, counts. */
    double[] background(double[] p) {
        double[] sum = new double[x.length];
        peaks.evaluator().values(p, sum);
        int at = peaks.parameterCount();
        double[] rise = areaPassed(sum);
        for (int i = 0; i < sum.length; i++) sum[i] = p[at] + p[at + 1] * (x[i] - origin) + p[at + 2] * rise[i];
        return sum;
    }

    private double[] areaPassed(double[] values) {
        double[] passed = new double[values.length];
        for (int i = 1; i < passed.length; i++) {
            passed[i] = passed[i - 1] + 0.5 * (x[i] - x[i - 1]) * (values[i - 1] + values[i]);
        }
        return passed;
    }

    @Override
    public Evaluator evaluator() {
        return new SteppedEvaluator(peaks.evaluator());
    }

    private final class SteppedEvaluator implements Evaluator {
        private final Evaluator under;

        SteppedEvaluator(Evaluator under) {
            this.under = under;
        }

        @Override
        public void values(double[] p, double[] values) {
            under.values(p, values);
            add(p, values, areaPassed(values));
        }

        @Override
        public boolean derivatives(double[] p, double[] values, double[][] rows) {
            int at = peaks.parameterCount();
            if (!under.derivatives(p, values, rows)) return false;
            for (int k = 0; k < at; k++) {
                double[] change = areaPassed(rows[k]);
                for (int i = 0; i < change.length; i++) rows[k][i] += p[at + 2] * change[i];
            }
            double[] passed = areaPassed(values);
            for (int i = 0; i < passed.length; i++) {
                rows[at][i] = 1;
                rows[at + 1][i] = x[i] - origin;
                rows[at + 2][i] = passed[i];
            }
            add(p, values, passed);
            return true;
        }

        private void add(double[] p, double[] values, double[] passed) {
            int at = peaks.parameterCount();
            for (int i = 0; i < values.length; i++) {
                values[i] += p[at] + p[at + 1] * (x[i] - origin) + p[at + 2] * passed[i];
            }
        }
    }
}
