package spotline.report.facts;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.Quantified;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/** What is known of one element in one sample, its spots together. */
public sealed interface SampleValue {
    /** at.% */
    record Mean(double atomicPercent, OptionalDouble standardUncertainty) implements SampleValue {}

    /** Below detection at every spot; the least sensitive spot's limit, at.%, empty when one is unknown. */
    record Below(OptionalDouble limit) implements SampleValue {}

    record Withheld() implements SampleValue {}

    /** No spot of the sample has a row for the element. */
    record NotLookedFor() implements SampleValue {}

    static SampleValue of(RunResult result, SampleComposition sample, String element) {
        Optional<SampleComposition.Mean> mean = sample.elements().stream()
                .filter(m -> m.element().equals(element))
                .findFirst();
        if (mean.isEmpty()) return new NotLookedFor();
        if (mean.get().atomicPercent().isPresent()) {
            return new Mean(mean.get().atomicPercent().getAsDouble(), mean.get().standardUncertainty());
        }
        double limit = 0;
        for (SpotResult spot : result.spots()) {
            if (!sample.spots().contains(spot.spot())) continue;
            List<Quantified> rows = spot.composition().stream()
                    .filter(row -> row.element().equals(element))
                    .toList();
            for (Quantified row : rows) {
                if (!(RowState.of(spot, row) instanceof RowState.BelowDetection)) return new Withheld();
                limit = Math.max(limit, row.detectionLimit().orElse(Double.POSITIVE_INFINITY));
            }
        }
        return new Below(Double.isInfinite(limit) || limit == 0 ? OptionalDouble.empty() : OptionalDouble.of(limit));
    }
}
