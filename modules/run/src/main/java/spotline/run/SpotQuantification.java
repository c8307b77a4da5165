package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedSet;
import spotline.analysis.quantify.Composition;
import spotline.analysis.quantify.Contribution;
import spotline.analysis.quantify.DerivedQuantity;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.analysis.quantify.StateShare;
import spotline.analysis.quantify.TheoreticalFactors;
import spotline.core.Finding;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Everything that is computed from a spot's intensities.
 *
 * @param rows the primary composition
 * @param variants compositions on other bases
 * @param factors what they were quantified with
 */
record SpotQuantification(
        List<Quantified> rows, List<SpotResult.Variant> variants, FactorSet factors, List<Finding> findings) {
    static SpotQuantification of(
            ReferenceData reference,
            SpotInput input,
            double shiftEv,
            List<SpotComposition.Taken> narrow,
            List<SpotComposition.Taken> survey,
            SortedSet<String> declared) {
        QuantifySettings settings = input.treatment().quantify();
        SensitivityFactors factors = input.labFactors()
                .orElseGet(() ->
                        new TheoreticalFactors(reference, input.treatment().factors()));
        OptionalDouble angle = input.sourceAnalyserAngleDeg();
        SpotComposition composition = new SpotComposition(reference, factors, settings, angle, shiftEv);
        List<Contribution> primary = composition.primary(narrow, survey, declared);
        List<SpotResult.Variant> variants = new ArrayList<>();
        if (!narrow.isEmpty() && !survey.isEmpty()) {
            variants.add(new SpotResult.Variant("survey", Composition.of(composition.ofSurvey(survey))));
        }
        for (String symbol : settings.without()) {
            if (primary.stream().noneMatch(c -> c.element().equals(symbol) && c.detected())) continue;
            variants.add(new SpotResult.Variant("without-" + symbol, Composition.without(Set.of(symbol), primary)));
        }
        List<Finding> findings = new ArrayList<>(composition.findings());
        SpotComposition.incomparable(narrow).ifPresent(findings::add);
        findings.addAll(FactorChecks.of(factors.set(), input.treatment(), angle, narrow.isEmpty() ? survey : narrow));
        return new SpotQuantification(Composition.of(primary), variants, factors.set(), findings);
    }

    /** Ratios and sums that the treatment asks for; one with an element without a number has none. */
    static List<SpotResult.Derived> derived(List<DerivedQuantity> wanted, List<Quantified> rows) {
        return wanted.stream()
                .map(quantity -> new SpotResult.Derived(quantity, quantity.of(rows)))
                .toList();
    }

    /** The states that peak fits tell apart, shared out inside their elements. */
    static List<StateShare> states(List<FittedPeak> peaks, List<Quantified> rows) {
        Map<String, List<StateShare.Component>> byLine = new LinkedHashMap<>();
        for (FittedPeak peak : peaks) {
            if (Line.find(peak.line()).isEmpty()) continue;
            byLine.computeIfAbsent(peak.line(), l -> new ArrayList<>())
                    .add(new StateShare.Component(peak.peak(), peak.area()));
        }
        List<StateShare> states = new ArrayList<>();
        byLine.forEach((line, components) -> {
            String element = Line.parse(line).element();
            rows.stream()
                    .filter(row -> row.element().equals(element))
                    .findFirst()
                    .ifPresent(row -> states.addAll(StateShare.of(element, line, row.atomicPercent(), components)));
        });
        return states;
    }
}
