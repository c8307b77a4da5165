package spotline.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.Replicates;
import spotline.core.Estimate;
import spotline.holder.HolderPlan;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.holder.SpotPurpose;
import spotline.reference.Elements;

/**
 * Compositions of a sample's spots, averaged as {@link Replicates} says. An element below detection at one spot and found at another counts there as half its limit with a rectangular distribution.
 *
 * <p>Source: GUM (JCGM 100:2008) 4.2 (mean of repeats), 4.3.7 (rectangular distribution).
 */
final class ReplicateMean {
    private ReplicateMean() {}

    static List<SampleComposition> of(HolderPlan plan, List<SpotResult> results) {
        Map<String, List<SpotResult>> bySample = new LinkedHashMap<>();
        for (SpotResult result : results) {
            Optional<Spot> spot = plan.spot(result.spot());
            String key = spot.flatMap(Spot::sample).map(Sample::key).orElse("spot " + result.spot());
            bySample.computeIfAbsent(key, k -> new ArrayList<>()).add(result);
        }
        List<SampleComposition> samples = new ArrayList<>();
        for (List<SpotResult> all : bySample.values()) {
            List<SpotResult> spots = takingPart(plan, all);
            TreeSet<String> symbols = new TreeSet<>(Comparator.comparingInt(
                    (String s) -> Elements.bySymbol(s).orElseThrow().z()));
            spots.forEach(s -> s.composition().forEach(row -> symbols.add(row.element())));
            List<SampleComposition.Mean> means = new ArrayList<>();
            for (String symbol : symbols) means.add(mean(symbol, spots));
            samples.add(new SampleComposition(
                    spots.get(0).sample(), spots.stream().map(SpotResult::spot).toList(), means, derived(spots)));
        }
        return samples;
    }

    /** Spots with a composition, blanks left out; all of them where none is left. */
    private static List<SpotResult> takingPart(HolderPlan plan, List<SpotResult> spots) {
        List<SpotResult> own = spots.stream()
                .filter(s -> plan.spot(s.spot())
                        .map(Spot::purpose)
                        .filter(p -> p == SpotPurpose.BLANK)
                        .isEmpty())
                .toList();
        List<SpotResult> left = own.isEmpty() ? spots : own;
        List<SpotResult> composed =
                left.stream().filter(s -> !s.composition().isEmpty()).toList();
        return composed.isEmpty() ? left : composed;
    }

    /** Whether a spot with a composition says nothing of an element: no row, and no survey that would show it. */
    static boolean unmeasured(SpotResult spot, String symbol) {
        if (spot.composition().isEmpty()
                || spot.composition().stream().anyMatch(r -> r.element().equals(symbol))) return false;
        return spot.identification().map(i -> i.element(symbol).isPresent()).orElse(true);
    }

    private static SampleComposition.Mean mean(String symbol, List<SpotResult> spots) {
        List<Estimate> values = new ArrayList<>();
        boolean found = false;
        for (SpotResult spot : spots) {
            Optional<Quantified> row = spot.composition().stream()
                    .filter(r -> r.element().equals(symbol))
                    .findFirst();
            if (row.isEmpty() && spot.composition().isEmpty()) continue;
            if (row.isPresent() && row.get().atomicPercent().isPresent()) {
                values.add(row.get().atomicPercent().get());
                found = true;
            } else if (row.isPresent()
                    && row.get().belowDetection()
                    && row.get().detectionLimit().isPresent()) {
                double limit = row.get().detectionLimit().getAsDouble();
                values.add(Estimate.of(
                        limit / 2, "counting/below detection at spot " + spot.spot(), limit / Math.sqrt(12)));
            } else if (row.isPresent()) {
                // Withheld at one spot: the mean would be of other places than it says.
                return SampleComposition.Mean.none(symbol);
            } else if (unmeasured(spot, symbol)) {
                return SampleComposition.Mean.none(symbol);
            } else {
                values.add(Estimate.unknown(0));
            }
        }
        if (!found) return SampleComposition.Mean.none(symbol);
        Replicates places = Replicates.of(values);
        return new SampleComposition.Mean(
                symbol, OptionalDouble.of(places.mean()), places.standardUncertainty(), Optional.of(places));
    }

    private static List<SampleComposition.DerivedMean> derived(List<SpotResult> spots) {
        Map<String, List<Estimate>> values = new LinkedHashMap<>();
        for (SpotResult spot : spots) {
            for (SpotResult.Derived d : spot.derived()) {
                d.value()
                        .ifPresent(v -> values.computeIfAbsent(d.quantity().name(), n -> new ArrayList<>())
                                .add(v));
            }
        }
        List<SampleComposition.DerivedMean> means = new ArrayList<>();
        values.forEach((name, list) -> means.add(new SampleComposition.DerivedMean(name, Replicates.of(list))));
        return means;
    }
}
