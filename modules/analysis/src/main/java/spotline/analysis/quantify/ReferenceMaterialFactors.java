package spotline.analysis.quantify;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Sensitivity factors from the lab's own spectra of a material of known composition.
 *
 * <p>S_i = (I_i / X_i) / (I_r / X_r), relative to one of its lines, r. The uncertainties of counting, of the background and
 * of the composition go into the factors, and from there into everything quantified by them, as one source each: what is
 * wrong with the reference is wrong alike with all that rests on it.
 *
 * <p>Shape: a material in, a factor set out. Units: at.% and intensities on any one scale. Errors:
 * {@link IllegalArgumentException} when a line's element is not in the composition, the reference line was not measured, or
 * an intensity is not above 0.
 *
 * <p>Source: ISO 18118, relative sensitivity factors from reference materials.
 */
public final class ReferenceMaterialFactors {
    private ReferenceMaterialFactors() {}

    /**
     * @param composition atomic per cent of each element, with its uncertainty
     * @param intensities of each line, over collection time and transmission as the set says
     * @param relativeTo the line whose factor is 1
     */
    public static ListedFactors of(
            FactorSet set,
            Map<String, Estimate> composition,
            Map<Line, Estimate> intensities,
            Line relativeTo,
            ReferenceData reference) {
        Estimate unit = perAtom(relativeTo, composition, intensities);
        Map<Line, Estimate> factors = new LinkedHashMap<>();
        for (Line line : intensities.keySet()) {
            Estimate factor = perAtom(line, composition, intensities).dividedBy(unit);
            factors.put(line, line.equals(relativeTo) ? Estimate.exact(1) : asFactor(factor));
        }
        return new ListedFactors(set, factors, reference);
    }

    private static Estimate perAtom(Line line, Map<String, Estimate> composition, Map<Line, Estimate> intensities) {
        Estimate percent = Optional.ofNullable(composition.get(line.element()))
                .orElseThrow(
                        () -> new IllegalArgumentException("the reference material has no known " + line.element()));
        Estimate intensity = Optional.ofNullable(intensities.get(line))
                .orElseThrow(() -> new IllegalArgumentException(line + " was not measured on the reference material"));
        if (!(intensity.value() > 0) || !(percent.value() > 0)) {
            throw new IllegalArgumentException(line + " has no intensity on the reference material");
        }
        return intensity.dividedBy(percent);
    }

    /** The same contributions under names that say where they come from, so that they count as shared. */
    private static Estimate asFactor(Estimate measured) {
        if (measured.standardUncertainty().isEmpty()) return Estimate.unknown(measured.value());
        Estimate factor = Estimate.exact(measured.value());
        for (String source : measured.sources()) {
            factor = factor.with("factor/reference material, " + source, measured.contribution(source));
        }
        return factor;
    }
}
