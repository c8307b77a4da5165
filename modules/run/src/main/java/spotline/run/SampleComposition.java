package spotline.run;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A sample, its replicate spots averaged.
 *
 * @param spots ids of the spots that went in
 */
public record SampleComposition(String sample, List<String> spots, List<Mean> elements) {
    /**
     * Mean over the spots of one element.
     *
     * @param atomicPercent at.%; empty when withheld or below detection at every spot
     * @param standardUncertainty of the mean: scatter between spots, and the shared factor errors that do not average
     *     down; empty when unknown
     */
    public record Mean(String element, OptionalDouble atomicPercent, OptionalDouble standardUncertainty) {}

    public SampleComposition {
        spots = List.copyOf(spots);
        elements = List.copyOf(elements);
    }
}
