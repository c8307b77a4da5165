package spotline.analysis.peakfit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spotline.analysis.background.FittedBackground;
import spotline.numerics.shape.LineShape;

/**
 * Starting values from the data where the model gives none.
 *
 * <p>Widths start from the width of the tallest peak; positions are placed one after another, each where the most is left
 * that the peaks placed before do not explain; areas share out what stands above the background.
 */
final class FirstGuess {
    /** Passes of sharing out the area; the fit itself does the rest. */
    private static final int ROUNDS = 25;

    private static final double USUAL_FWHM = 1.2;
    /** Start of a Lorentzian beside a Gaussian, as a part of the whole width. */
    private static final double LORENTZIAN_PART = 0.2;

    private final double[] x;
    private final SpectrumModel model;
    private final ParameterGraph graph;
    private final double[] net;
    private final double[] start;
    private final double fwhm;

    private FirstGuess(double[] x, double[] counts, double[] background, SpectrumModel model) {
        this.x = x;
        this.model = model;
        this.graph = model.graph();
        net = new double[x.length];
        for (int i = 0; i < x.length; i++) net[i] = Math.max(0, counts[i] - background[i]);
        start = new double[model.parameterCount()];
        fwhm = widthOfTallest();
    }

    /** Values of all parameters of a model, within their bounds. */
    static double[] of(
            double[] x, double[] counts, Optional<double[]> taken, SpectrumModel model, int endpointChannels) {
        double[] background = taken.orElseGet(() -> line(x, counts, endpointChannels));
        return new FirstGuess(x, counts, background, model).find(counts);
    }

    /** A straight line through the averages of the ends: enough to start from. */
    private static double[] line(double[] x, double[] counts, int endpointChannels) {
        int m = Math.max(1, Math.min(endpointChannels, counts.length / 4));
        double low = Arrays.stream(counts, 0, m).average().orElse(0);
        double high = Arrays.stream(counts, counts.length - m, counts.length)
                .average()
                .orElse(0);
        double[] line = new double[counts.length];
        double span = x[x.length - 1] - x[0];
        for (int i = 0; i < line.length; i++) line[i] = low + (high - low) * (x[i] - x[0]) / span;
        return line;
    }

    private double[] find(double[] counts) {
        List<ParameterGraph.Slot> slots = graph.slots();
        boolean[] waiting = new boolean[slots.size()]; // positions still to be placed
        for (int k = 0; k < slots.size(); k++) {
            ParameterGraph.Slot slot = slots.get(k);
            start[k] = within(slot, slot.start().orElseGet(() -> usual(slot)));
            waiting[k] = isPosition(slot) && slot.start().isEmpty();
        }
        Optional<FittedBackground> background = model.fittedBackground();
        if (background.isPresent()) {
            double[] own = background.get().start(counts);
            System.arraycopy(own, 0, start, slots.size(), own.length);
        }
        for (int k = 0; k < slots.size(); k++) {
            if (!waiting[k]) continue;
            double[] explained = shareOut(waiting);
            start[k] = within(slots.get(k), mostLeft(slots.get(k), explained));
            waiting[k] = false;
        }
        shareOut(waiting);
        return start;
    }

    private boolean isPosition(ParameterGraph.Slot slot) {
        return slot.role() != ParameterGraph.Role.RATIO && graph.parameterOf(slot.value()) == LineShape.POSITION;
    }

    /** A peak that takes its position from one not yet placed is not placed either. */
    private boolean placed(int member, boolean[] waiting) {
        for (int v = graph.first(member); v >= 0; v = graph.leaderOf(v)) {
            int slot = graph.offsetSlot(v);
            if (slot >= 0 && waiting[slot]) return false;
        }
        return true;
    }

    private static double within(ParameterGraph.Slot slot, double value) {
        return Math.max(slot.min(), Math.min(slot.max(), value));
    }

    private double usual(ParameterGraph.Slot slot) {
        boolean bounded = Double.isFinite(slot.min()) && Double.isFinite(slot.max());
        double middle = 0.5 * (slot.min() + slot.max());
        if (slot.role() == ParameterGraph.Role.RATIO) return bounded ? middle : 1;
        int parameter = graph.parameterOf(slot.value());
        if (slot.role() == ParameterGraph.Role.OFFSET) return bounded ? middle : 0;
        if (parameter == LineShape.POSITION) return bounded ? middle : x[x.length / 2];
        if (parameter == LineShape.AREA) return 0;
        LineShape shape = graph.members().get(graph.memberOf(slot.value())).shape();
        String name = shape.parameterNames().get(parameter);
        if (name.equals("lorentzianFwhm")) return LORENTZIAN_PART * fwhm;
        if (Member.isMainWidth(name)) return fwhm;
        if (name.equals("decay")) return 0.5 * fwhm;
        if (name.equals("broadening")) return 0.1 * fwhm;
        return slot.min() + 0.2 * (slot.max() - slot.min());
    }

