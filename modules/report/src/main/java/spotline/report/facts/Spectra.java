package spotline.report.facts;

import java.util.Optional;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;

/** The spectra of a spot by the label that rows name them by. */
public final class Spectra {
    private Spectra() {}

    public static Optional<LinkedSpectrum> find(SpotResult spot, String label) {
        return spot.spectra().stream().filter(s -> s.label().equals(label)).findFirst();
    }

    /** {@code counts eV}, or {@code ordinate eV} where nobody knows what a count is. */
    public static String areaUnit(SpotResult spot, String label) {
        boolean counts = find(spot, label).map(s -> s.scan().countsKnown()).orElse(false);
        return counts ? "counts eV" : "ordinate eV";
    }
}
