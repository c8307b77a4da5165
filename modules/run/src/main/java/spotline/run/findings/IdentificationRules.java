package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.Identification;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.reference.ChemicalState;
import spotline.reference.Line;
import spotline.run.FittedPeak;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Identification, doublets and second lines: checks 19 to 24. */
final class IdentificationRules {
    private static final Limit EXPECTED = Limit.own("secondLineExpected", 8, "sigma", PRACTICE);
    private static final Limit SEEN = Limit.own("secondLineSeen", 1.5, "sigma", PRACTICE);
    private static final Limit BAND = Limit.own("stateBandEv", 0.3, "eV", PRACTICE);

    private IdentificationRules() {}

    static List<Rule> rules() {
        return List.of(
                Rule.ofSpot(
                        19,
                        "one-line-only",
                        "An element claimed by one line whose second line should be seen and is not",
                        Severity.CAUTION,
                        List.of(EXPECTED, SEEN),
                        IdentificationRules::oneLine),
                Rule.ofSpot(
                        20,
                        "second-line-disagrees",
                        "Two narrow scans of one element that give two amounts",
                        Severity.CAUTION,
                        List.of(SecondLine.FACTOR, SecondLine.OVERLAYER),
                        SecondLine::check),
                Rule.ofSpot(
                        21,
                        "doublet-ratio",
                        "Area ratio of a doublet off",
                        Severity.CAUTION,
                        List.of(Doublets.RATIO),
                        Doublets::ratio),
                Rule.ofSpot(
                        22,
                        "doublet-splitting",
                        "Splitting of a doublet off",
                        Severity.CAUTION,
                        List.of(Doublets.SPLITTING, Doublets.WIDE_SPLITTING),
                        Doublets::splitting),
                Rule.ofSpot(
                        23,
                        "state-outside-band",
                        "A fitted state outside the binding energies that are reported for it",
                        Severity.CAUTION,
                        List.of(BAND),
                        IdentificationRules::band),
                Rule.ofSpot(
                        24,
                        "x-ray-satellite",
                        "A peak that is an X-ray satellite of another",
                        Severity.NOTE,
                        List.of(Limit.fixed("distance from the predicted place", 1, "eV", Limit.DERIVED)),
                        IdentificationRules::satellite));
    }

    private static RuleState oneLine(RunView run, SpotView spot, Limits limits) {
        Optional<Identification> identification = spot.result().identification();
        if (identification.isEmpty()) return RuleState.notChecked("there is no survey");
        List<Finding> findings = new ArrayList<>();
        for (ElementSeen e : identification.get().elements()) {
            if (e.lines().size() > 1 || spot.atomicPercent(e.element()).isEmpty()) continue;
            for (Evidence.LineMissing missing : e.evidence().missing()) {
                if (missing.expectedSignificance() < limits.of(EXPECTED) || missing.significance() > limits.of(SEEN)) {
                    continue;
                }
                String alternatives = e.evidence().alternatives().isEmpty()
                        ? ""
                        : ": check for " + e.evidence().alternatives().get(0).explanation();
                findings.add(Finding.caution(
                        "one-line-only",
                        Rule.words(
                                "%s is claimed by one line; %s should stand out by %.1f sigma and does by %.1f%s.",
                                e.element(),
                                missing.line(),
                                missing.expectedSignificance(),
                                missing.significance(),
                                alternatives)));
                break;
            }
        }
        return RuleState.of(findings);
    }

    private static RuleState band(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (FittedPeak peak : spot.result().peaks()) {
            Optional<Line> line = Line.find(peak.line());
            OptionalDouble at = peak.referencedEv();
            if (line.isEmpty() || at.isEmpty()) continue;
            Optional<ChemicalState> state = run.reference().chemicalStates(line.get()).stream()
                    .filter(s -> !s.satellite() && s.state().equalsIgnoreCase(peak.peak()))
                    .findFirst();
            if (state.isEmpty()) continue;
            looked = true;
            double allowed = limits.of(BAND) + state.get().halfRangeEv();
            double off = at.getAsDouble() - state.get().valueEv();
            if (Math.abs(off) <= allowed) continue;
            findings.add(Finding.caution(
                            "state-outside-band",
                            Rule.words(
                                    "%s is assigned at %.2f eV in %s; it is reported at %.2f +/- %.2f eV (allowed"
                                            + " %.2f).",
                                    peak.peak(),
                                    at.getAsDouble(),
                                    peak.line(),
                                    state.get().valueEv(),
                                    state.get().halfRangeEv(),
                                    allowed))
                    .in(peak.spectrum()));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no fitted peak is named after a listed state");
    }

    private static RuleState satellite(RunView run, SpotView spot, Limits limits) {
        Optional<Identification.Detail> detail = spot.result().identification().flatMap(Identification::detail);
        if (detail.isEmpty()) return RuleState.notChecked("there is no survey");
        List<Finding> findings = new ArrayList<>();
        for (Feature f : detail.get().features()) {
            for (String explanation : f.explanations()) {
                if (!explanation.startsWith("X-ray satellite")) continue;
                findings.add(Finding.note(
                        "x-ray-satellite",
                        Rule.words(
                                "The peak at %.1f eV as measured is where the %s lies: not an element.",
                                f.peak().energyEv(), explanation)));
                break;
            }
        }
        return RuleState.of(findings);
    }
}
