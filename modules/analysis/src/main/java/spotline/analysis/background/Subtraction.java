package spotline.analysis.background;

import java.util.Arrays;
import java.util.Objects;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.core.Work;

/**
 * A background under the channels of a window, and the area above it.
 *
 * <p>Shape: channels are those of the scan, {@link #from} inclusive to {@link #to} exclusive. Units: the scan's ordinate
 * for curves, times eV for areas, before transmission. An area is the sum of net counts times the width each channel
 * stands for.
 *
 * <p>Uncertainty: the area A is a function of the counts y with sensitivities w = dA/dy, so that u(A)^2 = sum w_i^2 y_i
 * for Poisson counts, whether the endpoint channels lie inside the window or beside it. Source: GUM (JCGM 100:2008) 5.1.2.
 */
public final class Subtraction {
    private final int from;
    private final int regionStart;
    private final int scanChannels;
    private final int windowOffset;
    private final boolean countsKnown;
    private final double[] background;
    private final double[] counts;
    private final double[] regionCounts;
    private final double[] widths;
    private final BackgroundAdjoint adjoint;
    private final double[] areaSensitivity;
    private final Estimate netArea;
    private final Convergence convergence;

    /**
     * How an iterative background ended.
     *
     * @param iterations updates made; 0 for a background in closed form
     * @param limitedChannels channels held at a limit taken from the data
     * @param adjustedB parameter B of a loss cross section, eV^2, where the data decided it
     */
    record Convergence(int iterations, boolean converged, int limitedChannels, OptionalDouble adjustedB) {
        static final Convergence CLOSED_FORM = new Convergence(0, true, 0, OptionalDouble.empty());
    }

    Subtraction(Region region, double[] background, BackgroundAdjoint adjoint, Convergence convergence) {
        this.from = region.first + region.from;
        this.regionStart = region.first;
        this.scanChannels = region.scan.channels();
        this.windowOffset = region.from;
        this.countsKnown = region.scan.countsKnown();
        this.background = background;
        this.counts = region.windowCounts();
        this.regionCounts = region.counts;
        this.widths = region.widths();
        this.adjoint = adjoint;
        this.convergence = convergence;
        this.areaSensitivity = netGradient(widths);
        this.netArea = estimate(region.key);
    }

    private Estimate estimate(String key) {
        double area = 0;
        double ifExact = 0;
        for (int i = 0; i < widths.length; i++) {
            area += (counts[i] - background[i]) * widths[i];
            ifExact += widths[i] * widths[i] * Math.max(0, counts[i]);
        }
        double full = poissonVariance(areaSensitivity);
        if (!countsKnown || !(full > 0)) return Estimate.unknown(area);
        return Estimate.of(area, "counting/" + key, Math.sqrt(Math.min(ifExact, full)))
                .with("endpoints/" + key, Math.sqrt(Math.max(0, full - ifExact)));
    }

    private double poissonVariance(double[] gradient) {
        double variance = 0;
        for (int j = 0; j < gradient.length; j++) variance += gradient[j] * gradient[j] * Math.max(0, regionCounts[j]);
        return variance;
    }

    /** Over the region: derivative of a weighted sum of net channels. */
    private double[] netGradient(double[] weights) {
        double[] gradient = adjoint.of(weights);
        for (int j = 0; j < gradient.length; j++) gradient[j] = -gradient[j];
        for (int i = 0; i < weights.length; i++) gradient[windowOffset + i] += weights[i];
        return gradient;
    }

    /** First channel of the window. */
    public int from() {
        return from;
    }

    /** One behind the last channel of the window. */
    public int to() {
        return from + background.length;
    }

    /** @param channel of the scan, {@link #from} to {@link #to} */
    public double background(int channel) {
        return background[index(channel)];
    }

    public double net(int channel) {
        int i = index(channel);
        return counts[i] - background[i];
    }

    /** Energy a channel stands for, eV. */
    public double widthEv(int channel) {
        return widths[index(channel)];
    }

    /** The background of every channel of the window. */
    public double[] backgrounds() {
        return background.clone();
    }

    /** The net ordinate of every channel of the window. */
    public double[] nets() {
        double[] net = new double[background.length];
        for (int i = 0; i < net.length; i++) net[i] = counts[i] - background[i];
        return net;
    }

    /** Everything in the window, background and all. */
    public double grossArea() {
        double sum = 0;
        for (int i = 0; i < widths.length; i++) sum += counts[i] * widths[i];
        return sum;
    }

    /**
     * Area above the background, counts eV, with its contributions {@code counting/KEY} (what it would be if the
     * background were known exactly) and {@code endpoints/KEY} (what the background adds); unknown where the scan's
     * statistics are or where no count was recorded.
     */
    public Estimate netArea() {
        return netArea;
    }

    /** dA/dy of a channel of the scan, eV; 0 for channels the area does not depend on. */
    public double areaSensitivity(int channel) {
        Objects.checkIndex(channel, scanChannels);
        int j = channel - regionStart;
        return j >= 0 && j < areaSensitivity.length ? areaSensitivity[j] : 0;
    }

    /**
     * Sensitivities of any weighted sum of net channels, such as a parameter fitted to them: the background's part
     * included.
     *
     * @param weights one a channel of the window
     * @return derivative with respect to each channel of the whole scan
     */
    public double[] sensitivities(double[] weights) {
        if (weights.length != background.length) {
            throw new IllegalArgumentException(
                    "one weight a channel of the window, " + background.length + ", was " + weights.length);
        }
        double[] all = new double[scanChannels];
        double[] gradient = netGradient(weights);
        System.arraycopy(gradient, 0, all, regionStart, gradient.length);
        return all;
    }

    /**
     * Variance of the background itself, one value a channel of the window, squared counts; not a number where the
     * scan's statistics are unknown.
     */
    public double[] backgroundVariances(Work work) {
        double[] variance = new double[background.length];
        double[] unit = new double[background.length];
        for (int i = 0; i < unit.length; i++) {
            work.check();
            unit[i] = 1;
            variance[i] = countsKnown ? poissonVariance(adjoint.of(unit)) : Double.NaN;
            unit[i] = 0;
        }
        return variance;
    }

    /** Updates made until the background stood; 0 for one in closed form. */
    public int iterations() {
        return convergence.iterations();
    }

    public boolean converged() {
        return convergence.converged();
    }

    /** Channels held below the data by a data-capped background. */
    public int limitedChannels() {
        return convergence.limitedChannels();
    }

    /** Parameter B of the loss cross section as the data gave it, eV^2; empty where it was fixed or there is none. */
    public OptionalDouble adjustedB() {
        return convergence.adjustedB();
    }

    private int index(int channel) {
        return Objects.checkIndex(channel - from, background.length);
    }

    @Override
    public String toString() {
        return "Subtraction[channels " + from + " to " + to() + ", area " + netArea + "]";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Subtraction that
                && from == that.from
                && Arrays.equals(background, that.background)
                && Arrays.equals(counts, that.counts)
                && netArea.equals(that.netArea);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(background) + from;
    }
}
