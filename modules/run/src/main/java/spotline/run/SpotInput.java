package spotline.run;

import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Finding;
import spotline.holder.Spot;

/**
 * All that the treatment of one spot may look at.
 *
 * @param spectra linked to the spot, in order of time as far as it is known, else of the holder run
 * @param sourceAnalyserAngleDeg as declared, degree
 * @param monochromated whether X-ray satellites need not be looked for
 * @param findings of reading and linking
 */
public record SpotInput(
        Spot spot,
        List<LinkedSpectrum> spectra,
        OptionalDouble sourceAnalyserAngleDeg,
        boolean monochromated,
        Treatment treatment,
        List<Finding> findings) {
    public SpotInput {
        spectra = List.copyOf(spectra);
        findings = List.copyOf(findings);
    }
}
