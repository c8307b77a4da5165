package spotline.analysis.quantify;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Factors given line by line: the lab's own, or those of a published table.
 *
 * <p>A member of a doublet that is not listed takes its share of the listed whole, a whole the sum that a listed member
 * stands for, by the cross sections.
 *
 * <p>Errors: empty for a line that is not covered, and at a photon energy more than 1 eV from the set's own.
 */
public final class ListedFactors implements SensitivityFactors {
    private static final double PHOTON_TOLERANCE_EV = 1;

    private final FactorSet set;
    private final SortedMap<Line, Estimate> factors;
    private final ReferenceData reference;

    public ListedFactors(FactorSet set, Map<Line, Estimate> factors, ReferenceData reference) {
        this.set = set;
        this.factors = Collections.unmodifiableSortedMap(new TreeMap<>(factors));
        this.reference = reference;
        factors.forEach((line, factor) -> {
            if (!(factor.value() > 0)) {
                throw new IllegalArgumentException("the factor of " + line + " must be above 0, was " + factor.value());
            }
        });
    }

    @Override
    public FactorSet set() {
        return set;
    }

    public SortedMap<Line, Estimate> factors() {
        return factors;
    }

    @Override
    public Optional<Estimate> factor(Line line, double photonEnergyEv, double kineticEv, OptionalDouble gammaDeg) {
        if (set.photonEnergyEv().isPresent()
                && Math.abs(set.photonEnergyEv().getAsDouble() - photonEnergyEv) > PHOTON_TOLERANCE_EV) {
            return Optional.empty();
        }
        Estimate own = factors.get(line);
        if (own != null) return Optional.of(own);
        for (Line other : new Line[] {line.whole(), line.high(), line.low()}) {
            Estimate listed = factors.get(other);
            OptionalDouble wanted = reference.crossSection(line, photonEnergyEv);
            OptionalDouble known = reference.crossSection(other, photonEnergyEv);
            if (listed != null && wanted.isPresent() && known.isPresent()) {
                return Optional.of(listed.times(wanted.getAsDouble() / known.getAsDouble()));
            }
        }
        return Optional.empty();
    }
}
