package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.Verdict;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.CarbonOrigin;
import spotline.holder.Sample;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Quantification: checks 46 to 54. Those of the factors are made where the composition is computed. */
final class QuantityRules {
    private static final Limit CARBON = Limit.own("mostCarbonAtPercent", 60, "at.%", PRACTICE);
    private static final Limit DIGITS = Limit.own("digitsShare", 0.1, "u", "JCGM 100 (GUM) 7.2.6 for the idea");

    private QuantityRules() {}

    static List<Rule> rules() {
        return List.of(
                made(
                        46,
                        "factors-for-another-background",
                        "Sensitivity factors made for another background, angle or transmission",
                        Severity.STOP,
                        List.of(Limit.fixed("angle", 5, "degrees", PRACTICE)),
                        Set.of("factors-for-another-angle", "reference-factors-missing", "no-sensitivity-factor")),
                made(
                        47,
                        "pass-energies-differ",
                        "Quantified lines measured at different pass energies without cross-calibration",
                        Severity.STOP,
                        List.of(),
                        Set.of("collection-time-unknown")),
                new Rule(
                        48,
                        "survey-narrow-differ",
                        "Compositions of survey and narrow scans that differ",
                        Severity.CAUTION,
                        List.of(
                                Limit.of("limits.surveyNarrowRelative", 0.10, "relative", PRACTICE),
                                Limit.fixed("difference", 3, "u", PRACTICE)),
                        Set.of(),
                        Rule.everySpot(Rule.needs(
                                s -> s.result().variants().stream()
                                        .anyMatch(v -> v.name().equals("survey")),
                                "there is no composition by the survey"))),
                made(
                        49,
                        "below-critical-level",
                        "A value below its critical level",
                        Severity.NOTE,
                        List.of(),
                        Set.of("statistics-unknown")),
                Rule.ofSpot(
                        50,
                        "elements-left-out",
                        "A composition brought to 100 % without an element that is there",
                        Severity.NOTE,
                        List.of(),
                        QuantityRules::leftOut),
                Rule.ofSpot(
                        51,
                        "carbon-dominates",
                        "Carbon that dominates an inorganic sample",
                        Severity.CAUTION,
                        List.of(CARBON),
                        QuantityRules::carbon),
                Rule.ofSpot(
                        52,
                        "more-digits-than-known",
                        "A stated value with more digits than its uncertainty bears",
                        Severity.NOTE,
                        List.of(DIGITS),
                        QuantityRules::digits),
                new Rule(
                        53,
                        "one-spot-only",
                        "One spot of a sample only",
                        Severity.CAUTION,
                        List.of(),
                        Set.of("places-differ", "not-measured-everywhere"),
                        run -> Map.of("", RuleState.PASSED)),
                new Rule(
                        54,
                        "no-anisotropy-factor",
                        "An angle that is not the magic one and no anisotropy factor",
                        Severity.NOTE,
                        List.of(Limit.fixed("distance from 54.7 degrees", 5, "degrees", PRACTICE)),
                        Set.of(),
                        Rule.everySpot((run, s, in) -> run.plan()
                                        .file()
                                        .instrument()
                                        .sourceAnalyserAngleDeg()
                                        .isPresent()
                                ? RuleState.PASSED
                                : RuleState.notChecked("the angle between source and analyser is not declared"))));
    }

    private static Rule made(
            int number, String id, String title, Severity severity, List<Limit> limits, Set<String> adopted) {
        return Rule.elsewhere(
                number,
                id,
                title,
                severity,
                limits,
                adopted,
                Rule.needs(s -> !s.result().composition().isEmpty(), "nothing was quantified"));
    }

    private static RuleState leftOut(RunView run, SpotView spot, Limits limits) {
        Optional<Identification> identification = spot.result().identification();
        if (identification.isEmpty()) return RuleState.notChecked("there is no survey");
        if (spot.result().composition().isEmpty()) return RuleState.notChecked("nothing was quantified");
        List<String> left = new ArrayList<>();
        for (ElementSeen e : identification.get().elements()) {
            if (e.verdict() == Verdict.PRESENT && spot.row(e.element()).isEmpty()) left.add(e.element());
        }
        if (left.isEmpty()) return RuleState.PASSED;
        return RuleState.fired(Finding.note(
                "elements-left-out",
                "The composition is of the elements listed: " + String.join(", ", left)
                        + (left.size() == 1 ? " is" : " are") + " seen in the survey and not among them."));
    }

    private static RuleState carbon(RunView run, SpotView spot, Limits limits) {
        Optional<Sample> sample = spot.spot().sample();
        if (sample.isEmpty() || sample.get().carbon() == CarbonOrigin.UNKNOWN) {
            return RuleState.notChecked("it is not declared where the carbon comes from");
        }
        if (sample.get().carbon() == CarbonOrigin.OWN) return RuleState.notChecked("the carbon is the sample's own");
        if (spot.atomicPercent("C").isEmpty()) return RuleState.notChecked("there is no amount of carbon");
        if (spot.percent("C") <= limits.of(CARBON)) return RuleState.PASSED;
        return RuleState.fired(Finding.caution(
                "carbon-dominates",
                Rule.words(
                        "Carbon is %.0f at.%% on an inorganic sample (limit %.0f): overlayer or tape; ratios of what"
                                + " lies below need the overlayer treatment.",
                        spot.percent("C"), limits.of(CARBON))));
    }

    /** Reference energies that the analyst states. Everything computed is shown with the digits it bears. */
    private static RuleState digits(RunView run, SpotView spot, Limits limits) {
        JsonNode charge = spot.treatment().json().path("charge");
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (String[] pair : new String[][] {
            {"referenceEv", "referenceUncertaintyEv"},
            {"checkEv", "checkUncertaintyEv"},
            {"workFunctionEv", "workFunctionUncertaintyEv"}
        }) {
            if (!charge.path(pair[0]).isNumber() || !charge.path(pair[1]).isNumber()) continue;
            looked = true;
            double u = charge.path(pair[1]).doubleValue();
            BigDecimal value = new BigDecimal(charge.path(pair[0]).asText()).stripTrailingZeros();
            double last = Math.pow(10, -value.scale());
            if (value.scale() <= 0 || last >= limits.of(DIGITS) * u * (1 - 1e-9)) continue;
            findings.add(Finding.note(
                    "more-digits-than-known",
                    Rule.words(
                            "The setting charge.%s is stated as %s eV with a standard uncertainty of %s eV: digits"
                                    + " below %.1f u say nothing.",
                            pair[0], value.toPlainString(), charge.path(pair[1]).asText(), limits.of(DIGITS))));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no value is stated with its uncertainty");
    }
}
