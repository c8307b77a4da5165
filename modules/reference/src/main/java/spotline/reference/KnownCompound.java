package spotline.reference;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * A compound of known composition, for checks from end to end.
 *
 * @param atomicPercent by symbol, hydrogen left out, sums to 100 within rounding
 * @param linePositions typical positions, for a person
 */
public record KnownCompound(
        String name, String formula, Map<String, Double> atomicPercent, String linePositions, String source) {
    public KnownCompound {
        atomicPercent = Collections.unmodifiableMap(new TreeMap<>(atomicPercent));
    }
}
