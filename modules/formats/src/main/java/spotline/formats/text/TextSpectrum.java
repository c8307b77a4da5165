package spotline.formats.text;

import static java.util.Objects.requireNonNull;

import java.util.List;
import spotline.core.Finding;
import spotline.spectra.SpectrumSet;

/** The one spectrum of a text file. */
public record TextSpectrum(int firstRowLine, SpectrumSet set, List<Finding> warnings) {
    public TextSpectrum {
        requireNonNull(set, "set");
        warnings = List.copyOf(warnings);
    }
}
