package spotline.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.core.Finding;
import spotline.holder.Spot;

/**
 * All that the treatment of one spot may look at.
 *
 * @param spectra linked to the spot, in order of time as far as it is known, else of the holder run
 * @param sourceAnalyserAngleDeg as declared, degree
 * @param monochromated whether X-ray satellites need not be looked for
 * @param findings of reading and linking
 * @param labFactors sensitivity factors that stand in for the computed ones
 * @param fallbackLines lines of which a replicate spot refuses the chosen background
 */
public record SpotInput(
        Spot spot,
        List<LinkedSpectrum> spectra,
        OptionalDouble sourceAnalyserAngleDeg,
        boolean monochromated,
        Treatment treatment,
        List<Finding> findings,
        Optional<SensitivityFactors> labFactors,
        Set<ReplicateBackgrounds.LineOn> fallbackLines) {
    public SpotInput {
        fallbackLines = Set.copyOf(fallbackLines);
        spectra = List.copyOf(spectra);
        findings = List.copyOf(findings);
    }

    /** An input by itself, without replicates. */
    public SpotInput(
            Spot spot,
            List<LinkedSpectrum> spectra,
            OptionalDouble sourceAnalyserAngleDeg,
            boolean monochromated,
            Treatment treatment,
            List<Finding> findings,
            Optional<SensitivityFactors> labFactors) {
        this(spot, spectra, sourceAnalyserAngleDeg, monochromated, treatment, findings, labFactors, Set.of());
    }

    /** An input that is quantified by computed factors. */
    public SpotInput(
            Spot spot,
            List<LinkedSpectrum> spectra,
            OptionalDouble sourceAnalyserAngleDeg,
            boolean monochromated,
            Treatment treatment,
            List<Finding> findings) {
        this(spot, spectra, sourceAnalyserAngleDeg, monochromated, treatment, findings, Optional.empty());
    }

    SpotInput withSpectra(List<LinkedSpectrum> others) {
        return new SpotInput(
                spot, others, sourceAnalyserAngleDeg, monochromated, treatment, findings, labFactors, fallbackLines);
    }

    SpotInput with(Finding finding) {
        List<Finding> more = new ArrayList<>(findings);
        more.add(finding);
        return new SpotInput(
                spot, spectra, sourceAnalyserAngleDeg, monochromated, treatment, more, labFactors, fallbackLines);
    }

    SpotInput withFallback(ReplicateBackgrounds.LineOn line) {
        Set<ReplicateBackgrounds.LineOn> lines = new HashSet<>(fallbackLines);
        lines.add(line);
        return new SpotInput(
                spot, spectra, sourceAnalyserAngleDeg, monochromated, treatment, findings, labFactors, lines);
    }

    SpotInput quantifiedBy(SensitivityFactors factors) {
        return new SpotInput(
                spot,
                spectra,
                sourceAnalyserAngleDeg,
                monochromated,
                treatment,
                findings,
                Optional.of(factors),
                fallbackLines);
    }
}
