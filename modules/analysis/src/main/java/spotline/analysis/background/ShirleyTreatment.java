package spotline.analysis.background;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;

/** What both Shirley backgrounds refuse, and how a fixed point becomes a subtraction. */
final class ShirleyTreatment {
    /** A fall between the ends counts as noise up to this many standard uncertainties; common practice, no source. */
    private static final double NOISE = 3;

    /**
     * A peak has to stand above the high end by this many standard uncertainties in some run of {@link #RUN} channels or
     * more; derived by simulation: of 300 noisy steps without a peak, 99 of 100 stay under 3.7.
     */
    private static final double EVIDENCE = 4;

    private static final int RUN = 3;

    /**
     * Standard uncertainties an area should have. Derived by simulation: where it has 2 or 3, many draws are refused and the
     * mean of the others is up to half too high; from 4 on the mean is right within a tenth of the uncertainty.
     */
    private static final double SECURE = 4;

    private ShirleyTreatment() {}

    static Outcome<Subtraction> treat(
            Region region,
            double[] cap,
            double relativeTolerance,
            int maxIterations,
            Work work,
            Function<ShirleyKernel, BackgroundAdjoint> adjoint) {
        double low = region.low();
        double high = region.high();
        double noise = NOISE * region.differenceUncertainty();
        if (low - high > noise) {
            return region.untreated(
                    "shirley-falling",
                    "The counts fall from " + text(low) + " to " + text(high)
                            + " towards higher binding energy, by " + text(low - high) + " where noise explains "
                            + text(noise) + ", so there is no Shirley background; a linear one can be taken.");
        }
        ShirleyKernel kernel = ShirleyKernel.iterate(
                region.windowEnergies(), region.windowCounts(), low, high, cap, relativeTolerance, maxIterations, work);
        return switch (kernel.ending) {
            case NO_AREA ->
                region.untreated(
                        "shirley-no-area",
                        "The area above the Shirley background is " + text(kernel.area()) + " counts eV after "
                                + kernel.iterations() + " iterations and has to be above 0; a linear background can be"
                                + " taken.");
            case SHRINKING ->
                region.untreated(
                        "shirley-no-peak",
                        "No peak: the area above the Shirley background goes to 0, from " + text(kernel.areas[0])
                                + " to "
                                + text(kernel.area()) + " counts eV, stopped after " + kernel.iterations()
                                + " iterations.");
            case NOT_SETTLED ->
                region.untreated(
                        "shirley-not-converged",
                        "The area above the Shirley background still changes by more than "
                                + Decimal.significant(relativeTolerance, 2) + " of itself after " + kernel.iterations()
                                + " iterations; a linear background can be taken.");
            case CONVERGED -> converged(region, kernel, adjoint);
        };
    }

    private static Outcome<Subtraction> converged(
            Region region, ShirleyKernel kernel, Function<ShirleyKernel, BackgroundAdjoint> adjoint) {
        double rise = strongestRise(region);
        if (region.scan.countsKnown() && rise < EVIDENCE) {
            return region.untreated(
                    "shirley-no-peak",
                    "No peak: the strongest run of " + RUN + " or more channels stands " + Decimal.fixed(rise, 1)
                            + " standard uncertainties above the high end of the window, where "
                            + Decimal.significant(EVIDENCE, 2) + " are needed to tell a peak from a noisy step.");
        }
        Subtraction.Convergence convergence = new Subtraction.Convergence(
                kernel.iterations(), true, kernel.limitedChannels(), OptionalDouble.empty());
        Subtraction subtraction = new Subtraction(region, kernel.background, adjoint.apply(kernel), convergence);
        List<Finding> findings = new ArrayList<>(region.findings);
        double u = subtraction.netArea().standardUncertainty().orElse(0);
        double area = subtraction.netArea().value();
        if (area < SECURE * u) {
            findings.add(Finding.caution(
                            "shirley-weak",
                            "The area above the Shirley background is " + Decimal.fixed(area / u, 1)
                                    + " of its standard uncertainties; under " + Decimal.significant(SECURE, 2)
                                    + " the iteration settles more readily on areas that are too high, and a linear"
                                    + " background is the safer one.")
                    .in(region.scan.label()));
        }
        return Outcome.done(subtraction, findings);
    }

    /**
     * Largest rise of any run of channels above the average of the high end, in standard uncertainties of their sum;
     * not looked for further once it is enough.
     *
     * <p>A Shirley background is a running average of the data that ends at the high end's level, so without channels
     * above that level there is none; noise on a bare step lets the iteration settle on a peak that is not there.
     */
    private static double strongestRise(Region region) {
        double[] counts = region.windowCounts();
        double high = region.high();
        double perChannelSquared = Math.max(0, high) / region.endpointChannels;
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i + RUN <= counts.length; i++) {
            double sum = 0;
            for (int j = i; j < counts.length; j++) {
                sum += counts[j];
                int length = j - i + 1;
                if (length < RUN) continue;
                double variance = sum + length * length * perChannelSquared;
                double rise = sum - length * high;
                if (variance > 0) best = Math.max(best, rise / Math.sqrt(variance));
                if (best >= EVIDENCE) return best;
            }
        }
        return best;
    }

    /** From the window and its ends to the channels of the region. */
    static double[] gradient(Region region, ShirleyKernel.Derivative derivative) {
        double[] gradient = new double[region.counts.length];
        System.arraycopy(derivative.counts(), 0, gradient, region.from, region.channels());
        region.addEndpoints(derivative.low(), derivative.high(), gradient);
        return gradient;
    }

    private static String text(double value) {
        return Decimal.significant(value, 4);
    }
}
