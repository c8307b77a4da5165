package spotline.formats.iso14976;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;

/**
 * One block: the header of a measurement and its ordinate values. The numbers in brackets are the standard's prefix
 * numbers.
 *
 * @param time (1) to (7)
 * @param comments (8), word for word
 * @param technique (9)
 * @param mapPosition (10), present in the modes MAP and MAPDP
 * @param experimentalValues (11), one an experimental variable of the header
 * @param source (12) to (20)
 * @param analyser (21) to (28)
 * @param species (29)
 * @param transition (30), transition or charge state label
 * @param detectedCharge (30), charge of the detected particle, -1 for electrons
 * @param abscissa (31), present in regular scans
 * @param variables (32), the corresponding variables
 * @param signal (33) to (36)
 * @param sputtering (37), present in depth profiles of the electron and X-ray techniques
 * @param orientation (38)
 * @param parameters (39), additional numerical parameters
 * @param futureEntries (40), lines of a future edition, word for word
 */
public record ExperimentBlock(
        String blockId,
        String sampleId,
        BlockTime time,
        List<String> comments,
        Technique technique,
        Optional<MapPosition> mapPosition,
        List<Real> experimentalValues,
        AnalysisSource source,
        AnalyserSettings analyser,
        String species,
        String transition,
        Real detectedCharge,
        Optional<Abscissa> abscissa,
        List<Variable> variables,
        Signal signal,
        Optional<SputteringSource> sputtering,
        SampleOrientation orientation,
        List<AdditionalParameter> parameters,
        List<String> futureEntries,
        Ordinates ordinates) {
    /** Nothing known: what the first block of a file starts from. */
    static final ExperimentBlock UNKNOWN = new ExperimentBlock(
            "",
            "",
            BlockTime.UNKNOWN,
            List.of(),
            Technique.XPS,
            Optional.empty(),
            List.of(),
            AnalysisSource.UNKNOWN,
            AnalyserSettings.UNKNOWN,
            "",
            "",
            Real.UNKNOWN,
            Optional.empty(),
            List.of(),
            Signal.UNKNOWN,
            Optional.empty(),
            SampleOrientation.UNKNOWN,
            List.of(),
            List.of(),
            Ordinates.NONE);

    public ExperimentBlock {
        Text.check("block identifier", blockId);
        Text.check("sample identifier", sampleId);
        requireNonNull(time, "time");
        comments = Text.check("block comment line", comments);
        requireNonNull(technique, "technique");
        requireNonNull(mapPosition, "mapPosition");
        experimentalValues = List.copyOf(experimentalValues);
        requireNonNull(source, "source");
        requireNonNull(analyser, "analyser");
        Text.check("species label", species);
        Text.check("transition or charge state label", transition);
        requireNonNull(detectedCharge, "detectedCharge");
        requireNonNull(abscissa, "abscissa");
        variables = List.copyOf(variables);
        requireNonNull(signal, "signal");
        requireNonNull(sputtering, "sputtering");
        requireNonNull(orientation, "orientation");
        parameters = List.copyOf(parameters);
        futureEntries = Text.check("future-upgrade block entry", futureEntries);
        if (ordinates.variables() != variables.size()) {
            throw new IllegalArgumentException(
                    variables.size() + " corresponding variables are named, values given for " + ordinates.variables());
        }
    }

    /** A builder for a photoelectron block: what it is not told stays "not known". */
    public static BlockBuilder xps(String blockId, String sampleId) {
        return new BlockBuilder(blockId, sampleId);
    }
}
