package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.holder.SpectrumRole;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Whether a line gains a part at lower binding energy when its spot is sputtered: a metal reduced by the ions.
 *
 * <p>Shares of the net area below the first scan's top less 1 eV, over a straight background in one window. Where every
 * line moves alike the charge moved; a line is told of only if another moved less. Source: common practice, no source.
 */
final class Sputtering {
    static final Limit SHARE = Limit.own("reducedShare", 0.10, "of the line", Limit.PRACTICE);
    static final Limit SIGMAS = Limit.own("reducedSigmas", 4, "u", Limit.PRACTICE);

    private static final double BELOW_TOP_EV = 1;
    private static final int ENDS = 5;

    private Sputtering() {}

    private record Part(double share, double u) {}

    private record Gain(Intensity line, LinkedSpectrum etched, double gain, double u) {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Gain> gains = new ArrayList<>();
        for (MeasuredIntensity m : spot.result().intensities()) {
            Intensity i = m.intensity();
            if (m.basis() != Basis.NARROW || !i.detected()) continue;
            Optional<LinkedSpectrum> before = spot.result().spectra().stream()
                    .filter(s -> s.label().equals(i.spectrum()))
                    .findFirst();
            Optional<LinkedSpectrum> after = spot.result().spectra().stream()
                    .filter(s -> s.role() == SpectrumRole.ETCH && !s.survey())
                    .filter(s ->
                            before.isPresent() && s.region().equals(before.get().region()))
                    .reduce((a, b) -> b);
            if (before.isEmpty() || after.isEmpty()) continue;
            Optional<Part> first = part(before.get().scan(), i);
            Optional<Part> last = part(after.get().scan(), i);
            if (first.isEmpty() || last.isEmpty()) continue;
            gains.add(new Gain(
                    i,
                    after.get(),
                    last.get().share() - first.get().share(),
                    Math.hypot(last.get().u(), first.get().u())));
        }
        if (gains.isEmpty()) return RuleState.notChecked("no line was measured before and after sputtering");
        double least = gains.stream().mapToDouble(Gain::gain).min().orElse(0);
        double common = gains.size() > 1 ? Math.max(0, least) : 0;
        List<Finding> findings = new ArrayList<>();
        for (Gain g : gains) {
            double own = g.gain() - common;
            if (own <= limits.of(SHARE) || own <= limits.of(SIGMAS) * g.u()) continue;
            findings.add(Finding.caution(
                            "sputter-reduction",
                            Rule.words(
                                    "%.0f %% of %s moved to lower binding energies with sputtering (limit %.0f %%):"
                                            + " reduction by the ions.",
                                    100 * own, g.line().line(), 100 * limits.of(SHARE)))
                    .in(g.etched().label()));
        }
        return RuleState.of(findings);
    }

    private static Optional<Part> part(BindingScan scan, Intensity i) {
        Window window = i.window();
        int from = Math.max(0, scan.firstAtOrAbove(window.lowEv()));
        int to = Math.min(scan.channels() - 1, scan.lastAtOrBelow(window.highEv()));
        int n = to - from + 1;
        if (n < 3 * ENDS || !scan.countsKnown()) return Optional.empty();
        double low = 0;
        double high = 0;
        for (int k = 0; k < ENDS; k++) {
            low += scan.counts(from + k) / ENDS;
            high += scan.counts(to - k) / ENDS;
        }
        double all = 0;
        double below = 0;
        double variance = 0;
        for (int k = from; k <= to; k++) {
            double net = scan.counts(k) - low - (high - low) * (k - from) / (n - 1);
            all += net;
            if (scan.energy(k) > i.peakEv() - BELOW_TOP_EV) continue;
            below += net;
            variance += scan.counts(k) + low / ENDS;
        }
        return all > 0 ? Optional.of(new Part(below / all, Math.sqrt(variance) / all)) : Optional.empty();
    }
}
