package spotline.analysis.quantify;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import spotline.core.Estimate;

/**
 * Where an estimate's uncertainty comes from: standard uncertainty by group of sources. The squares of the groups add up to
 * the square of the whole.
 *
 * <p>Source: GUM (JCGM 100:2008) 5.1.
 *
 * @param known false where some part of the uncertainty is unknown; the groups are then those that are known
 */
public record UncertaintyBudget(Map<UncertaintySource, Double> parts, boolean known) {
    public UncertaintyBudget {
        parts = Collections.unmodifiableMap(new EnumMap<>(parts));
    }

    /** Standard uncertainty that a group makes, in the unit of the estimate; 0 where it makes none. */
    public double part(UncertaintySource group) {
        return parts.getOrDefault(group, 0.0);
    }

    public static UncertaintyBudget of(Estimate estimate) {
        EnumMap<UncertaintySource, Double> squares = new EnumMap<>(UncertaintySource.class);
        for (String key : estimate.sources()) {
            double part = estimate.contribution(key);
            squares.merge(UncertaintySource.of(key), part * part, Double::sum);
        }
        squares.replaceAll((group, square) -> Math.sqrt(square));
        squares.values().removeIf(u -> u == 0);
        return new UncertaintyBudget(squares, estimate.standardUncertainty().isPresent());
    }
}
