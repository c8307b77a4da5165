package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.core.Finding;
import spotline.reference.AugerLine;
import spotline.reference.Elements;
import spotline.reference.XraySource;
import spotline.run.LinkedSpectrum;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.spectra.BindingScan;

/**
 * Whether Auger lines stand where the header's photon energy puts them. Photoelectron lines keep their place on a binding
 * energy scale whatever the source was, Auger lines do not.
 *
 * <p>Beside what the survey's search doubts: an element that is surely there, none of whose Auger lines was found, and a
 * peak that nothing explains where another usual source would put one. Source: derived.
 */
final class PhotonEnergy {
    static final Limit REACH = Limit.own("augerReachEv", 5, "eV", Limit.PRACTICE);
    static final Limit PEAK = Limit.own("augerPeakSignificance", 6, "sigma", Limit.PRACTICE);
    static final Limit ELEMENT = Limit.own("augerElementSignificance", 20, "sigma", Limit.PRACTICE);

    private static final double OTHER_SOURCE = 2;
    private static final List<String> USUAL = List.of("Al Ka", "Mg Ka");

    private PhotonEnergy() {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        Optional<Identification> found = spot.result().identification();
        Optional<BindingScan> survey = spot.result().spectra().stream()
                .filter(LinkedSpectrum::survey)
                .map(LinkedSpectrum::scan)
                .findFirst();
        if (found.isEmpty()) return RuleState.notChecked("there is no survey");
        List<Finding> findings = new ArrayList<>();
        for (HeaderDoubt doubt :
                found.get().detail().map(Identification.Detail::doubts).orElse(List.of())) {
            findings.add(Finding.stop("photon-energy-inconsistent", doubt.sentence()));
        }
        if (findings.isEmpty() && survey.isPresent()) {
            elsewhere(run, found.get(), survey.get(), limits).ifPresent(findings::add);
        }
        return RuleState.of(findings);
    }

    private static Optional<Finding> elsewhere(RunView run, Identification found, BindingScan survey, Limits limits) {
        double photon = survey.photonEnergyEv();
        for (XraySource source : run.reference().xraySources()) {
            boolean other = USUAL.contains(source.name()) && Math.abs(source.photonEnergyEv() - photon) > OTHER_SOURCE;
            if (!other) continue;
            for (ElementSeen e : found.elements()) {
                if (e.verdict() != Verdict.PRESENT || e.significance() < limits.of(ELEMENT)) continue;
                for (AugerLine line : run.reference()
                        .augerLines(Elements.bySymbol(e.element()).orElseThrow())) {
                    double here = line.apparentBindingEv(photon) - found.shiftEv();
                    double there = line.apparentBindingEv(source.photonEnergyEv()) - found.shiftEv();
                    boolean inside = here < survey.range().highEv() - limits.of(REACH)
                            && here > survey.range().lowEv() + limits.of(REACH);
                    if (!inside || seen(e, here, limits)) continue;
                    Optional<SurveyPeak> peak = found.unassigned().stream()
                            .filter(p -> Math.abs(p.energyEv() - there) < limits.of(REACH))
                            .filter(p -> p.significance() > limits.of(PEAK))
                            .findFirst();
                    if (peak.isPresent()) return Optional.of(finding(line, photon, source, peak.get()));
                }
            }
        }
        return Optional.empty();
    }

    /** Whether any of an element's lines was found where the Auger line belongs, or any of its Auger lines at all. */
    private static boolean seen(ElementSeen element, double atEv, Limits limits) {
        return element.lines().stream()
                .anyMatch(
                        l -> Double.isNaN(l.ratioToExpected()) || Math.abs(l.energyEv() - atEv) < 2 * limits.of(REACH));
    }

    private static Finding finding(AugerLine line, double photon, XraySource source, SurveyPeak peak) {
        return Finding.stop(
                "photon-energy-inconsistent",
                Rule.words(
                        "%s does not stand where %.1f eV puts it, and an unexplained peak at %.1f eV (%.0f sigma) does stand"
                                + " where %.1f eV would: the header's photon energy is wrong.",
                        line, photon, peak.energyEv(), peak.significance(), source.photonEnergyEv()));
    }
}
