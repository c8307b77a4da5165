package spotline.analysis.identify;

/**
 * How far a survey may depart from its model beyond counting statistics: line shapes, Auger envelopes and loss structure
 * are known only so well. Without it a strong line's smallest misfit would outweigh any weak element.
 *
 * <p>Units: counts, eV. Source: common practice, no source; the shares were set on simulated surveys of other physics.
 */
final class Discrepancy {
    private static final double AUGER_CHANNEL = 0.02;
    private static final double LOSS_CHANNEL = 0.015;

    /** Smooth departures reach their size over this far, eV. */
    private static final double GROUP_SCALE_EV = 6;

    private static final double AUGER = 0.35;
    /** Share of a line's height that returns as loss structure behind it, and how far behind it reaches. */
    private static final double LOSS = 0.2;

    private static final double LOSS_REACH_EV = 22;
    private static final double BACKGROUND = 0.06;
    private static final double BACKGROUND_SCALE_EV = 45;

    private static final double EXCESS_REACH_EV = 25;
    /** Mean square of the smaller three quarters of standard normal variables. */
    private static final double LOWER_QUARTERS = 0.3686;

    private static final double FIRST_LINE = 0.08;
    private static final double FIRST_GROUP = 0.25;
    private static final double OPENING_EV = 9;

    /** How freely the background may bend behind lines and under Auger groups. */
    enum Freedom {
        /** Enough that no loss or Auger structure is taken for an element. */
        TO_DETECT(1, 1),
        /** Little: elements are settled, and a background that bends under a line takes from its area or adds to it. */
        TO_QUANTIFY(0.2, 0.5);

        private final double loss;
        private final double auger;

        Freedom(double loss, double auger) {
            this.loss = loss;
            this.auger = auger;
        }
    }

    private Discrepancy() {}

    /** Before anything is modelled: what stands above the lower envelope is taken for lines. */
    static Whitening first(SurveyGrid grid, double firstEnergyEv) {
        int n = grid.channels;
        double[] smooth = smooth(grid.counts);
        int half = Math.max(1, (int) Math.round(OPENING_EV / grid.step));
        double[] base = extreme(extreme(smooth, half, false), half, true);
        double[] excess = new double[n];
        for (int i = 0; i < n; i++) excess[i] = smooth[i] - base[i];
        excess = extreme(excess, Math.max(1, (int) Math.round(1.2 / grid.step)), true);
        double[] variance = new double[n];
        double[] bend = new double[n];
        double decay = Math.exp(-grid.step / LOSS_REACH_EV);
        double behind = 0;
        for (int i = 0; i < n; i++) {
            behind = Math.max(excess[i], behind * decay);
            double d = FIRST_LINE * excess[i];
            variance[i] = grid.energy[i] < firstEnergyEv ? Double.POSITIVE_INFINITY : Math.max(1, smooth[i]) + d * d;
            bend[i] = bend(BACKGROUND * smooth[i], BACKGROUND_SCALE_EV)
                    + bend(FIRST_GROUP * 0.5 * behind, GROUP_SCALE_EV);
        }
        return new Whitening(grid, bend, variance);
    }

    /**
     * Once a model is there.
     *
     * @param lines heights of regular lines
     * @param unsure how far those heights may be wrong for their shapes, channel by channel
     * @param excess factor for all variances, as {@link #excess} gives it; empty for 1
     * @param groups heights of Auger groups and of lines that many-electron effects break up
     */
    static Whitening of(
            SurveyGrid grid,
            double firstEnergyEv,
            double[] total,
            double[] lines,
            double[] groups,
            double[] unsure,
            double fwhmEv,
            double[] excess,
            Freedom freedom) {
        int n = grid.channels;
        int reach = Math.max(1, (int) Math.round(0.6 * fwhmEv / grid.step));
        double[] wide = extreme(unsure, reach, true);
        double[] structure = extreme(groups, (int) Math.round(8 / grid.step), true);
        double decay = Math.exp(-grid.step / LOSS_REACH_EV);
        double[] variance = new double[n];
        double[] bend = new double[n];
        double behind = 0;
        for (int i = 0; i < n; i++) {
            behind = Math.max(Math.max(0, lines[i]), behind * decay);
            double d = Math.max(0, wide[i]);
            double a = Math.max(0, structure[i]);
            double level = Math.max(1, total[i]);
            double own = level + d * d + sq(AUGER_CHANNEL * a) + sq(LOSS_CHANNEL * behind);
            double more = excess.length > 0 ? excess[i] : 1;
            variance[i] = grid.energy[i] < firstEnergyEv ? Double.POSITIVE_INFINITY : own * more;
            bend[i] = more
                    * (bend(BACKGROUND * level, BACKGROUND_SCALE_EV)
                            + bend(freedom.auger * AUGER * a, GROUP_SCALE_EV)
                            + bend(freedom.loss * LOSS * behind, GROUP_SCALE_EV));
        }
        return new Whitening(grid, bend, variance);
    }

    /**
     * By how much residuals of unit variance are too large in the neighbourhood of each channel, as a factor of their variance:
     * the mean square of the smaller three quarters of them, so that a line that is missing from the model does not hide
     * itself.
     */
    static double[] excess(SurveyGrid grid, double[] residual) {
        int n = residual.length;
        int half = (int) Math.max(8, Math.round(EXCESS_REACH_EV / grid.step));
        int stride = Math.max(1, half / 4);
        double[] out = new double[n];
        double before = 1;
        int beforeAt = 0;
        for (int i = 0; i < n + stride; i += stride) {
            int centre = Math.min(i, n - 1);
            int from = Math.max(0, centre - half);
            int to = Math.min(n, centre + half + 1);
            double[] squares = new double[to - from];
            for (int k = from; k < to; k++) squares[k - from] = residual[k] * residual[k];
            java.util.Arrays.sort(squares);
            int kept = Math.max(1, 3 * squares.length / 4);
            double sum = 0;
            for (int k = 0; k < kept; k++) sum += squares[k];
            double now = sum / kept / LOWER_QUARTERS;
            for (int k = beforeAt; k <= centre; k++) {
                double share = centre == beforeAt ? 1 : (double) (k - beforeAt) / (centre - beforeAt);
                out[k] = before + share * (now - before);
            }
            if (i == 0) out[0] = now;
            before = now;
            beforeAt = centre;
        }
        return out;
    }

    private static double sq(double x) {
        return x * x;
    }

    /** Variance of the slope per eV that makes departures of a size over a scale. */
    private static double bend(double size, double scaleEv) {
        return 3 * size * size / (scaleEv * scaleEv * scaleEv);
    }

    static double[] smooth(double[] y) {
        int n = y.length;
        double[] s = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            int count = 0;
            for (int k = Math.max(0, i - 2); k <= Math.min(n - 1, i + 2); k++) {
                sum += y[k];
                count++;
            }
            s[i] = sum / count;
        }
        return s;
    }

    /** Running maximum or minimum over {@code half} channels to either side. */
    static double[] extreme(double[] y, int half, boolean maximum) {
        int n = y.length;
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double best = y[i];
            for (int k = Math.max(0, i - half); k <= Math.min(n - 1, i + half); k++) {
                best = maximum ? Math.max(best, y[k]) : Math.min(best, y[k]);
            }
            out[i] = best;
        }
        return out;
    }
}
