package spotline.analysis.background;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import spotline.core.Decimal;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Work;

/**
 * What the Tougaard backgrounds share: the subtraction for any loss cross section, with its parameter B fixed or adjusted,
 * and the derivative with respect to the data.
 *
 * <p>With S the once-scattered part of y - low for B = 1, the background is low + b S. Adjusted, b makes the mean net of
 * the high endpoint channels inside the window 0: b = (high - low) / mean of S there, which is differentiated along.
 */
final class LossBackground {
    /** A loss counts as measured above this many standard uncertainties; common practice, no source. */
    private static final double NOISE = 3;

    private LossBackground() {}

    static void checkAboveZero(String field, double value, List<Problem> problems) {
        if (!(value > 0 && Double.isFinite(value))) problems.add(new Problem(field, value + " eV^2", "above 0 eV^2"));
    }

    static String words(OptionalDouble b) {
        return b.isPresent() ? ", B " + Decimal.significant(b.getAsDouble(), 5) + " eV^2" : ", B adjusted";
    }

    static Outcome<Subtraction> subtract(Region region, DoubleUnaryOperator perB, OptionalDouble fixedB, Work work) {
        Scattering scattering = new Scattering(region, perB, work);
        if (fixedB.isEmpty()) return adjusted(scattering);
        double b = fixedB.getAsDouble();
        return scattering.done(b, weights -> scattering.fixedGradient(b, weights), Subtraction.Convergence.CLOSED_FORM);
    }

    private static Outcome<Subtraction> adjusted(Scattering scattering) {
        Region region = scattering.region;
        double rise = region.high() - region.low();
        double noise = NOISE * region.differenceUncertainty();
        if (rise < -noise) {
            return region.untreated(
                    "tougaard-falling",
                    "The counts fall by " + text(-rise) + " towards higher binding energy where noise explains "
                            + text(noise) + ", so no loss cross section can be adjusted to them.");
        }
        double[] end = new double[region.counts.length];
        region.addEndpoints(0, 1, end);
        double atEnd = dot(end, scattering.once);
        double limit = region.scan.countsKnown() ? NOISE * scattering.uncertainty(end) : 0;
        if (!(atEnd > limit)) {
            return region.untreated(
                    "tougaard-no-peak",
                    "No peak: what stands above the low end scatters " + text(atEnd)
                            + " into the high end per eV^2 of B, where noise explains " + text(limit)
                            + ", so no loss cross section can be adjusted to it.");
        }
        double b = rise / atEnd;
        BackgroundAdjoint adjoint = weights -> {
            double share = dot(weights, scattering.once) / atEnd;
            double[] both = weights.clone();
            for (int i = 0; i < both.length; i++) both[i] -= share * end[i];
            double[] gradient = scattering.fixedGradient(b, both);
            region.addEndpoints(0, share, gradient);
            return gradient;
        };
        return scattering.done(b, adjoint, new Subtraction.Convergence(0, true, 0, OptionalDouble.of(b)));
    }

    /** The once-scattered spectrum of a region, endpoint channels beside the window included. */
    private static final class Scattering {
        final Region region;
        final LossConvolution convolution;
        final double[] once;

        Scattering(Region region, DoubleUnaryOperator perB, Work work) {
            this.region = region;
            this.convolution = new LossConvolution(region.energy, region.regionWidths(), perB, work);
            double low = region.low();
            double[] above = region.counts.clone();
            for (int i = 0; i < above.length; i++) above[i] -= low;
            this.once = convolution.apply(above);
        }

        /** Gradient of a weighted sum of the once-scattered spectrum; weights one a channel of the region. */
        double[] gradient(double[] weights) {
            double[] gradient = convolution.transpose(weights);
            region.addEndpoints(-Arrays.stream(gradient).sum(), 0, gradient);
            return gradient;
        }

        /** Gradient of a weighted sum of low + b S for a b that does not move. */
        double[] fixedGradient(double b, double[] weights) {
            double[] gradient = gradient(weights);
            for (int j = 0; j < gradient.length; j++) gradient[j] *= b;
            region.addEndpoints(Arrays.stream(weights).sum(), 0, gradient);
            return gradient;
        }

        double uncertainty(double[] weights) {
            double[] gradient = gradient(weights);
            double variance = 0;
            for (int j = 0; j < gradient.length; j++) {
                variance += gradient[j] * gradient[j] * Math.max(0, region.counts[j]);
            }
            return Math.sqrt(variance);
        }

        /** @param regionAdjoint takes and gives one value a channel of the region */
        Outcome<Subtraction> done(double b, BackgroundAdjoint regionAdjoint, Subtraction.Convergence convergence) {
            double low = region.low();
            double[] background = new double[region.channels()];
            for (int i = 0; i < background.length; i++) background[i] = low + b * once[region.from + i];
            BackgroundAdjoint adjoint = weights -> {
                double[] padded = new double[region.counts.length];
                System.arraycopy(weights, 0, padded, region.from, weights.length);
                return regionAdjoint.of(padded);
            };
            return Outcome.done(new Subtraction(region, background, adjoint, convergence), region.findings);
        }
    }

    /** What primary electrons become on any grid of their own. */
    static double[] scatter(double[] energy, double[] primary, DoubleUnaryOperator crossSection) {
        if (energy.length != primary.length || energy.length < 2) {
            throw new IllegalArgumentException("2 or more energies with one value each, were " + energy.length
                    + " energies and " + primary.length + " values");
        }
        return new LossConvolution(energy, widths(energy), crossSection, Work.UNWATCHED).multiplied(primary, 1);
    }

    static double[] widths(double[] energy) {
        int last = energy.length - 1;
        double[] widths = new double[energy.length];
        for (int i = 0; i <= last; i++) {
            double span = energy[Math.min(last, i + 1)] - energy[Math.max(0, i - 1)];
            widths[i] = i == 0 || i == last ? span : 0.5 * span;
        }
        return widths;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) sum += a[i] * b[i];
        return sum;
    }

    private static String text(double value) {
        return Decimal.significant(value, 4);
    }
}
