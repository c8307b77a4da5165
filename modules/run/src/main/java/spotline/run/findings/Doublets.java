package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.peakfit.FittedComponent;
import spotline.core.Finding;
import spotline.reference.Doublet;
import spotline.reference.Line;
import spotline.run.LineFit;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Pairs of fitted components that are the two members of a doublet. */
final class Doublets {
    static final Limit RATIO = Limit.own("doubletRatio", 0.10, "relative", Limit.PRACTICE);
    static final Limit SPLITTING = Limit.own("doubletSplittingEv", 0.10, "eV", Limit.PRACTICE);
    static final Limit WIDE_SPLITTING =
            Limit.own("wideDoubletSplittingEv", 0.30, "eV, splittings over 4 eV", Limit.PRACTICE);

    private static final double WIDE = 4;
    /** Components further from the tabulated splitting than this share of it are no pair. */
    private static final double PAIR = 0.25;

    private Doublets() {}

    /** @param high the member with j = l + 1/2, at the lower binding energy */
    record Pair(LineFit fit, Doublet doublet, FittedComponent high, FittedComponent low) {
        double splittingEv() {
            return low.position().value() - high.position().value();
        }
    }

    static List<Pair> pairs(RunView run, SpotView spot) {
        List<Pair> pairs = new ArrayList<>();
        for (LineFit fit : spot.result().fits()) {
            Optional<Doublet> doublet = doublet(run, spot, fit);
            if (doublet.isEmpty()) continue;
            List<FittedComponent> components = fit.result().components();
            for (FittedComponent low : components) {
                Optional<FittedComponent> high = components.stream()
                        .filter(c -> low.partnerOf().isPresent()
                                ? low.partnerOf().get().equals(c.name())
                                : partners(c, low, doublet.get()))
                        .findFirst();
                high.ifPresent(h -> pairs.add(new Pair(fit, doublet.get(), h, low)));
            }
        }
        return pairs;
    }

    static Optional<Doublet> doublet(RunView run, SpotView spot, LineFit fit) {
        double photon = spot.result().spectra().stream()
                .filter(s -> s.label().equals(fit.spectrum()))
                .mapToDouble(s -> s.scan().photonEnergyEv())
                .findFirst()
                .orElse(0);
        return run.reference().doublet(fit.line().whole(), photon);
    }

    /** Two free components about a splitting apart, the second the smaller: two halves of one state. */
    private static boolean partners(FittedComponent high, FittedComponent low, Doublet doublet) {
        boolean free = high.partnerOf().isEmpty() && low.partnerOf().isEmpty() && high != low;
        double apart = low.position().value() - high.position().value();
        return free
                && Math.abs(apart - doublet.splittingEv()) < PAIR * doublet.splittingEv()
                && low.area().value() < high.area().value();
    }

    static RuleState ratio(RunView run, SpotView spot, Limits limits) {
        List<Pair> pairs = pairs(run, spot);
        if (pairs.isEmpty()) return RuleState.notChecked("no doublet was fitted");
        List<Finding> findings = new ArrayList<>();
        for (Pair p : pairs) {
            double expected = p.doublet().areaRatioLowToHigh();
            double ratio = p.low().area().dividedBy(p.high().area()).value();
            double u = p.low()
                    .area()
                    .dividedBy(p.high().area())
                    .standardUncertainty()
                    .orElse(0);
            double off = Math.abs(ratio - expected);
            if (off <= limits.of(RATIO) * expected || off <= 3 * u) continue;
            findings.add(Finding.caution(
                            "doublet-ratio",
                            Rule.words(
                                    "%s : %s is %.2f, expected %.2f within %.0f %%: background end, overlap, or"
                                            + " unlinked components?",
                                    member(p, false), member(p, true), ratio, expected, 100 * limits.of(RATIO)))
                    .in(p.fit().spectrum()));
        }
        return RuleState.of(findings);
    }

    static RuleState splitting(RunView run, SpotView spot, Limits limits) {
        List<Pair> pairs = pairs(run, spot);
        if (pairs.isEmpty()) return RuleState.notChecked("no doublet was fitted");
        List<Finding> findings = new ArrayList<>();
        for (Pair p : pairs) {
            double expected = p.doublet().splittingEv();
            double limit = limits.of(expected > WIDE ? WIDE_SPLITTING : SPLITTING);
            double u = p.low()
                    .position()
                    .minus(p.high().position())
                    .standardUncertainty()
                    .orElse(0);
            double off = Math.abs(p.splittingEv() - expected);
            if (off <= limit || off <= 3 * u) continue;
            findings.add(Finding.caution(
                            "doublet-splitting",
                            Rule.words(
                                    "The splitting of %s is %.2f eV, expected %.2f within %.2f eV: another state or a"
                                            + " misassigned line?",
                                    p.fit().line(), p.splittingEv(), expected, limit))
                    .in(p.fit().spectrum()));
        }
        return RuleState.of(findings);
    }

    private static Line member(Pair p, boolean high) {
        return high ? p.fit().line().high() : p.fit().line().low();
    }
}
