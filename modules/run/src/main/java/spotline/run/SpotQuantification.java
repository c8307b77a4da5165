package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    /** The variant of the survey alone. */
    static final String SURVEY = "survey";

    static SpotQuantification of(
            ReferenceData reference,
            SpotInput input,
            double shiftEv,
            List<SpotComposition.Taken> narrow,
            List<SpotComposition.Taken> survey,
            SortedSet<String> declared,
            SortedSet<String> unseen) {
        QuantifySettings settings = input.treatment().quantify();
        SensitivityFactors factors = input.labFactors()
                .orElseGet(() ->
                        new TheoreticalFactors(reference, input.treatment().factors()));
        OptionalDouble angle = settings.angleDeg().isPresent() ? settings.angleDeg() : input.sourceAnalyserAngleDeg();
        SpotComposition composition = new SpotComposition(reference, factors, settings, angle, shiftEv, unseen);
        List<Contribution> primary = composition.primary(narrow, survey, declared);
        List<SpotResult.Variant> variants = new ArrayList<>();
        if (!narrow.isEmpty() && !survey.isEmpty()) {
            variants.add(new SpotResult.Variant(SURVEY, Composition.of(composition.ofSurvey(survey))));
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

    /** The states that peak fits tell apart, shared out inside their elements; those of the energy reference's fit where its scan has no other. */
    static List<StateShare> states(List<LineFit> fits, List<FittedPeak> ofReference, List<Quantified> rows) {
        List<StateShare> states = new ArrayList<>();
        for (LineFit fit : fits) states.addAll(shares(fit.line(), fit.states(), rows));
        Map<Line, List<StateShare.Component>> byLine = new LinkedHashMap<>();
        for (FittedPeak peak : ofReference) {
            Optional<Line> line = Line.find(peak.line());
            if (line.isEmpty() || fits.stream().anyMatch(f -> f.spectrum().equals(peak.spectrum()))) continue;
            byLine.computeIfAbsent(line.get(), l -> new ArrayList<>())
                    .add(new StateShare.Component(peak.peak(), peak.area()));
        }
        byLine.forEach((line, components) -> states.addAll(shares(line, components, rows)));
        return states;
    }

    private static List<StateShare> shares(Line line, List<StateShare.Component> components, List<Quantified> rows) {
        return rows.stream()
                .filter(row -> row.element().equals(line.element()))
                .findFirst()
                .map(row -> StateShare.of(line.element(), line.toString(), row.atomicPercent(), components))
                .orElse(List.of());
    }
}
