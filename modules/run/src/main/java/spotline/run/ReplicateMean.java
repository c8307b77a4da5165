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
import spotline.core.Estimate;
import spotline.holder.HolderPlan;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.reference.Elements;

/**
 * Compositions of a sample's spots, averaged.
 *
 * <p>u^2 of the mean = (shared part)^2 + max(s^2/n, (statistical part)^2): what the spots share (factors, exponents) does
 * not average down; the rest is the scatter between spots, never taken smaller than counting alone makes it. An element
 * below detection at one spot and found at another counts there as half its limit with a rectangular distribution.
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
        for (List<SpotResult> spots : bySample.values()) {
            TreeSet<String> symbols = new TreeSet<>(Comparator.comparingInt(
                    (String s) -> Elements.bySymbol(s).orElseThrow().z()));
            spots.forEach(s -> s.composition().forEach(row -> symbols.add(row.element())));
            List<SampleComposition.Mean> means = new ArrayList<>();
            for (String symbol : symbols) means.add(mean(symbol, spots));
            samples.add(new SampleComposition(
                    spots.get(0).sample(), spots.stream().map(SpotResult::spot).toList(), means));
        }
        return samples;
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
                return new SampleComposition.Mean(symbol, OptionalDouble.empty(), OptionalDouble.empty());
            } else {
                values.add(Estimate.unknown(0));
            }
        }
        if (!found) return new SampleComposition.Mean(symbol, OptionalDouble.empty(), OptionalDouble.empty());
        int n = values.size();
        Estimate mean = Estimate.sum(values).times(1.0 / n);
        OptionalDouble shared = mean.uncertaintyFrom(source -> source.startsWith("factor/"));
        OptionalDouble statistical = mean.uncertaintyFrom(source -> !source.startsWith("factor/"));
        if (shared.isEmpty() || statistical.isEmpty()) {
            return new SampleComposition.Mean(symbol, OptionalDouble.of(mean.value()), OptionalDouble.empty());
        }
        double squares = 0;
        for (Estimate v : values) squares += (v.value() - mean.value()) * (v.value() - mean.value());
        double scatter = n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0;
        double u = Math.hypot(shared.getAsDouble(), Math.max(scatter, statistical.getAsDouble()));
        return new SampleComposition.Mean(symbol, OptionalDouble.of(mean.value()), OptionalDouble.of(u));
    }
}
