package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.function.Function;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.intensity.IntensityMeasurement;
import spotline.analysis.intensity.IntensitySettings;
import spotline.analysis.intensity.LineTarget;
import spotline.analysis.intensity.OverlapFit;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/**
 * Takes the intensities of one spot: lines that stand clear first, then those that others lie under, which by then are known
 * to be there and how far they are moved.
 */
final class SpotIntensities {
    /** A narrow scan with its line. */
    record Assigned(LinkedSpectrum spectrum, Line line) {}

    /** A neighbour that brings less of a line's intensity is left to the window. */
    private static final double LEAST_SHARE = 0.015;

    /** How a mean free path goes with kinetic energy as a rule. */
    private static final double USUAL_POWER = 0.75;

    private final ReferenceData reference;
    private final Memo memo;
    private final String spot;
    private final LineAssignment lines;
    private final double shiftEv;
    private final SortedSet<String> present;
    private final Set<ReplicateBackgrounds.LineOn> fallbackLines;
    private final List<Finding> findings = new ArrayList<>();

    /**
     * @param present elements declared or surely seen
     * @param fallbackLines lines of which a replicate spot refuses the chosen background
     */
    SpotIntensities(
            ReferenceData reference,
            Memo memo,
            String spot,
            LineAssignment lines,
            double shiftEv,
            SortedSet<String> present,
            Set<ReplicateBackgrounds.LineOn> fallbackLines) {
        this.reference = reference;
        this.memo = memo;
        this.spot = spot;
        this.lines = lines;
        this.shiftEv = shiftEv;
        this.present = present;
        this.fallbackLines = fallbackLines;
    }

    List<Finding> findings() {
        return findings;
    }

    /** @param stated what the analyst states for each line by hand */
    List<SpotComposition.Taken> narrow(
            List<Assigned> assigned, IntensitySettings settings, Function<Line, LineSettings> stated, Work work) {
        Map<Assigned, SpotComposition.Taken> taken = new LinkedHashMap<>();
        List<Assigned> later = new ArrayList<>();
        for (Assigned a : assigned) {
            LineSettings own = stated.apply(a.line());
            boolean clear = own.window().isPresent()
                    || lines.target(a.line(), a.spectrum().scan(), shiftEv)
                            .map(t ->
                                    neighbours(t, a.spectrum().scan(), Map.of()).isEmpty())
                            .orElse(true);
            if (clear) measure(a, settings, own, findings, work).ifPresent(i -> taken.put(a, i));
            else later.add(a);
        }
        Map<String, SpotComposition.Taken> known = new LinkedHashMap<>();
        taken.values().forEach(t -> known.putIfAbsent(t.element(), t));
        for (Assigned a : later) {
            overlapped(a, known, settings, stated.apply(a.line()), work).ifPresent(i -> taken.put(a, i));
        }
        return assigned.stream().filter(taken::containsKey).map(taken::get).toList();
    }

    /** Fallbacks and tight windows are the rule on a survey and no news. */
    List<SpotComposition.Taken> survey(
            LinkedSpectrum spectrum, List<Line> wanted, IntensitySettings settings, Work work) {
        List<SpotComposition.Taken> taken = new ArrayList<>();
        for (Line line : wanted) {
            measure(new Assigned(spectrum, line), settings, LineSettings.NONE, new ArrayList<>(), work)
                    .ifPresent(taken::add);
        }
        return taken;
    }

    private Optional<SpotComposition.Taken> overlapped(
            Assigned a,
            Map<String, SpotComposition.Taken> known,
            IntensitySettings settings,
            LineSettings own,
            Work work) {
        BindingScan scan = a.spectrum().scan();
        LineTarget target = lines.target(a.line(), scan, shiftEv).orElseThrow();
        List<Finding> quiet = new ArrayList<>();
        Optional<SpotComposition.Taken> plain = measure(a, settings, own, quiet, work);
        List<OverlapFit.Neighbour> neighbours = new ArrayList<>();
        for (OverlapFit.Neighbour n : neighbours(target, scan, known)) {
            Optional<SpotComposition.Taken> other =
                    Optional.ofNullable(known.get(n.line().element()));
            if (other.isEmpty()) neighbours.add(n);
            if (other.isEmpty() || !other.get().intensity().detected()) continue;
            double area = expectedArea(n, other.get(), a.spectrum());
            double all = area * (1 + n.widths().partnerRatio());
            double plainArea = plain.map(p -> p.intensity().area().value()).orElse(0.0);
            if (all > LEAST_SHARE * plainArea) neighbours.add(n.expecting(area));
        }
        if (!neighbours.isEmpty() && scan.countsKnown()) {
            String name = key(a.spectrum(), a.line());
            IntensitySettings used = own.over(settings);
            Outcome<Intensity> fitted = memo.of(
                    Memo.Key.of("overlap", used, scan, target, List.copyOf(neighbours), name),
                    () -> new OverlapFit(reference, used).measure(scan, target, neighbours, name, work));
            fitted.allFindings().forEach(f -> findings.add(f.in(a.spectrum().label())));
            if (fitted.result().isPresent()) {
                return fitted.result().map(i -> new SpotComposition.Taken(a.spectrum(), i));
            }
        }
        findings.addAll(quiet);
        return plain;
    }

