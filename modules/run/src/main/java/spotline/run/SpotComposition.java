package spotline.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.stream.Collectors;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Contribution;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.OverlapSystem;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/** From the intensities of one spot to what each element brings to a composition, on every basis. */
final class SpotComposition {
    /** An intensity with the spectrum it was taken from. */
    record Taken(LinkedSpectrum spectrum, Intensity intensity) {
        String element() {
            return intensity.line().element();
        }
    }

    /** An element's chosen line. */
    private record Row(Taken taken, Estimate factor, Contribution contribution) {
        Row with(Contribution changed) {
            return new Row(taken, factor, changed);
        }
    }

    /** An overlap of more of the window's intensity asks for another line. */
    private static final double OVERLAP_ASKS = 0.1;

    /** An overlap of less of it is taken out and no news. */
    private static final double OVERLAP_TOLD = 0.02;

    private static final double CRITICAL = 1.645;
    private static final double DETECTION = 3.29;

    private final SensitivityFactors factors;
    private final QuantifySettings settings;
    private final OptionalDouble angle;
    private final LineOverlaps overlaps;
    private final SortedSet<String> unseen;
    private final List<Finding> findings = new ArrayList<>();

    /** @param unseen declared elements that the survey's lines do not show: their windows there hold something else */
    SpotComposition(
            ReferenceData reference,
            SensitivityFactors factors,
            QuantifySettings settings,
            OptionalDouble sourceAnalyserAngleDeg,
            double shiftEv,
            SortedSet<String> unseen) {
        this.factors = factors;
        this.unseen = unseen;
        this.settings = settings;
        this.angle = sourceAnalyserAngleDeg;
        this.overlaps =
                new LineOverlaps(reference, factors, sourceAnalyserAngleDeg, shiftEv, settings.overlapRelativeU());
    }

    List<Finding> findings() {
        return findings.stream().distinct().toList();
    }

    /**
     * The primary basis: narrow scans where an element has one; an element seen only in the survey through a line measured
     * in both; the survey alone where there is no narrow scan.
     *
     * @param declared an element that was looked for in the survey and is not there keeps a row with its limit
     */
    List<Contribution> primary(List<Taken> narrow, List<Taken> survey, SortedSet<String> declared) {
        Map<String, Row> rows = rows(narrow, Basis.NARROW, true);
        if (rows.isEmpty()) return ordered(rows(survey, Basis.SURVEY, true));
        Map<String, Row> wide = rows(survey, Basis.LINKED, false);
        Optional<Link> link = link(rows, wide);
        if (link.isEmpty()) {
            wide.values().forEach(seen -> tellUnlinked(seen, rows));
            return ordered(rows);
        }
        for (Row seen : wide.values()) {
            Contribution c = seen.contribution();
            if (rows.containsKey(c.element()) || !(c.detected() || declared.contains(c.element()))) continue;
            rows.put(c.element(), seen.with(link.get().bring(c, settings.linkRelativeU())));
            if (!c.detected()) continue;
            findings.add(Finding.note(
                    "linked-from-survey",
                    c.element() + " has no narrow scan; its " + c.line()
                            + " from the survey was brought in through "
                            + link.get().line() + "."));
        }
        return ordered(rows);
    }

    private void tellUnlinked(Row seen, Map<String, Row> rows) {
        Contribution c = seen.contribution();
        if (!c.detected() || rows.containsKey(c.element())) return;
        findings.add(Finding.caution(
                "not-linked",
                c.element() + " is seen in the survey and has no narrow scan, and no line was measured in both: it is"
                        + " left out of the composition, and the others sum to 100 without it."));
    }

    List<Contribution> ofSurvey(List<Taken> survey) {
        return ordered(rows(survey, Basis.SURVEY, false));
    }

    private static List<Contribution> ordered(Map<String, Row> rows) {
        return rows.values().stream()
                .map(Row::contribution)
                .sorted(Comparator.comparingInt(
                        c -> Elements.bySymbol(c.element()).orElseThrow().z()))
                .toList();
    }

    /** One row an element, by the line that serves best, with what other elements bring into its window taken out. */
    private Map<String, Row> rows(List<Taken> taken, Basis basis, boolean told) {
        Map<String, List<Row>> candidates = new LinkedHashMap<>();
        for (Taken t : taken) {
            row(t, basis)
                    .ifPresent(r -> candidates
                            .computeIfAbsent(t.element(), e -> new ArrayList<>())
                            .add(r));
        }
        Map<String, Row> chosen = new LinkedHashMap<>();
        candidates.forEach((element, rows) -> chosen.put(element, firstDetected(rows)));
        candidates.forEach((element, rows) -> chosen.put(element, clearest(rows, chosen, told)));
        return separated(chosen, told);
    }

    private static Row firstDetected(List<Row> rows) {
        return rows.stream()
                .filter(r -> r.contribution().detected())
                .findFirst()
                .orElse(rows.get(0));
    }

