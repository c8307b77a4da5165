package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.spectra.Window;

/**
 * Narrow scans of the main lines that a survey shows.
 *
 * <p>Time: with A the line's area and B the background under it in counts eV as the survey has them at t seconds a channel,
 * a scan over a window of w eV reaches the relative uncertainty r in {@code t w (A + 2 B) / (A r)^2} seconds, whatever its
 * step; the background is drawn from as much of the scan as lies under the line.
 *
 * <p>Source: Poisson statistics, derived.
 */
final class ScanProposals {
    private static final double BELOW_EV = 8;
    private static final double ABOVE_EV = 12;
    private static final double RELATIVE = 0.03;
    /** A narrow scan is not worth setting up for less: 0.05 s in channels of 0.1 eV (common practice, no source). */
    private static final double LEAST_SECONDS_PER_EV = 0.5;

    /** A doublet split wider is measured by its first member. */
    private static final double WIDEST_SPLITTING_EV = 25;

    private ScanProposals() {}

    static List<ScanProposal> of(
            SurveyModelFit model, List<ElementSeen> elements, double[] background, OptionalDouble secondsPerChannel) {
        List<ScanProposal> proposals = new ArrayList<>();
        SurveyGrid grid = model.templates.grid;
        for (int e = 0; e < model.members.size(); e++) {
            double amount = model.active(e) ? model.amount(e) : 0;
            String symbol = model.members.get(e).symbol();
            if (!(amount > 0) || elements.stream().noneMatch(s -> s.element().equals(symbol))) continue;
            AtomLine line = model.members.get(e).atom().main();
            double low = line.bindingEv() + model.quantileOffset(e, 0.02);
            double last = line.members().get(line.members().size() - 1).bindingEv() - line.bindingEv();
            double high = line.bindingEv() + model.quantileOffset(e, 0.98) + (last > WIDEST_SPLITTING_EV ? 0 : last);
            if (Double.isNaN(low) || Double.isNaN(high) || !grid.holds(low, 1)) continue;
            Window window = new Window(low - BELOW_EV, high + ABOVE_EV);
            double width = high - low + 2 * model.templates.gaussianEv;
            int at = Math.max(0, Math.min(grid.channels - 1, grid.at(0.5 * (low + high))));
            double area = amount * model.templates.area(model.members.get(e).emitter(), line);
            double under = Math.max(1, background[at]) * width;
            double factor = window.widthEv() * (area + 2 * under) / (area * RELATIVE * area * RELATIVE);
            double least = LEAST_SECONDS_PER_EV * window.widthEv();
            OptionalDouble seconds = secondsPerChannel.isPresent() && grid.unitsPerCount == 1
                    ? OptionalDouble.of(Math.max(least, secondsPerChannel.getAsDouble() * factor))
                    : OptionalDouble.empty();
            proposals.add(new ScanProposal(symbol, line.line().toString(), window, RELATIVE, seconds));
        }
        return proposals;
    }
}
