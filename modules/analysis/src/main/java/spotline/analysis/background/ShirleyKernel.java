package spotline.analysis.background;

import java.util.Arrays;
import spotline.core.Work;

/**
 * The iteration behind both Shirley backgrounds, and the derivative of its fixed point.
 *
 * <p>With net n = y - B and its integral N(E) from the low end, the fixed point obeys B = low + k N with
 * k = (high - low) / N(high end), except in channels held at a cap. Integrals are trapezoids between channels. Given k
 * the equation is a first-order recursion, so derivatives by the implicit function theorem need one backward sweep.
 *
 * <p>Source: D. A. Shirley, Phys. Rev. B 5 (1972) 4709; derivative: derived, closed form.
 */
final class ShirleyKernel {
    enum Ending {
        CONVERGED,
        /** Nothing is left above the background. */
        NO_AREA,
        /** The area still shrinks when the iterations are used up. */
        SHRINKING,
        NOT_SETTLED
    }

    private final double[] step;
    private final double[] counts;
    private final double low;
    private final double high;
    private final double[] cap;
    private final boolean[] limited;

    final double[] background;
    /** Trapezoid area of the net before the first and after each update. */
    double[] areas = new double[0];

    Ending ending = Ending.NOT_SETTLED;

    private ShirleyKernel(double[] energy, double[] counts, double low, double high, double[] cap) {
        this.step = new double[counts.length - 1];
        for (int i = 0; i < step.length; i++) step[i] = energy[i + 1] - energy[i];
        this.counts = counts;
        this.low = low;
        this.high = high;
        this.cap = cap;
        this.background = new double[counts.length];
        this.limited = new boolean[counts.length];
    }

    /** @param cap highest value of the background, one a channel; infinite where there is no limit */
    static ShirleyKernel iterate(
            double[] energy,
            double[] counts,
            double low,
            double high,
            double[] cap,
            double relativeTolerance,
            int maxIterations,
            Work work) {
        ShirleyKernel kernel = new ShirleyKernel(energy, counts, low, high, cap);
        kernel.run(relativeTolerance, maxIterations, work);
        return kernel;
    }

    private void run(double relativeTolerance, int maxIterations, Work work) {
        double[] history = new double[maxIterations + 1];
        place(0, new double[background.length]);
        double[] integral = integral();
        history[0] = integral[integral.length - 1];
        int done = 0;
        while (true) {
            double area = history[done];
            if (!(area > 0)) {
                ending = Ending.NO_AREA;
                break;
            }
            if (done > 0 && Math.abs(area - history[done - 1]) <= relativeTolerance * area) {
                ending = Ending.CONVERGED;
                break;
            }
            if (done == maxIterations) {
                ending = shrinks(history, done) ? Ending.SHRINKING : Ending.NOT_SETTLED;
                break;
            }
            work.check();
            place((high - low) / area, integral);
            integral = integral();
            history[++done] = integral[integral.length - 1];
        }
        areas = Arrays.copyOf(history, done + 1);
    }

    private static boolean shrinks(double[] history, int last) {
        for (int i = last / 2; i < last; i++) {
            if (history[i + 1] >= history[i]) return false;
        }
        return true;
    }

    private void place(double slope, double[] integral) {
        for (int i = 0; i < background.length; i++) {
            double free = low + slope * integral[i];
            limited[i] = free > cap[i];
            background[i] = limited[i] ? cap[i] : free;
        }
    }

    private double[] integral() {
        double[] integral = new double[background.length];
        for (int i = 0; i < step.length; i++) {
            double pair = counts[i] - background[i] + counts[i + 1] - background[i + 1];
            integral[i + 1] = integral[i] + 0.5 * step[i] * pair;
        }
        return integral;
    }

    int iterations() {
        return areas.length - 1;
    }

    double area() {
        return areas[areas.length - 1];
    }

    int limitedChannels() {
        int count = 0;
        for (boolean held : limited) {
            if (held) count++;
        }
        return count;
    }

    /** Derivative of a weighted sum of background channels: towards each count, each cap, and the two ends. */
    record Derivative(double[] counts, double[] caps, double low, double high) {}

    /**
     * Derivative of the fixed point.
     *
     * <p>Differentiating B = low + k N(y - B) in the free channels, B = cap in the others, and k N(high end) =
     * high - low. Capped channels are taken to stay capped.
     */
    Derivative derivative(double[] weights) {
        double k = (high - low) / area();
        double[] trapezoid = new double[counts.length];
        for (int i = 0; i < step.length; i++) {
            trapezoid[i] += 0.5 * step[i];
            trapezoid[i + 1] += 0.5 * step[i];
        }
        double[] integral = integral();
        Sweep wanted = new Sweep(weights, k, integral);
        Sweep total = new Sweep(trapezoid, k, integral);
        // How the weighted sum moves with k, over how the condition on k does.
        double share = wanted.perSlope / (area() - k * total.perSlope);
        double[] towardsCounts = new double[counts.length];
        double[] towardsCaps = new double[counts.length];
        for (int j = 0; j < counts.length; j++) {
            towardsCounts[j] = wanted.counts[j] + share * k * (total.counts[j] - trapezoid[j]);
            towardsCaps[j] = wanted.caps[j] + share * k * total.caps[j];
        }
        return new Derivative(towardsCounts, towardsCaps, wanted.low + share * (k * total.low - 1), share);
    }

    /** Backward sweep: derivative of a weighted sum of background channels at fixed k. */
    private final class Sweep {
        final double[] counts;
        final double[] caps;
        final double low;
        final double perSlope;

        Sweep(double[] weights, double k, double[] integral) {
            int n = weights.length;
            counts = new double[n];
            caps = new double[n];
            double sumOfFree = 0; // multipliers of the free channels above
            double slopeSum = 0;
            for (int j = n - 1; j >= 0; j--) {
                double below = j > 0 ? 0.5 * step[j - 1] : 0;
                double above = j < n - 1 ? 0.5 * step[j] : 0;
                double fromAbove = above * sumOfFree;
                double multiplier;
                if (limited[j]) {
                    multiplier = weights[j] - k * (fromAbove + below * sumOfFree);
                    caps[j] = multiplier;
                } else {
                    multiplier = (weights[j] - k * (fromAbove + below * sumOfFree)) / (1 + k * below);
                    sumOfFree += multiplier;
                    slopeSum += multiplier * integral[j];
                }
                counts[j] = k * (fromAbove + below * sumOfFree);
            }
            low = sumOfFree;
            perSlope = slopeSum;
        }
    }
}