    /** The usual line, unless another element's lines spoil it and one of the element's other lines is less spoilt. */
    private Row clearest(List<Row> rows, Map<String, Row> others, boolean told) {
        Row usual = firstDetected(rows);
        double spoilt = spoilt(usual, others);
        if (spoilt < OVERLAP_ASKS) return usual;
        Row best = rows.stream()
                .filter(r -> r.contribution().detected())
                .min(Comparator.comparingDouble(r -> spoilt(r, others)))
                .orElse(usual);
        if (spoilt(best, others) > 0.5 * spoilt) return usual;
        if (told) {
            findings.add(Finding.note(
                            "line-overlap",
                            usual.contribution().line() + " has lines of other elements in its window: "
                                    + usual.contribution().element() + " is quantified by "
                                    + best.contribution().line() + ".")
                    .in(usual.taken().spectrum().label()));
        }
        return best;
    }

    /** Share of a row's intensity that others bring; 1 for an Auger line or a loss that nobody can compute. */
    private double spoilt(Row row, Map<String, Row> others) {
        if (unquantified(row, others).stream().anyMatch(LineOverlaps.Unquantified::strong)) return 1;
        double sum = 0;
        for (Row other : others.values()) sum += brought(row, other);
        return sum;
    }

    private double brought(Row row, Row other) {
        double own = row.contribution().normalised().value();
        if (sameElement(row, other) || !other.contribution().detected() || !(own > 0)) return 0;
        double share = overlaps.share(row.taken(), row.factor(), other.taken()).value();
        return Math.max(0, share * other.contribution().normalised().value() / own);
    }

    private List<LineOverlaps.Unquantified> unquantified(Row row, Map<String, Row> others) {
        List<String> present = others.values().stream()
                .filter(o -> o.contribution().detected() && !sameElement(o, row))
                .map(o -> o.contribution().element())
                .toList();
        return overlaps.unquantified(row.taken(), present);
    }

    private static boolean sameElement(Row a, Row b) {
        return a.contribution().element().equals(b.contribution().element());
    }

    private Map<String, Row> separated(Map<String, Row> rows, boolean told) {
        List<Row> list = new ArrayList<>(rows.values());
        List<List<Estimate>> shares = new ArrayList<>();
        boolean any = false;
        for (Row own : list) {
            List<Estimate> row = new ArrayList<>();
            for (Row other : list) {
                boolean counts = other.contribution().detected() && !sameElement(own, other);
                Estimate share = counts ? overlaps.share(own.taken(), own.factor(), other.taken()) : Estimate.exact(0);
                any |= share.value() > 0;
                row.add(share);
            }
            shares.add(row);
            if (told) tellUnquantified(own, rows);
        }
        if (!any) return rows;
        List<Estimate> clean = OverlapSystem.solve(
                list.stream().map(r -> r.contribution().normalised()).toList(), shares);
        Map<String, Row> separated = new LinkedHashMap<>();
        for (int i = 0; i < list.size(); i++) {
            Row row = list.get(i);
            double before = row.contribution().normalised().value();
            double removed = (before - clean.get(i).value()) / before;
            boolean touched = shares.get(i).stream().anyMatch(s -> s.value() > 0);
            if (told && touched && row.contribution().detected() && removed > OVERLAP_TOLD) {
                tellRemoved(row, list, shares.get(i), removed);
            }
            separated.put(
                    row.contribution().element(), touched ? row.with(cleaned(row.contribution(), clean.get(i))) : row);
        }
        return separated;
    }

    /** What is left may be less than the uncertainty of what was taken out. */
    private static Contribution cleaned(Contribution c, Estimate left) {
        double u = left.uncertaintyFrom(key -> !key.startsWith("factor/cross section " + c.line()))
                .orElse(0);
        boolean detected = c.detected() && left.value() > CRITICAL * u && left.value() > 0;
        double limit = detected ? c.limitNormalised() : Math.max(c.limitNormalised(), DETECTION * u);
        return new Contribution(c.element(), c.line(), c.spectrum(), c.basis(), c.window(), left, limit, detected);
    }

    private void tellRemoved(Row row, List<Row> list, List<Estimate> shares, double removed) {
        List<String> sources = new ArrayList<>();
        for (int j = 0; j < list.size(); j++) {
            if (shares.get(j).value() > 0)
                sources.add(list.get(j).contribution().element());
        }
        String message = String.format(
                Locale.ROOT,
                "Lines of %s lie in the window of %s: %.0f %% of its intensity was computed to be theirs and taken out.",
                String.join(", ", sources),
                row.contribution().line(),
                100 * removed);
        findings.add((removed > 0.3
                        ? Finding.caution("overlap-taken-out", message)
                        : Finding.note("overlap-taken-out", message))
                .in(row.contribution().spectrum()));
    }