    private double widthOfTallest() {
        double[] smooth = smoothed(net, 1);
        int top = 0;
        for (int i = 0; i < smooth.length; i++) if (smooth[i] > smooth[top]) top = i;
        int low = top;
        while (low > 0 && smooth[low] > 0.5 * smooth[top]) low--;
        int high = top;
        while (high < x.length - 1 && smooth[high] > 0.5 * smooth[top]) high++;
        double half = Math.min(x[top] - x[low], x[high] - x[top]);
        double width = 2 * half;
        if (!(width > 0)) return USUAL_FWHM;
        return Math.max(0.5 * USUAL_FWHM, Math.min(2.5 * USUAL_FWHM, width));
    }

    private static double[] smoothed(double[] values, int reach) {
        double[] smooth = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int from = Math.max(0, i - reach);
            int to = Math.min(values.length, i + reach + 1);
            double sum = 0;
            for (int j = from; j < to; j++) sum += values[j];
            smooth[i] = sum / (to - from);
        }
        return smooth;
    }

    /** Where, within a slot's bounds, the most is left; in the middle of the bounds where nothing is. */
    private double mostLeft(ParameterGraph.Slot slot, double[] explained) {
        double from = 0;
        if (slot.role() == ParameterGraph.Role.OFFSET) {
            double[] values = model.values(start);
            from = values[graph.leaderOf(slot.value())];
        }
        double step = (x[x.length - 1] - x[0]) / (x.length - 1);
        double[] left = net.clone();
        for (int i = 0; i < left.length; i++) left[i] -= explained[i];
        left = smoothed(left, Math.max(1, (int) Math.round(0.25 * fwhm / step)));
        int best = -1;
        for (int i = 1; i < x.length - 1; i++) {
            double value = x[i] - from;
            if (value < slot.min() || value > slot.max()) continue;
            if (best < 0 || left[i] > left[best]) best = i;
        }
        return best < 0 || !(left[best] > 0) ? usual(slot) : x[best] - from;
    }

    /**
     * Areas without a start of the placed peaks, by the fixed-point iteration of a mixture's maximum likelihood: no area can
     * become negative. The others are left at 0.
     *
     * @return what all placed peaks explain
     */
    private double[] shareOut(boolean[] waiting) {
        List<ParameterGraph.Slot> slots = graph.slots();
        boolean[] open = new boolean[slots.size()];
        double all = Arrays.stream(net).sum() * (x[x.length - 1] - x[0]) / (x.length - 1);
        int count = 0;
        for (int k = 0; k < slots.size(); k++) {
            open[k] = graph.isArea(k)
                    && slots.get(k).start().isEmpty()
                    && placed(graph.memberOf(slots.get(k).value()), waiting);
            if (open[k]) count++;
            if (graph.isArea(k) && slots.get(k).start().isEmpty()) start[k] = 0;
        }
        double[][] unit = new double[slots.size()][];
        double[] fixed = peaks(start);
        for (int k = 0; k < slots.size(); k++) {
            if (!open[k]) continue;
            start[k] = 1;
            unit[k] = peaks(start);
            start[k] = 0;
            for (int i = 0; i < x.length; i++) unit[k][i] = Math.max(0, unit[k][i] - fixed[i]);
        }
        for (int k = 0; k < slots.size(); k++) if (open[k]) start[k] = Math.max(1e-9, all / count);
        double[] explained = new double[x.length];
        for (int round = 0; round <= ROUNDS; round++) {
            for (int i = 0; i < x.length; i++) {
                double sum = fixed[i];
                for (int k = 0; k < open.length; k++) if (open[k]) sum += start[k] * unit[k][i];
                explained[i] = sum;
            }
            if (round == ROUNDS) break;
            for (int k = 0; k < open.length; k++) {
                if (!open[k]) continue;
                double weighted = 0;
                double plain = 0;
                for (int i = 0; i < x.length; i++) {
                    plain += unit[k][i];
                    if (explained[i] > 0) weighted += unit[k][i] * net[i] / explained[i];
                }
                if (plain > 0) start[k] *= weighted / plain;
            }
        }
        for (int k = 0; k < open.length; k++) if (open[k]) start[k] = within(slots.get(k), start[k]);
        return explained;
    }

    private double[] peaks(double[] parameters) {
        double[] values = model.values(parameters);
        double[] sum = new double[x.length];
        for (int m = 0; m < graph.members().size(); m++) {
            double[] curve = model.curve(m, values);
            for (int i = 0; i < x.length; i++) sum[i] += curve[i];
        }
        return sum;
    }
}