    /** Area of a neighbour's first peak in a spectrum, from another line of its element: within a fifth or so. */
    private double expectedArea(OverlapFit.Neighbour n, SpotComposition.Taken other, LinkedSpectrum spectrum) {
        double hv = spectrum.scan().photonEnergyEv();
        double kinetic = hv - n.firstEv();
        double otherKinetic =
                other.spectrum().scan().photonEnergyEv() - other.intensity().peakEv();
        double ratio = reference.crossSection(n.line(), hv).orElse(0)
                / reference.crossSection(other.intensity().line(), hv).orElse(1)
                * Math.pow(kinetic / otherKinetic, USUAL_POWER);
        double response = spectrum.scan().secondsPerChannel().orElse(1)
                * spectrum.transmission().at(kinetic);
        double whole = ratio
                * response
                * Normalisation.of(other.spectrum(), other.intensity(), true).value();
        return whole / (1 + n.widths().partnerRatio());
    }

    private List<OverlapFit.Neighbour> neighbours(
            LineTarget target, BindingScan scan, Map<String, SpotComposition.Taken> known) {
        Map<String, Double> moved = new LinkedHashMap<>();
        known.forEach((element, taken) -> {
            if (!taken.intensity().detected()) return;
            reference
                    .bindingEnergy(taken.intensity().line().high())
                    .map(LevelEnergy::valueEv)
                    .ifPresent(usual -> moved.put(element, taken.intensity().peakEv() + shiftEv - usual));
        });
        return new LineNeighbours(reference, shiftEv, present, moved).of(target, scan);
    }

    private Optional<SpotComposition.Taken> measure(
            Assigned a, IntensitySettings settings, LineSettings own, List<Finding> to, Work work) {
        Optional<LineTarget> target = lines.target(a.line(), a.spectrum().scan(), shiftEv);
        if (target.isEmpty()) {
            to.add(Finding.caution(
                            "line-outside-scan",
                            a.line() + " lies outside the scan, or its energy is not tabulated: it was not measured.")
                    .in(a.spectrum().label()));
            return Optional.empty();
        }
        Basis basis = a.spectrum().survey() ? Basis.SURVEY : Basis.NARROW;
        boolean alike = own.background().isEmpty()
                && fallbackLines.contains(
                        new ReplicateBackgrounds.LineOn(basis, a.line().whole()));
        BindingScan scan = a.spectrum().scan();
        String name = key(a.spectrum(), a.line());
        IntensitySettings used = own.over(alike ? settings.fallbackFirst() : settings);
        Outcome<Intensity> outcome = memo.of(
                Memo.Key.of(IntensityMeasurement.STEP, used, scan, target.get(), own.window(), name),
                () -> new IntensityMeasurement(used).measure(scan, target.get(), own.window(), name, work));
        outcome.allFindings().forEach(f -> to.add(f.in(a.spectrum().label())));
        if (alike && outcome.result().isPresent()) {
            to.add(Finding.note(
                            "background-fallback",
                            a.line() + ": the chosen background does not serve at every spot of this sample. A "
                                    + settings.fallback().describe()
                                    + " background was subtracted at all of them instead.")
                    .in(a.spectrum().label()));
        }
        return outcome.result().map(i -> new SpotComposition.Taken(a.spectrum(), i));
    }

    private String key(LinkedSpectrum spectrum, Line line) {
        return "spot " + spot + " " + spectrum.label() + " " + line;
    }
}