    private void tellUnquantified(Row row, Map<String, Row> rows) {
        for (LineOverlaps.Unquantified other : unquantified(row, rows)) {
            String line = row.contribution().line();
            Finding finding = other.strong()
                    ? Finding.caution(
                            "overlap-not-resolved",
                            other.name() + " may lie under " + line + ", and no other line of "
                                    + row.contribution().element()
                                    + " was measured clear of it: its share is not known.")
                    : Finding.note(
                            "overlap-not-resolved",
                            "A weaker branch of " + other.name() + " may lie under " + line + ".");
            findings.add(finding.in(row.contribution().spectrum()));
        }
    }

    /** Area over collection time, transmission and factor. */
    private Optional<Row> row(Taken taken, Basis basis) {
        Intensity intensity = taken.intensity();
        LinkedSpectrum spectrum = taken.spectrum();
        double hv = spectrum.scan().photonEnergyEv();
        Optional<Estimate> factor = factors.factor(intensity.line(), hv, hv - intensity.peakEv(), angle);
        if (factor.isEmpty()) {
            String message = String.format(
                    Locale.ROOT,
                    "No factor of %s at %.1f eV is in the set \"%s\": it is not quantified%s.",
                    intensity.line(),
                    hv,
                    factors.set().name(),
                    intensity.detected() ? ", and the others would sum to 100 without it" : "");
            findings.add((intensity.detected()
                            ? Finding.stop("no-sensitivity-factor", message)
                            : Finding.note("no-sensitivity-factor", message))
                    .in(spectrum.label()));
            return Optional.empty();
        }
        boolean divided = factors.set().transmission() == FactorSet.Transmission.DIVIDED_OUT;
        double scale = Normalisation.scale(spectrum, intensity, divided);
        double limit = intensity.detectionLimit().orElse(0)
                * intensity.wholePerWindow().value()
                * scale
                / factor.get().value();
        Estimate found = Normalisation.of(spectrum, intensity, divided).dividedBy(factor.get());
        boolean hidden =
                basis != Basis.NARROW && unseen.contains(intensity.line().element());
        // What stands in its window belongs to others; as much of it could hide there.
        if (hidden && intensity.detected()) limit = Math.max(limit, found.value());
        return Optional.of(new Row(
                taken,
                factor.get(),
                new Contribution(
                        intensity.line().element(),
                        intensity.line().toString(),
                        spectrum.label(),
                        basis,
                        intensity.window(),
                        found,
                        limit,
                        intensity.detected() && !hidden)));
    }

    /** The line measured in both with the surest area in the survey. */
    private static Optional<Link> link(Map<String, Row> narrow, Map<String, Row> survey) {
        Link best = null;
        double bestRelative = Double.POSITIVE_INFINITY;
        for (Row s : survey.values()) {
            Row n = narrow.get(s.contribution().element());
            if (n == null || !s.contribution().detected() || !n.contribution().detected()) continue;
            Line line = n.taken().intensity().line();
            if (!line.whole().equals(s.taken().intensity().line().whole())) continue;
            Estimate wide = s.contribution().normalised();
            double relative = wide.standardUncertainty().orElse(wide.value()) / wide.value();
            if (relative < bestRelative) {
                bestRelative = relative;
                best = new Link(line.toString(), n.contribution().normalised(), wide);
            }
        }
        return Optional.ofNullable(best);
    }

    private record Link(String line, Estimate narrow, Estimate survey) {
        Contribution bring(Contribution seen, double relativeU) {
            Estimate ratio = narrow.dividedBy(survey);
            Estimate brought = seen.normalised().times(ratio);
            return new Contribution(
                    seen.element(),
                    seen.line(),
                    seen.spectrum(),
                    Basis.LINKED,
                    seen.window(),
                    brought.with("link/" + seen.line(), brought.value() * relativeU),
                    seen.limitNormalised() * ratio.value(),
                    seen.detected());
        }
    }

    /** Narrow scans compared with no common measure: the reason, or nothing. */
    static Optional<Finding> incomparable(List<Taken> narrow) {
        SortedSet<String> energies = narrow.stream()
                .flatMap(t -> t.spectrum().scan().passEnergyEv().stream().boxed())
                .map(e -> String.format(Locale.ROOT, "%.1f", e))
                .collect(Collectors.toCollection(java.util.TreeSet::new));
        boolean recorded = narrow.stream()
                .allMatch(t -> t.spectrum().transmission().describe().equals(TransmissionSource.RECORDED));
        long timed = narrow.stream()
                .filter(t -> t.spectrum().scan().secondsPerChannel().isPresent())
                .count();
        if (energies.size() > 1 && !recorded) {
            return Optional.of(Finding.stop(
                    "pass-energies-differ",
                    "Quantified lines were measured at pass energies of " + String.join(", ", energies)
                            + " eV with no cross-calibration: their ratio is undefined."));
        }
        if (timed > 0 && timed < narrow.size()) {
            return Optional.of(Finding.stop(
                    "collection-time-unknown",
                    "Some quantified lines have a known collection time and others none: their ratio is undefined."));
        }
        return Optional.empty();
    }
}
