package spotline.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.Replicates;

/**
 * A sample, its replicate spots averaged.
 *
 * @param spots ids of the spots that went in
 * @param derived ratios and sums, of the spots that have them
 */
public record SampleComposition(String sample, List<String> spots, List<Mean> elements, List<DerivedMean> derived) {
    /**
     * Mean over the spots of one element.
     *
     * @param atomicPercent at.%; empty when withheld or below detection at every spot
     * @param standardUncertainty of the mean: scatter between spots, and the shared factor errors that do not average
     *     down; empty when unknown
     * @param places what the spots say of the sample's homogeneity; empty where there is no mean
     */
    public record Mean(
            String element,
            OptionalDouble atomicPercent,
            OptionalDouble standardUncertainty,
            Optional<Replicates> places) {
        public Mean(String element, OptionalDouble atomicPercent, OptionalDouble standardUncertainty) {
            this(element, atomicPercent, standardUncertainty, Optional.empty());
        }

        static Mean none(String element) {
            return new Mean(element, OptionalDouble.empty(), OptionalDouble.empty());
        }
    }

    /** A ratio or a sum over the spots. */
    public record DerivedMean(String name, Replicates places) {}

    /** A sample without derived quantities. */
    public SampleComposition(String sample, List<String> spots, List<Mean> elements) {
        this(sample, spots, elements, List.of());
    }

    public SampleComposition {
        spots = List.copyOf(spots);
        elements = List.copyOf(elements);
        derived = List.copyOf(derived);
    }
}
