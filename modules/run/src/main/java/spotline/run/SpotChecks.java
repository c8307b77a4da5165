package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.core.Finding;

/** Checks of one spot's result against what its record declares and against itself. */
final class SpotChecks {
    /** A survey's value this many times the narrow scan's limit was no slip of the statistics. */
    private static final double PLAINLY_SEEN = 3;

    private final Treatment treatment;
    private final SortedSet<String> declared;

    SpotChecks(Treatment treatment, SortedSet<String> declared) {
        this.treatment = treatment;
        this.declared = declared;
    }

    List<Finding> elements(Optional<Identification> identification, List<Quantified> rows, boolean surveyed) {
        List<Finding> findings = new ArrayList<>();
        for (String symbol : declared) {
            boolean seen = identification.flatMap(i -> i.element(symbol)).isPresent();
            Optional<Quantified> row =
                    rows.stream().filter(r -> r.element().equals(symbol)).findFirst();
            boolean measured = row.isPresent() && !row.get().belowDetection();
            if (seen || measured || (!surveyed && row.isEmpty())) continue;
            String limit = row.flatMap(r -> r.detectionLimit().isPresent()
                            ? Optional.of(" (less than "
                                    + Decimal.significant(r.detectionLimit().getAsDouble(), 2) + " at.%)")
                            : Optional.empty())
                    .orElse("");
            findings.add(Finding.caution(
                    "declared-element-absent", symbol + " is declared and was not found" + limit + "."));
        }
        if (identification.isEmpty()) return findings;
        if (!declared.isEmpty()) {
            for (ElementSeen e : identification.get().elements()) {
                boolean carbonOrOxygen = e.element().equals("C") || e.element().equals("O");
                if (declared.contains(e.element()) || carbonOrOxygen) continue;
                findings.add(
                        e.verdict() == Verdict.PRESENT
                                ? Finding.caution(
                                        "undeclared-element",
                                        e.element() + " is seen and not declared: part of the sample, contamination, or"
                                                + " mount?")
                                : Finding.note(
                                        "undeclared-element",
                                        e.element() + " is possible by one line, and not declared."));
            }
        }
        for (SurveyPeak peak : identification.get().unassigned()) {
            if (peak.significance() < 2 * treatment.identify().minimumSignificance()) continue;
            findings.add(Finding.note(
                    "unassigned-peak",
                    String.format(
                            Locale.ROOT,
                            "A peak at %.1f eV as measured (%.0f sigma) is not assigned.",
                            peak.energyEv(),
                            peak.significance())));
        }
        for (Quantified row : rows) {
            if (!row.belowDetection() || row.detectionLimit().isEmpty()) continue;
            findings.add(Finding.note(
                            "below-critical-level",
                            row.element() + " by " + row.line() + " is below its critical level: reported as less than "
                                    + Decimal.significant(row.detectionLimit().getAsDouble(), 2) + " at.%.")
                    .in(row.spectrum()));
        }
        return findings;
    }

    /**
     * Over the relative limit and over three standard uncertainties of the difference, in which factors that both share
     * cancel. Source: common practice, no source.
     */
    List<Finding> surveyAgainstNarrow(List<Quantified> narrow, List<SpotResult.Variant> variants) {
        List<Finding> findings = new ArrayList<>();
        double relative = treatment.limits().surveyNarrowRelative();
        for (SpotResult.Variant variant : variants) {
            if (!variant.name().equals(SpotQuantification.SURVEY)) continue;
            for (Quantified row : variant.rows()) {
                lost(row, narrow).ifPresent(findings::add);
                Optional<Estimate> primary = narrow.stream()
                        .filter(r -> r.element().equals(row.element()) && r.basis() == Basis.NARROW)
                        .findFirst()
                        .flatMap(Quantified::atomicPercent);
                if (primary.isEmpty() || row.atomicPercent().isEmpty()) continue;
                double a = primary.get().value();
                double b = row.atomicPercent().get().value();
                double u = primary.get()
                        .minus(row.atomicPercent().get())
                        .standardUncertainty()
                        .orElse(Double.POSITIVE_INFINITY);
                if (Math.abs(a - b) > relative * Math.max(a, b) && Math.abs(a - b) > 3 * u) {
                    findings.add(Finding.caution(
                            "survey-narrow-differ",
                            String.format(
                                    Locale.ROOT,
                                    "%s is %.1f at.%% in narrow scans and %.1f at.%% in the survey, %.1f standard"
                                            + " uncertainties apart (limits %.0f %% and 3): different area, time or"
                                            + " window?",
                                    row.element(),
                                    a,
                                    b,
                                    Math.abs(a - b) / u,
                                    100 * relative)));
                }
            }
        }
        return findings;
    }

    /** An element that the survey shows plainly and whose narrow scan shows nothing: the scan or its window missed it. */
    private static Optional<Finding> lost(Quantified survey, List<Quantified> narrow) {
        if (survey.belowDetection() || survey.atomicPercent().isEmpty()) return Optional.empty();
        double percent = survey.atomicPercent().get().value();
        return narrow.stream()
                .filter(r -> r.element().equals(survey.element()) && r.basis() == Basis.NARROW && r.belowDetection())
                .filter(r -> r.detectionLimit().isPresent()
                        && percent > PLAINLY_SEEN * r.detectionLimit().getAsDouble())
                .findFirst()
                .map(r -> Finding.caution(
                                "survey-narrow-differ",
                                String.format(
                                        Locale.ROOT,
                                        "%s is %.1f at.%% in the survey and its narrow scan of %s shows none: look at its"
                                                + " window and at the energy reference.",
                                        r.element(),
                                        percent,
                                        r.line()))
                        .in(r.spectrum()));
    }

    List<Finding> unweighted(List<LinkedSpectrum> spectra) {
        List<Finding> findings = new ArrayList<>();
        for (LinkedSpectrum s : spectra) {
            if (s.scan().countsKnown()) continue;
            findings.add(Finding.note(
                            "statistics-unknown",
                            "The counts cannot be told from the file: no uncertainty and no critical level is given.")
                    .in(s.label()));
        }
        return findings;
    }
}
