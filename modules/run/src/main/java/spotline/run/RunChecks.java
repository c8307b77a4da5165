package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.quantify.Replicates;
import spotline.core.Finding;
import spotline.holder.DeclaredTransmission;
import spotline.holder.Sample;
import spotline.holder.Spot;

/** Checks that need more than one spot. */
final class RunChecks {
    /** Places count as different when counting alone scatters as much in fewer cases than this. */
    private static final double SAME_PLACE = 0.01;

    /** A smaller relative scatter may be that of windows. Common practice, no source. */
    private static final double SMALLEST_SCATTER = 0.02;

    private RunChecks() {}

    static List<Finding> acrossSpots(HolderRun run, List<SpotResult> spots) {
        List<Finding> findings = new ArrayList<>();
        Map<String, List<SpotResult>> bySample = new LinkedHashMap<>();
        for (int i = 0; i < spots.size(); i++) {
            Spot spot = run.spots().get(i).spot();
            String key = spot.sample().map(Sample::key).orElse("spot " + spot.id());
            bySample.computeIfAbsent(key, k -> new ArrayList<>()).add(spots.get(i));
        }
        for (List<SpotResult> replicates : bySample.values()) {
            SpotResult first = replicates.get(0);
            if (replicates.size() == 1) {
                boolean measured = first.composition().stream()
                        .anyMatch(r -> r.atomicPercent().isPresent());
                if (measured) {
                    findings.add(Finding.note(
                                    "one-spot-only",
                                    "One spot was measured: nothing is known of the scatter"
                                            + " between places of this sample.")
                            .at(first.spot(), first.sample()));
                }
            }
        }
        findings.addAll(transmission(run));
        findings.addAll(adventitiousValues(spots));
        return findings;
    }

    /** An element that some spots of a sample have a number of and others were not measured for: it has no mean. */
    static List<Finding> incomplete(List<SampleComposition> samples, List<SpotResult> spots) {
        List<Finding> findings = new ArrayList<>();
        for (SampleComposition sample : samples) {
            List<SpotResult> own = spots.stream()
                    .filter(s -> sample.spots().contains(s.spot()))
                    .toList();
            for (SampleComposition.Mean mean : sample.elements()) {
                List<String> without = own.stream()
                        .filter(s -> ReplicateMean.unmeasured(s, mean.element()))
                        .map(SpotResult::spot)
                        .toList();
                boolean numbered = own.stream()
                        .flatMap(s -> s.composition().stream())
                        .anyMatch(r -> r.element().equals(mean.element())
                                && r.atomicPercent().isPresent());
                if (without.isEmpty() || !numbered) continue;
                findings.add(Finding.caution(
                                "not-measured-everywhere",
                                mean.element() + " was not measured at spots " + String.join(", ", without)
                                        + " of the sample: it has no mean, and there the others sum to 100 without it.")
                        .at("", sample.sample()));
            }
        }
        return findings;
    }

    /** A sample whose places differ by more than their counting explains. */
    static List<Finding> homogeneity(List<SampleComposition> samples) {
        List<Finding> findings = new ArrayList<>();
        for (SampleComposition sample : samples) {
            for (SampleComposition.Mean mean : sample.elements()) {
                if (mean.places().isEmpty()) continue;
                Replicates places = mean.places().get();
                OptionalDouble probability = places.homogeneityProbability();
                if (probability.isEmpty() || probability.getAsDouble() > SAME_PLACE) continue;
                double s = places.standardDeviation().orElse(0);
                if (s < SMALLEST_SCATTER * places.mean()) continue;
                findings.add(Finding.note(
                                "places-differ",
                                String.format(
                                        Locale.ROOT,
                                        "%s is %.1f at.%% with a standard deviation of %.2f over %d places; counting alone"
                                                + " scatters as much in under %.0f %% of cases: the mean is of places that"
                                                + " differ.",
                                        mean.element(),
                                        places.mean(),
                                        s,
                                        places.n(),
                                        100 * SAME_PLACE))
                        .at("", sample.sample()));
            }
        }
        return findings;
    }

    /** Computed factors need the response of the spectrometer; where nobody knows it, nothing was divided out. */
    private static List<Finding> transmission(HolderRun run) {
        if (run.plan().file().instrument().transmission() instanceof DeclaredTransmission.Flat) return List.of();
        List<String> spots = run.spots().stream()
                .filter(s -> s.treatment().quantify().factors() instanceof QuantifySettings.FactorChoice.Computed)
                .filter(s ->
                        s.spectra().stream().anyMatch(l -> !l.transmission().corrects()))
                .map(s -> s.spot().id())
                .toList();
        if (spots.isEmpty()) return List.of();
        return List.of(Finding.caution(
                "transmission-not-known",
                "No transmission is recorded or declared for spectra of spots " + String.join(", ", spots)
                        + ": it was taken as flat, and theoretical factors need it."));
    }

    /** Two adventitious-carbon reference values in one report. */
    private static List<Finding> adventitiousValues(List<SpotResult> spots) {
        TreeSet<String> values = new TreeSet<>();
        for (SpotResult spot : spots) {
            ChargeReference charge = spot.charge();
            OptionalDouble value = charge.referenceEv();
            if (charge.method() == ChargeMethod.ADVENTITIOUS_CARBON && value.isPresent()) {
                values.add(String.format(Locale.ROOT, "%.2f", value.getAsDouble()));
            }
        }
        Optional<Finding> two = values.size() > 1
                ? Optional.of(Finding.caution(
                        "two-carbon-reference-values",
                        "Adventitious carbon is set to " + String.join(" and ", values)
                                + " eV at spots of one run: binding energies of these spots must not be compared."))
                : Optional.empty();
        return two.stream().toList();
    }
}
