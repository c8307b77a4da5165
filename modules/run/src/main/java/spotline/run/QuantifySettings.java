package spotline.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.quantify.DerivedQuantity;
import spotline.reference.Elements;
import spotline.reference.Line;

/**
 * How intensities become compositions.
 *
 * @param factors the set of sensitivity factors
 * @param doublets which doublets are taken whole
 * @param linkRelativeU relative standard uncertainty of bringing an intensity from the survey to the narrow scans' scale
 * @param overlapRelativeU relative standard uncertainty of a computed overlap's share inside a window
 * @param claimsConformity whether the report claims conformity with a standard: a mismatch of factors then stops
 * @param derived ratios and sums to report
 * @param without elements each left out of a variant of its own: carbon, say
 * @param blank what is taken off in a variant
 * @param angleDeg angle between source and analyser at these spots in place of the record's, degree; empty for the
 *     record's
 */
public record QuantifySettings(
        FactorChoice factors,
        Doublets doublets,
        double linkRelativeU,
        double overlapRelativeU,
        boolean claimsConformity,
        List<DerivedQuantity> derived,
        List<String> without,
        Optional<Blank> blank,
        OptionalDouble angleDeg) {
    public QuantifySettings {
        derived = List.copyOf(derived);
        without = List.copyOf(new TreeSet<>(without));
        require(linkRelativeU >= 0 && linkRelativeU < 1, "linkRelativeU: " + linkRelativeU + ", expected 0 to below 1");
        require(
                overlapRelativeU >= 0 && overlapRelativeU < 1,
                "overlapRelativeU: " + overlapRelativeU + ", expected 0 to below 1");
        double angle = angleDeg.orElse(MAGIC_ANGLE_DEG);
        require(angle > 0 && angle <= 180, "angleInPlaceOfRecordDeg: " + angle + ", expected above 0 to 180 degrees");
        for (String symbol : without) {
            require(
                    Elements.bySymbol(symbol).isPresent(),
                    "without: \"" + symbol + "\", expected the symbol of an element");
        }
    }

    private static final double MAGIC_ANGLE_DEG = 54.7;

    private static void require(boolean holds, String otherwise) {
        if (!holds) throw new IllegalArgumentException(otherwise);
    }

    /** Where the sensitivity factors come from. */
    public sealed interface FactorChoice {
        /** From cross sections, by the settings of the theoretical factors. */
        record Computed() implements FactorChoice {}

        /** A table of the lab's own, named relative to the holder-run file. */
        record FromFile(String file) implements FactorChoice {}

        /**
         * Spots of this run that show a material of known composition.
         *
         * @param atomicPercent of each element
         * @param relativeU relative standard uncertainty of each atomic fraction
         * @param relativeTo the line whose factor is 1; empty for the first line measured
         */
        record FromSpots(
                List<String> spots, Map<String, Double> atomicPercent, double relativeU, Optional<Line> relativeTo)
                implements FactorChoice {
            public FromSpots {
                spots = List.copyOf(spots);
                atomicPercent = Map.copyOf(atomicPercent);
                require(relativeU >= 0 && relativeU < 1, "relativeU: " + relativeU + ", expected 0 to below 1");
                double sum = 0;
                for (Map.Entry<String, Double> share : atomicPercent.entrySet()) {
                    require(
                            Elements.bySymbol(share.getKey()).isPresent(),
                            "atomicPercent of the reference: \"" + share.getKey() + "\", expected an element's symbol");
                    require(
                            share.getValue() > 0,
                            "atomicPercent of the reference: " + share.getKey() + " " + share.getValue()
                                    + ", expected above 0");
                    sum += share.getValue();
                }
                require(
                        Math.abs(sum - 100) <= 1,
                        "atomicPercent of the reference: a sum of " + sum + ", expected 100 to within 1");
            }
        }
    }

    /**
     * Doublets whole or by their first member.
     *
     * @param widestEv one with a larger splitting is taken by its first member alone, eV
     * @param whole what single lines do otherwise
     */
    public record Doublets(double widestEv, Map<Line, Boolean> whole) {
        public Doublets {
            whole = Map.copyOf(whole);
            require(widestEv >= 0, "widestDoubletEv: " + widestEv + " eV, expected 0 eV or more");
        }

        boolean takesWhole(Line line, double splittingEv) {
            return whole.getOrDefault(line.whole(), splittingEv <= widestEv);
        }
    }

    /**
     * A blank: what a tape or a cover slip shows by itself.
     *
     * @param spot where it was measured
     * @param element by which it is scaled
     * @param share how much of that element at the sample's spot comes from the blank's material, above 0 to 1
     */
    public record Blank(String spot, String element, double share) {
        public Blank {
            require(Elements.bySymbol(element).isPresent(), "blank: \"" + element + "\", expected an element's symbol");
            require(share > 0 && share <= 1, "blank.share: " + share + ", expected above 0 to 1");
        }
    }
}
