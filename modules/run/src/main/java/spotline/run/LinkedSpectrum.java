package spotline.run;

import java.time.OffsetDateTime;
import java.util.Optional;
import spotline.core.Provenance;
import spotline.holder.SpectrumRole;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * A measured spectrum tied to its spot.
 *
 * @param label how tables name it: file and block, {@code "01-liner.txt#3"}
 * @param region what the file calls it: {@code "C 1s"}, {@code "survey"}
 * @param survey whether it spans enough energy to be searched for elements
 * @param transmission the response its intensities are divided by
 */
public record LinkedSpectrum(
        String label,
        Provenance source,
        String region,
        boolean survey,
        SpectrumRole role,
        BindingScan scan,
        Transmission transmission,
        Optional<OffsetDateTime> time) {
    /** The same spectrum in another role. */
    LinkedSpectrum in(SpectrumRole newRole) {
        return new LinkedSpectrum(label, source, region, survey, newRole, scan, transmission, time);
    }
}
