package spotline.analysis.background;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import spotline.core.Work;

/**
 * Electrons that lost energy once: {@code S_i = sum over j < i of K(E_i - E_j) w_j x_j}, and its transpose.
 *
 * <p>On an even grid K is a table; above {@link #TABLE_CHANNELS} channels the sum is a Fourier product, so that a survey
 * costs n log n. An uneven grid needs K for every pair of channels.
 */
final class LossConvolution {
    /** Up to here the double sum is faster than three Fourier transforms or about as fast. */
    private static final int TABLE_CHANNELS = 500;
    /** Weights with as few values that are not 0 are summed directly. */
    private static final int SPARSE = 32;

    private static final double EVEN = 1e-6;

    private final double[] energy;
    private final double[] widths;
    private final DoubleUnaryOperator crossSection;
    private final double[] table; // empty on an uneven grid
    private final double[][] spectrum; // of the table; empty where no Fourier product is used
    private final Work work;

    LossConvolution(double[] energy, double[] widths, DoubleUnaryOperator crossSection, Work work) {
        this.energy = energy;
        this.widths = widths;
        this.crossSection = crossSection;
        this.work = work;
        this.table = isEven(energy) ? table(energy, crossSection) : new double[0];
        this.spectrum = table.length > TABLE_CHANNELS ? transformed(table) : new double[0][];
    }

    private static boolean isEven(double[] energy) {
        double step = (energy[energy.length - 1] - energy[0]) / (energy.length - 1);
        for (int i = 1; i < energy.length; i++) {
            if (Math.abs(energy[i] - energy[i - 1] - step) > EVEN * step) return false;
        }
        return true;
    }

    private static double[] table(double[] energy, DoubleUnaryOperator crossSection) {
        double step = (energy[energy.length - 1] - energy[0]) / (energy.length - 1);
        double[] table = new double[energy.length];
        for (int i = 1; i < table.length; i++) table[i] = crossSection.applyAsDouble(i * step);
        return table;
    }

    /** Cross section for the loss between two channels; 0 unless the first is the higher. */
    private double between(int high, int low) {
        if (high <= low) return 0;
        return table.length > 0 ? table[high - low] : crossSection.applyAsDouble(energy[high] - energy[low]);
    }

    /** What the channels below send to one, in the order of the channels. */
    private double arriving(int at, double[] weighted) {
        double sum = 0;
        if (table.length == 0) {
            for (int j = 0; j < at; j++) sum += between(at, j) * weighted[j];
            return sum;
        }
        double[] even = table;
        for (int j = 0; j < at; j++) sum += even[at - j] * weighted[j];
        return sum;
    }

    /**
     * Solves y = primary + b K y: losses any number of times.
     *
     * <p>Channel by channel, because each channel's losses come from the channels below it alone.
     */
    double[] multiplied(double[] primary, double b) {
        double[] spectrum = primary.clone();
        double[] weighted = new double[primary.length];
        for (int i = 0; i < spectrum.length; i++) {
            spectrum[i] += b * arriving(i, weighted);
            weighted[i] = widths[i] * spectrum[i];
        }
        return spectrum;
    }

    double[] apply(double[] values) {
        int n = values.length;
        double[] weighted = new double[n];
        for (int j = 0; j < n; j++) weighted[j] = values[j] * widths[j];
        if (spectrum.length > 0) return Arrays.copyOf(product(weighted, false), n);
        double[] sums = new double[n];
        for (int i = 1; i < n; i++) {
            if (table.length == 0) work.check();
            sums[i] = arriving(i, weighted);
        }
        return sums;
    }

    /** {@code sum over i > j of weights_i K(E_i - E_j) w_j}, one value a channel j. */
    double[] transpose(double[] weights) {
        int n = weights.length;
        int present = 0;
        for (double weight : weights) {
            if (weight != 0) present++;
        }
        double[] sums;
        if (spectrum.length > 0 && present > SPARSE) {
            sums = Arrays.copyOf(product(weights, true), n);
        } else {
            sums = new double[n];
            for (int i = 1; i < n; i++) {
                if (weights[i] == 0) continue;
                if (table.length == 0) work.check();
                for (int j = 0; j < i; j++) sums[j] += weights[i] * between(i, j);
            }
        }
        for (int j = 0; j < n; j++) sums[j] *= widths[j];
        return sums;
    }

    private double[] product(double[] values, boolean transposed) {
        double[][] parts = transformed(values);
        for (int k = 0; k < parts[0].length; k++) {
            double imaginary = transposed ? -spectrum[1][k] : spectrum[1][k];
            double real = parts[0][k] * spectrum[0][k] - parts[1][k] * imaginary;
            parts[1][k] = parts[0][k] * imaginary + parts[1][k] * spectrum[0][k];
            parts[0][k] = real;
        }
        FastFourierTransformer.transformInPlace(parts, DftNormalization.STANDARD, TransformType.INVERSE);
        return parts[0];
    }

    /** Padded with as many zeros again, so that nothing wraps around. */
    private static double[][] transformed(double[] values) {
        int size = Integer.highestOneBit(2 * values.length - 1) << 1;
        double[][] parts = {Arrays.copyOf(values, size), new double[size]};
        FastFourierTransformer.transformInPlace(parts, DftNormalization.STANDARD, TransformType.FORWARD);
        return parts;
    }
}
