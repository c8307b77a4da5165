package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.reference.Elements;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Whether a window's background ends on a line of another element that is there. */
final class WindowEnds {
    static final Limit NEAR = Limit.own("endNearLineFwhm", 0.6, "FWHM", Limit.PRACTICE);
    static final Limit SHARE = Limit.own("endLineShare", 0.1, "of the line", Limit.PRACTICE);

    private WindowEnds() {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (MeasuredIntensity m : spot.result().intensities()) {
            Intensity i = m.intensity();
            if (m.basis() != Basis.NARROW || !i.detected()) continue;
            looked = true;
            double photon = spot.result().spectra().stream()
                    .filter(s -> s.label().equals(i.spectrum()))
                    .map(LinkedSpectrum::scan)
                    .mapToDouble(s -> s.photonEnergyEv())
                    .findFirst()
                    .orElse(0);
            for (String other : spot.elements()) {
                if (other.equals(i.line().element()) || i.separatedFrom().contains(other)) continue;
                check(run.reference(), spot, i, other, photon, limits, findings);
            }
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no line of a narrow scan was measured");
    }

    private static void check(
            ReferenceData reference,
            SpotView spot,
            Intensity i,
            String other,
            double photon,
            Limits limits,
            List<Finding> findings) {
        double shift = spot.result().charge().shiftEv().orElse(0);
        double own = Math.max(1e-9, spot.percent(i.line().element()))
                * reference.crossSection(i.line().whole(), photon).orElse(1);
        for (LineData data : reference.lines(Elements.bySymbol(other).orElseThrow(), photon)) {
            if (data.naturalWidthEv().orElse(0) > 2) continue;
            double share = spot.percent(other) * data.relativeCrossSection() / own;
            if (share < limits.of(SHARE)) continue;
            for (Line member : data.members()) {
                OptionalDouble at = reference
                        .bindingEnergy(member)
                        .map(LevelEnergy::valueEv)
                        .map(e -> OptionalDouble.of(e - shift))
                        .orElse(OptionalDouble.empty());
                if (at.isEmpty()) continue;
                double near = limits.of(NEAR) * Math.max(i.fwhmEv(), 1);
                boolean high = Math.abs(at.getAsDouble() - i.window().highEv()) < near;
                boolean low = Math.abs(at.getAsDouble() - i.window().lowEv()) < near;
                if (!high && !low) continue;
                findings.add(Finding.caution(
                                "end-on-structure",
                                Rule.words(
                                        "The %s end of the background of %s, at %.1f eV as measured, lies on %s.",
                                        high ? "high" : "low",
                                        i.line(),
                                        high ? i.window().highEv() : i.window().lowEv(),
                                        member))
                        .in(i.spectrum()));
                return;
            }
        }
    }
}
