package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Quantified;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.core.Finding;

/** Checks of one spot's result against what its record declares and against itself. */
final class SpotChecks {
    private final Treatment treatment;
    private final SortedSet<String> declared;

    SpotChecks(Treatment treatment, SortedSet<String> declared) {
        this.treatment = treatment;
        this.declared = declared;
    }

    /** Signs of a wrong header. Nothing is read anew without an analyst's word. */
    List<Finding> header(Optional<Identification> identification) {
        return identification.flatMap(Identification::detail).stream()
                .flatMap(d -> d.doubts().stream())
                .map(SpotChecks::doubt)
                .toList();
    }

    private static Finding doubt(HeaderDoubt doubt) {
        String cure = doubt.kind() == HeaderDoubt.Kind.PHOTON_ENERGY
                ? " Override the photon energy, with the reason, if the record of the measurement bears this out."
                : " Set the file's axis right, and say so in the record, if the measurement bears this out.";
        return Finding.stop("header-doubtful", doubt.sentence() + cure);
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
        findings.addAll(unassigned(identification.get()));
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

    private List<Finding> unassigned(Identification identification) {
        List<Finding> findings = new ArrayList<>();
        List<Feature> features =
                identification.detail().map(Identification.Detail::features).orElse(List.of());
        for (SurveyPeak peak : identification.unassigned()) {
            if (peak.significance() < 2 * treatment.identify().minimumSignificance()) continue;
            String nearest = features.stream()
                    .filter(f -> f.peak().equals(peak) && !f.explanations().isEmpty())
                    .findFirst()
                    .map(f -> " It may be: " + String.join("; ", f.explanations()) + ".")
                    .orElse("");
            findings.add(Finding.note(
                    "unassigned-peak",
                    String.format(
                                    Locale.ROOT,
                                    "A peak at %.1f eV as measured (%.0f sigma) is not assigned.",
                                    peak.energyEv(),
                                    peak.significance())
                            + nearest));
        }
        return findings;
    }

    /** Source: common practice, no source; over 10 % relative and over three combined statistical uncertainties. */
    List<Finding> surveyAgainstNarrow(List<Quantified> narrow, List<SpotResult.Variant> variants) {
        List<Finding> findings = new ArrayList<>();
        double relative = treatment.limits().surveyNarrowRelative();
        for (SpotResult.Variant variant : variants) {
            for (Quantified row : variant.rows()) {
                Optional<Estimate> primary = narrow.stream()
                        .filter(r -> r.element().equals(row.element()))
                        .findFirst()
                        .flatMap(Quantified::atomicPercent);
                if (primary.isEmpty() || row.atomicPercent().isEmpty()) continue;
                double a = primary.get().value();
                double b = row.atomicPercent().get().value();
                double u = row.statisticalU().orElse(Double.POSITIVE_INFINITY);
                // The factors are shared and cancel; two points of at.% are within what two window choices do.
                if (Math.abs(a - b) > relative * Math.max(a, b) && Math.abs(a - b) > 3 * u && Math.abs(a - b) > 2) {
                    findings.add(Finding.note(
                            "survey-narrow-differ",
                            String.format(
                                    Locale.ROOT,
                                    "%s is %.1f at.%% in narrow scans and %.1f at.%% in the survey (limit %.0f %%).",
                                    row.element(),
                                    a,
                                    b,
                                    100 * relative)));
                }
            }
        }
        return findings;
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
