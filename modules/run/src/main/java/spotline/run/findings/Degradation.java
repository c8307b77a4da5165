package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.SpectrumRole;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * First against last scan of a line: net areas over one straight background in one window, per second. Source: ISO 18554
 * for the idea and the 30 %; the rest common practice, no source.
 */
final class Degradation {
    static final Limit CAUTION = Limit.own("degradationCaution", 0.05, "relative", Limit.PRACTICE);
    static final Limit STOP = Limit.own("degradationStop", 0.30, "relative", "ISO 18554 for the idea, from memory");
    static final Limit SIGMAS = Limit.own("degradationSigmas", 4, "u", Limit.PRACTICE);

    private static final int ENDS = 5;

    private Degradation() {}

    private record Net(double area, double variance) {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (MeasuredIntensity m : spot.result().intensities()) {
            Intensity i = m.intensity();
            if (m.basis() != Basis.NARROW || !i.detected()) continue;
            Optional<LinkedSpectrum> first = spot.result().spectra().stream()
                    .filter(s -> s.label().equals(i.spectrum()))
                    .findFirst();
            if (first.isEmpty()) continue;
            Optional<LinkedSpectrum> last = spot.result().spectra().stream()
                    .filter(s -> comparable(first.get(), s))
                    .reduce((a, b) -> b);
            if (last.isEmpty()) continue;
            looked = true;
            change(first.get(), last.get(), i, limits).ifPresent(findings::add);
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no line was measured twice");
    }

    private static boolean comparable(LinkedSpectrum a, LinkedSpectrum b) {
        return !b.label().equals(a.label())
                && !b.survey()
                && b.region().equals(a.region())
                && b.role() != SpectrumRole.ETCH
                && b.role() != SpectrumRole.BLANK
                && b.scan().countsKnown()
                && a.scan().countsKnown()
                && b.scan().secondsPerChannel().isPresent()
                && a.scan().secondsPerChannel().isPresent()
                && b.scan().passEnergyEv().equals(a.scan().passEnergyEv());
    }

    private static Optional<Finding> change(LinkedSpectrum a, LinkedSpectrum b, Intensity i, Limits limits) {
        Net first = net(a.scan(), i.window());
        Net last = net(b.scan(), i.window());
        if (!(first.area() > 0)) return Optional.empty();
        double change = last.area() / first.area() - 1;
        double u = Math.sqrt(last.variance() + first.variance() * (1 + change) * (1 + change)) / first.area();
        if (Math.abs(change) <= limits.of(CAUTION) || Math.abs(change) <= limits.of(SIGMAS) * u) {
            return Optional.empty();
        }
        boolean stop = Math.abs(change) > limits.of(STOP) + u;
        return Optional.of(Finding.of(
                        stop ? Severity.STOP : Severity.CAUTION,
                        "degradation",
                        Rule.words(
                                "%s %s by %.1f +/- %.1f %% from its first to its last scan (limits %.0f %% and %.0f"
                                        + " %%): the surface changes while it is measured.",
                                i.line(),
                                change < 0 ? "fell" : "rose",
                                100 * Math.abs(change),
                                100 * u,
                                100 * limits.of(CAUTION),
                                100 * limits.of(STOP)))
                .in(b.label()));
    }

    /** Counts eV per second over a straight line between the means of the first and the last channels. */
    private static Net net(BindingScan scan, Window window) {
        int from = Math.max(0, scan.firstAtOrAbove(window.lowEv()));
        int to = Math.min(scan.channels() - 1, scan.lastAtOrBelow(window.highEv()));
        int n = to - from + 1;
        if (n < 3 * ENDS) return new Net(0, 0);
        double low = 0;
        double high = 0;
        for (int k = 0; k < ENDS; k++) {
            low += scan.counts(from + k) / ENDS;
            high += scan.counts(to - k) / ENDS;
        }
        double area = 0;
        double variance = 0;
        for (int k = from; k <= to; k++) {
            double share = (double) (k - from) / (n - 1);
            area += scan.counts(k) - low - share * (high - low);
            variance += scan.counts(k);
        }
        variance += 0.25 * n * n * (low + high) / ENDS;
        double scale = scan.stepEv() / scan.secondsPerChannel().orElse(1);
        return new Net(area * scale, variance * scale * scale);
    }
}
