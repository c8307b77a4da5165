package spotline.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.FactorKind;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.ListedFactors;
import spotline.analysis.quantify.ReferenceMaterialFactors;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Sensitivity factors from spots of a run that show a material of known composition.
 *
 * <p>Intensities are those of the narrow scans, over collection time and transmission; of the survey where there is no
 * narrow scan. Several spots count as one measurement each, averaged.
 */
public final class LabFactors {
    private LabFactors() {}

    /**
     * @param angleDeg between source and analyser, under which the reference was measured; empty where it is not known
     *
     * <p>Errors: {@link IllegalArgumentException} when nothing of the material was measured, or a line of it has no intensity.
     */
    public static ListedFactors of(
            List<SpotResult> spots,
            QuantifySettings.FactorChoice.FromSpots choice,
            OptionalDouble angleDeg,
            ReferenceData reference) {
        Map<String, Estimate> composition = new LinkedHashMap<>();
        choice.atomicPercent()
                .forEach((symbol, percent) -> composition.put(
                        symbol,
                        Estimate.of(percent, "composition of the reference, " + symbol, percent * choice.relativeU())));
        Map<Line, Estimate> sums = new LinkedHashMap<>();
        Map<Line, Integer> counts = new LinkedHashMap<>();
        OptionalDouble photons = OptionalDouble.empty();
        Set<FactorSet.BackgroundFamily> backgrounds = new TreeSet<>();
        for (SpotResult spot : spots) {
            boolean narrow = spot.intensities().stream().anyMatch(m -> m.basis() == Basis.NARROW);
            for (MeasuredIntensity measured : spot.intensities()) {
                if ((measured.basis() == Basis.NARROW) != narrow) continue;
                Intensity intensity = measured.intensity();
                if (!composition.containsKey(intensity.line().element()) || !intensity.detected()) continue;
                LinkedSpectrum spectrum = spot.spectra().stream()
                        .filter(s -> s.label().equals(intensity.spectrum()))
                        .findFirst()
                        .orElseThrow();
                photons = OptionalDouble.of(spectrum.scan().photonEnergyEv());
                backgrounds.add(FactorChecks.family(intensity.background()));
                sums.merge(intensity.line(), Normalisation.of(spectrum, intensity, true), Estimate::plus);
                counts.merge(intensity.line(), 1, Integer::sum);
            }
        }
        if (sums.isEmpty()) {
            throw new IllegalArgumentException("the reference spots show no line of the stated material");
        }
        sums.replaceAll((line, sum) -> sum.times(1.0 / counts.getOrDefault(line, 1)));
        Line relativeTo = choice.relativeTo().orElse(sums.keySet().iterator().next());
        return ReferenceMaterialFactors.of(
                set(spots, choice, photons, angleDeg, List.copyOf(backgrounds)),
                composition,
                sums,
                relativeTo,
                reference);
    }

    private static FactorSet set(
            List<SpotResult> spots,
            QuantifySettings.FactorChoice.FromSpots choice,
            OptionalDouble photons,
            OptionalDouble angleDeg,
            List<FactorSet.BackgroundFamily> backgrounds) {
        String sample = spots.get(0).sample();
        return new FactorSet(
                "reference material: " + (sample.isEmpty() ? "spot " + String.join(", ", choice.spots()) : sample),
                "spots " + String.join(", ", choice.spots()) + " of this run",
                FactorKind.REFERENCE_MATERIAL,
                photons,
                angleDeg,
                FactorSet.Transmission.DIVIDED_OUT,
                "in the factors",
                backgrounds,
                true,
                "the lines measured on the reference material");
    }
}
