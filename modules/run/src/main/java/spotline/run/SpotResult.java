package spotline.run;

import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.identify.Identification;
import spotline.analysis.quantify.Quantified;
import spotline.core.Finding;

/**
 * Everything that came of one spot.
 *
 * @param sample name of the sample
 * @param electricalState as declared
 * @param spectra in the order of measurement as far as it is known
 * @param identification empty when no survey could be searched
 * @param composition the primary result; rows of withheld numbers stay
 * @param variants the composition on other bases, by name
 */
public record SpotResult(
        String spot,
        String sample,
        String electricalState,
        List<LinkedSpectrum> spectra,
        Optional<Identification> identification,
        ChargeReference charge,
        List<MeasuredIntensity> intensities,
        List<FittedPeak> peaks,
        List<Quantified> composition,
        List<Variant> variants,
        List<Finding> findings) {
    /** A composition on another basis. */
    public record Variant(String name, List<Quantified> rows) {
        public Variant {
            rows = List.copyOf(rows);
        }
    }

    public SpotResult {
        spectra = List.copyOf(spectra);
        intensities = List.copyOf(intensities);
        peaks = List.copyOf(peaks);
        composition = List.copyOf(composition);
        variants = List.copyOf(variants);
        findings = List.copyOf(findings);
    }
}
