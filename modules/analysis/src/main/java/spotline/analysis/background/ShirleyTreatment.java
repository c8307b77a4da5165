package spotline.analysis.background;

import java.util.function.Function;
import spotline.core.Decimal;
import spotline.core.Outcome;
import spotline.core.Work;

/** What both Shirley backgrounds refuse, and how a fixed point becomes a subtraction. */
final class ShirleyTreatment {
    /** A fall between the ends counts as noise up to this many standard uncertainties; common practice, no source. */
    private static final double NOISE = 3;

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
            case CONVERGED ->
                Outcome.done(
                        new Subtraction(
                                region,
                                kernel.background,
                                adjoint.apply(kernel),
                                new Subtraction.Convergence(kernel.iterations(), true, kernel.limitedChannels())),
                        region.findings);
        };
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
