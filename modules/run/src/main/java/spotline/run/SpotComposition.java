package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Composition;
import spotline.analysis.quantify.Contribution;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.TheoreticalFactors;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.reference.Elements;
import spotline.reference.Line;

/** From the intensities of one spot to its compositions on every basis. */
final class SpotComposition {
    /** An intensity with the spectrum it was taken from. */
    record Taken(LinkedSpectrum spectrum, Intensity intensity) {}

    private final TheoreticalFactors factors;
    private final OptionalDouble angle;
    private final List<Finding> findings = new ArrayList<>();

    SpotComposition(TheoreticalFactors factors, OptionalDouble sourceAnalyserAngleDeg) {
        this.factors = factors;
        this.angle = sourceAnalyserAngleDeg;
    }

    List<Finding> findings() {
        return findings;
    }

    /**
     * The primary table: narrow scans where an element has one; an element seen only in the survey through a line measured
     * in both; the survey alone where there is no narrow scan.
     */
    List<Quantified> primary(List<Taken> narrow, List<Taken> survey) {
        Map<String, Contribution> rows = contributions(narrow, Basis.NARROW);
        if (rows.isEmpty()) return ordered(contributions(survey, Basis.SURVEY));
        Optional<Link> link = link(narrow, survey);
        for (Contribution seen : contributions(survey, Basis.LINKED).values()) {
            if (rows.containsKey(seen.element()) || !seen.detected() || link.isEmpty()) continue;
            rows.put(seen.element(), link.get().bring(seen));
            findings.add(Finding.note(
                    "linked-from-survey",
                    seen.element() + " has no narrow scan; its " + seen.line()
                            + " from the survey was brought in through "
                            + link.get().line() + "."));
        }
        return ordered(rows);
    }

    List<Quantified> ofSurvey(List<Taken> survey) {
        return ordered(contributions(survey, Basis.SURVEY));
    }

    private static List<Quantified> ordered(Map<String, Contribution> rows) {
        List<Contribution> sorted = new ArrayList<>(rows.values());
        sorted.sort((a, b) -> Integer.compare(z(a.element()), z(b.element())));
        return Composition.of(sorted);
    }

    private static int z(String symbol) {
        return Elements.bySymbol(symbol).orElseThrow().z();
    }

    private Map<String, Contribution> contributions(List<Taken> taken, Basis basis) {
        Map<String, Contribution> rows = new LinkedHashMap<>();
        for (Taken t : taken) {
            String element = t.intensity().line().element();
            Optional<Contribution> made = contribution(t, basis);
            if (made.isEmpty()) continue;
            Contribution old = rows.get(element);
            if (old == null || (!old.detected() && made.get().detected())) rows.put(element, made.get());
        }
        return rows;
    }

    /** Area over collection time, transmission and factor. */
    private Optional<Contribution> contribution(Taken taken, Basis basis) {
        Intensity intensity = taken.intensity();
        LinkedSpectrum spectrum = taken.spectrum();
        double hv = spectrum.scan().photonEnergyEv();
        double kinetic = hv - intensity.peakEv();
        Optional<Estimate> factor = factors.factor(intensity.line(), hv, kinetic, angle);
        if (factor.isEmpty()) {
            findings.add(Finding.caution(
                            "no-sensitivity-factor",
                            String.format(
                                    Locale.ROOT,
                                    "No cross section of %s is tabulated at %.1f eV: it is not quantified.",
                                    intensity.line(),
                                    hv))
                    .in(spectrum.label()));
            return Optional.empty();
        }
        double scale = 1
                / (spectrum.scan().secondsPerChannel().orElse(1)
                        * spectrum.transmission().at(kinetic));
        Estimate normalised =
                intensity.area().times(intensity.wholePerWindow()).times(scale).dividedBy(factor.get());
        double limit = intensity.detectionLimit().orElse(0)
                * intensity.wholePerWindow().value()
                * scale
                / factor.get().value();
        return Optional.of(new Contribution(
                intensity.line().element(),
                intensity.line().toString(),
                spectrum.label(),
                basis,
                intensity.window(),
                normalised,
                limit,
                intensity.detected()));
    }

    /** The line measured in both with the surest area in the survey. */
    private Optional<Link> link(List<Taken> narrow, List<Taken> survey) {
        Map<String, Contribution> inNarrow = contributions(narrow, Basis.NARROW);
        Link best = null;
        double bestRelative = Double.POSITIVE_INFINITY;
        for (Taken s : survey) {
            Contribution n = inNarrow.get(s.intensity().line().element());
            Optional<Contribution> c = contribution(s, Basis.SURVEY);
            if (n == null || c.isEmpty() || !c.get().detected() || !n.detected()) continue;
            if (!Line.parse(n.line()).whole().equals(s.intensity().line().whole())) continue;
            double relative = c.get().normalised().standardUncertainty().orElse(1)
                    / c.get().normalised().value();
            if (relative < bestRelative) {
                bestRelative = relative;
                best = new Link(n.line(), n.normalised(), c.get().normalised());
            }
        }
        return Optional.ofNullable(best);
    }

    private record Link(String line, Estimate narrow, Estimate survey) {
        Contribution bring(Contribution seen) {
            Estimate ratio = narrow.dividedBy(survey);
            return new Contribution(
                    seen.element(),
                    seen.line(),
                    seen.spectrum(),
                    Basis.LINKED,
                    seen.window(),
                    seen.normalised().times(ratio),
                    seen.limitNormalised() * ratio.value(),
                    seen.detected());
        }
    }

    /** Narrow scans compared with no common measure: the reason, or nothing. */
    static Optional<Finding> incomparable(List<Taken> narrow) {
        SortedSet<String> energies = new TreeSet<>();
        boolean recorded = true;
        boolean someTimes = false;
        boolean allTimes = true;
        for (Taken t : narrow) {
            t.spectrum().scan().passEnergyEv().ifPresent(e -> energies.add(String.format(Locale.ROOT, "%.1f", e)));
            recorded &= t.spectrum().transmission().describe().equals(TransmissionSource.RECORDED);
            boolean timed = t.spectrum().scan().secondsPerChannel().isPresent();
            someTimes |= timed;
            allTimes &= timed;
        }
        if (energies.size() > 1 && !recorded) {
            return Optional.of(Finding.stop(
                    "pass-energies-differ",
                    "Quantified lines were measured at pass energies of " + String.join(", ", energies)
                            + " eV with no cross-calibration: their ratio is undefined."));
        }
        if (someTimes && !allTimes) {
            return Optional.of(Finding.stop(
                    "collection-time-unknown",
                    "Some quantified lines have a known collection time and others none: their ratio is undefined."));
        }
        return Optional.empty();
    }
}
