package spotline.run;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import spotline.core.Provenance;
import spotline.holder.SpectrumRole;
import spotline.spectra.BindingScan;
import spotline.spectra.HeaderField;
import spotline.spectra.Transmission;

/**
 * A measured spectrum tied to its spot.
 *
 * @param label how tables name it: file and block, {@code "01-liner.txt#3"}
 * @param region what the file calls it: {@code "C 1s"}, {@code "survey"}
 * @param survey whether it spans enough energy to be searched for elements
 * @param transmission the response its intensities are divided by
 * @param header what the file says of it besides, word for word: further header fields, and comments without a name
 */
public record LinkedSpectrum(
        String label,
        Provenance source,
        String region,
        boolean survey,
        SpectrumRole role,
        BindingScan scan,
        Transmission transmission,
        Optional<OffsetDateTime> time,
        List<HeaderField> header) {
    public LinkedSpectrum {
        header = List.copyOf(header);
    }

    /** A spectrum of which the file says no more. */
    public LinkedSpectrum(
            String label,
            Provenance source,
            String region,
            boolean survey,
            SpectrumRole role,
            BindingScan scan,
            Transmission transmission,
            Optional<OffsetDateTime> time) {
        this(label, source, region, survey, role, scan, transmission, time, List.of());
    }

    /** The same spectrum in another role. */
    LinkedSpectrum in(SpectrumRole newRole) {
        return new LinkedSpectrum(label, source, region, survey, newRole, scan, transmission, time, header);
    }
}
