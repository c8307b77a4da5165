package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.reference.MeanFreePath;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.RunView;
import spotline.run.SpotView;

/**
 * Two lines of one element, each over its cross section, its transmission and kinetic energy to the power 0.75. A ratio
 * other than 1 that an organic overlayer explains is no disagreement: exp(-d (1/L1 - 1/L2)), L by Seah and Spencer 2011.
 */
final class SecondLine {
    static final Limit FACTOR = Limit.own("secondLineFactor", 1.15, "factor", Limit.PRACTICE);
    static final Limit OVERLAYER = Limit.own("secondLineOverlayerNm", 3, "nm", Limit.PRACTICE);

    private static final double POWER = 0.75;

    private SecondLine() {}

    private record Amount(Intensity intensity, double value, double relativeU, double kineticEv) {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Amount> amounts = new ArrayList<>();
        for (MeasuredIntensity m : spot.result().intensities()) {
            if (m.basis() == Basis.NARROW && m.intensity().detected()) {
                amount(run, spot, m.intensity()).ifPresent(amounts::add);
            }
        }
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (int i = 0; i < amounts.size(); i++) {
            for (int k = i + 1; k < amounts.size(); k++) {
                Amount a = amounts.get(i);
                Amount b = amounts.get(k);
                boolean same = a.intensity()
                        .line()
                        .element()
                        .equals(b.intensity().line().element());
                if (!same
                        || a.intensity()
                                .line()
                                .whole()
                                .equals(b.intensity().line().whole())) continue;
                looked = true;
                Amount slow = a.kineticEv() < b.kineticEv() ? a : b;
                disagree(slow, slow == a ? b : a, limits).ifPresent(findings::add);
            }
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no element was measured by two lines");
    }

    private static Optional<Amount> amount(RunView run, SpotView spot, Intensity i) {
        Optional<LinkedSpectrum> spectrum = spot.result().spectra().stream()
                .filter(s -> s.label().equals(i.spectrum()))
                .findFirst();
        if (spectrum.isEmpty()) return Optional.empty();
        double photon = spectrum.get().scan().photonEnergyEv();
        double kinetic = photon - i.peakEv();
        double sigma = run.reference().crossSection(i.line(), photon).orElse(0);
        if (!(sigma > 0) || !(kinetic > 0)) return Optional.empty();
        double area = i.area().times(i.wholePerWindow()).value();
        double seconds = spectrum.get().scan().secondsPerChannel().orElse(1);
        double value =
                area / (sigma * seconds * spectrum.get().transmission().at(kinetic) * Math.pow(kinetic / 1000, POWER));
        double u = i.area().times(i.wholePerWindow()).standardUncertainty().orElse(0) / area;
        return Optional.of(new Amount(i, value, u, kinetic));
    }

    private static Optional<Finding> disagree(Amount slow, Amount fast, Limits limits) {
        double ratio = slow.value() / fast.value();
        double u = 3 * Math.hypot(slow.relativeU(), fast.relativeU());
        double factor = limits.of(FACTOR);
        double path = 1 / MeanFreePath.organicEal(slow.kineticEv()) - 1 / MeanFreePath.organicEal(fast.kineticEv());
        double lowest = Math.exp(-limits.of(OVERLAYER) * path) / factor * (1 - u);
        if (ratio <= factor * (1 + u) && ratio >= lowest) return Optional.empty();
        return Optional.of(Finding.caution(
                        "second-line-disagrees",
                        Rule.words(
                                "%s gives %.2f of the amount that %s gives (limits %.2f to %.2f, an overlayer up to"
                                        + " %.0f nm thick allowed for).",
                                slow.intensity().line(),
                                ratio,
                                fast.intensity().line(),
                                lowest,
                                factor * (1 + u),
                                limits.of(OVERLAYER)))
                .in(slow.intensity().spectrum()));
    }
}
