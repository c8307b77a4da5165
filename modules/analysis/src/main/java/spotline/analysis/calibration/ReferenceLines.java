package spotline.analysis.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.reference.CalibrationEnergy;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Finds the reference lines of gold, silver and copper in scans.
 *
 * <p>Shape: any number of scans in, a row a line out, from low to high energy; a line measured several times is averaged.
 * Units: eV. Errors: none; what is not there has no row. Source: ISO 15472:2010 for the lines and their energies.
 */
public final class ReferenceLines {
    /** A line is looked for this far around its energy, eV: a scale further off needs service, no correction. */
    private static final double REACH = 2;
    /** A scan must go on this far beyond, eV. */
    private static final double MARGIN = 1;
    /** Coarser or wider scans are surveys: no line is placed by them. */
    private static final double COARSEST_STEP = 0.26;

    private static final double WIDEST_SCAN = 150;
    private static final double AREA_REACH = 2.5;

    private final ReferenceData reference;
    private final XraySource source;

    public ReferenceLines(ReferenceData reference, XraySource source) {
        this.reference = reference;
        this.source = source;
    }

    private record Seen(BindingScan scan, PeakTop top) {}

    public List<MeasuredReference> measure(List<BindingScan> scans, Work work) {
        Map<String, List<Seen>> found = new LinkedHashMap<>();
        List<CalibrationEnergy> energies = reference.calibrationEnergies(source).stream()
                .sorted(Comparator.comparingDouble(CalibrationEnergy::bindingEv))
                .toList();
        for (CalibrationEnergy energy : energies) {
            for (BindingScan scan : scans) {
                if (!holds(scan, energy.bindingEv())) continue;
                PeakTop.find(scan, Window.around(energy.bindingEv(), REACH, REACH), work)
                        .ifPresent(top -> found.computeIfAbsent(energy.line(), l -> new ArrayList<>())
                                .add(new Seen(scan, top)));
            }
        }
        List<MeasuredReference> lines = new ArrayList<>();
        for (CalibrationEnergy energy : energies) {
            List<Seen> seen = found.getOrDefault(energy.line(), List.of());
            if (!seen.isEmpty()) lines.add(line(energy, use(energy.line(), found), seen, work));
        }
        return lines;
    }

    private static boolean holds(BindingScan scan, double energyEv) {
        return scan.stepEv() <= COARSEST_STEP
                && scan.range().widthEv() <= WIDEST_SCAN
                && scan.range().contains(energyEv - REACH - MARGIN)
                && scan.range().contains(energyEv + REACH + MARGIN);
    }

    private static MeasuredReference.Use use(String line, Map<String, List<Seen>> found) {
        boolean gold = found.containsKey("Au 4f7/2");
        if (line.equals("Au 4f7/2") || (!gold && line.equals("Cu 3p3/2"))) return MeasuredReference.Use.LOW;
        return line.equals("Cu 2p3/2") ? MeasuredReference.Use.HIGH : MeasuredReference.Use.CHECK;
    }

    private static MeasuredReference line(
            CalibrationEnergy energy, MeasuredReference.Use use, List<Seen> seen, Work work) {
        Estimate mean = mean(seen.stream().map(s -> s.top().positionEv()).toList());
        OptionalDouble scatter = scatter(seen);
        if (scatter.isPresent()) {
            double more = scatter.getAsDouble() * scatter.getAsDouble() / seen.size();
            double counting = mean.standardUncertainty().orElse(0);
            double beyond = Math.sqrt(Math.max(0, more - counting * counting));
            mean = mean.with("repeatability " + energy.line(), beyond);
        }
        List<Estimate> intensities =
                seen.stream().flatMap(s -> intensity(s, work).stream()).toList();
        return new MeasuredReference(
                energy.line(),
                String.join(" ", seen.stream().map(s -> s.scan().label()).toList()),
                mean,
                scatter,
                Estimate.of(energy.bindingEv(), "reference energy of " + energy.line(), energy.standardUncertaintyEv()),
                use,
                seen.get(0).top().fwhmEv(),
                intensities.size() == seen.size() ? Optional.of(mean(intensities)) : Optional.empty());
    }

    private static Estimate mean(List<Estimate> values) {
        return Estimate.sum(values).times(1.0 / values.size());
    }

    private static OptionalDouble scatter(List<Seen> seen) {
        if (seen.size() < 2) return OptionalDouble.empty();
        double mean = seen.stream()
                .mapToDouble(s -> s.top().positionEv().value())
                .average()
                .orElseThrow();
        double squares = 0;
        for (Seen s : seen) squares += Math.pow(s.top().positionEv().value() - mean, 2);
        return OptionalDouble.of(Math.sqrt(squares / (seen.size() - 1)));
    }

    private static Optional<Estimate> intensity(Seen seen, Work work) {
        OptionalDouble seconds = seen.scan().secondsPerChannel();
        if (seconds.isEmpty()) return Optional.empty();
        double at = seen.top().positionEv().value();
        return Linear.of(3)
                .subtract(
                        seen.scan(),
                        Window.around(at, AREA_REACH, AREA_REACH),
                        "intensity " + seen.scan().label(),
                        work)
                .result()
                .map(Subtraction::netArea)
                .map(area -> area.times(1 / seconds.getAsDouble()));
    }
}
