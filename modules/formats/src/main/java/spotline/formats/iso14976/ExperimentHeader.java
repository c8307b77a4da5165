package spotline.formats.iso14976;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;

/**
 * What stands before the blocks, but for their number.
 *
 * @param formatIdentifier first line of the file
 * @param comments word for word
 * @param spectralRegions number of regions; present in the modes MAP, MAPDP, NORM and SDP
 * @param mapExtent present in the modes MAP and MAPDP
 * @param manualItems prefix numbers of the items that a person entered
 * @param futureExperimentEntries lines of a future edition, word for word
 * @param futureBlockEntries number of such lines in every block
 */
public record ExperimentHeader(
        String formatIdentifier,
        String institution,
        String instrument,
        String operator,
        String experiment,
        List<String> comments,
        ExperimentMode mode,
        ScanMode scanMode,
        Optional<Real> spectralRegions,
        Optional<MapExtent> mapExtent,
        List<Variable> experimentalVariables,
        InclusionList inclusion,
        List<Integer> manualItems,
        List<String> futureExperimentEntries,
        int futureBlockEntries) {
    /** ISO 14976:1998 kept the identifier of the 1988 publication. */
    public static final String FORMAT_IDENTIFIER =
            "VAMAS Surface Chemical Analysis Standard Data Transfer Format 1988 May 4";

    /** The words by which a file is told whatever the edition's date. */
    static final String FORMAT_WORDS = "VAMAS Surface Chemical Analysis Standard Data Transfer Format";

    public ExperimentHeader {
        requireNonNull(mode, "mode");
        requireNonNull(scanMode, "scanMode");
        requireNonNull(inclusion, "inclusion");
        Text.check("format identifier", formatIdentifier);
        if (formatIdentifier.indexOf('\r') >= 0) {
            throw new IllegalArgumentException(
                    "the first line must not hold a line end, was " + formatIdentifier.strip());
        }
        Text.check("institution identifier", institution);
        Text.check("instrument model identifier", instrument);
        Text.check("operator identifier", operator);
        Text.check("experiment identifier", experiment);
        comments = Text.check("comment line", comments);
        experimentalVariables = List.copyOf(experimentalVariables);
        manualItems = List.copyOf(manualItems);
        futureExperimentEntries = Text.check("future-upgrade experiment entry", futureExperimentEntries);
        if (futureBlockEntries < 0) throw new IllegalArgumentException("a number of entries is 0 or more");
        if (spectralRegions.isPresent() != mode.hasRegions()) {
            throw new IllegalArgumentException(
                    "a number of spectral regions belongs to MAP, MAPDP, NORM and SDP alone");
        }
        if (mapExtent.isPresent() != mode.hasPositions()) {
            throw new IllegalArgumentException("the extent of a map belongs to MAP and MAPDP alone");
        }
    }

    /** Independent spectra on a regular scan, every block complete. */
    public static ExperimentHeader norm(
            String institution, String instrument, String operator, String experiment, List<String> comments) {
        return new ExperimentHeader(
                FORMAT_IDENTIFIER,
                institution,
                instrument,
                operator,
                experiment,
                comments,
                ExperimentMode.NORM,
                ScanMode.REGULAR,
                Optional.of(Real.UNKNOWN),
                Optional.empty(),
                List.of(),
                InclusionList.COMPLETE,
                List.of(),
                List.of(),
                0);
    }

    /** The same header with experimental variables, of which every block then gives a value. */
    public ExperimentHeader withExperimentalVariables(List<Variable> variables) {
        return new ExperimentHeader(
                formatIdentifier,
                institution,
                instrument,
                operator,
                experiment,
                comments,
                mode,
                scanMode,
                spectralRegions,
                mapExtent,
                variables,
                inclusion,
                manualItems,
                futureExperimentEntries,
                futureBlockEntries);
    }

    /** The same header with a number of spectral regions. */
    public ExperimentHeader withSpectralRegions(int regions) {
        return new ExperimentHeader(
                formatIdentifier,
                institution,
                instrument,
                operator,
                experiment,
                comments,
                mode,
                scanMode,
                Optional.of(Real.of(regions)),
                mapExtent,
                experimentalVariables,
                inclusion,
                manualItems,
                futureExperimentEntries,
                futureBlockEntries);
    }
}
