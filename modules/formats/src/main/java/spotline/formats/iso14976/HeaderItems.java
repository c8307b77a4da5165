package spotline.formats.iso14976;

import java.util.List;
import java.util.Optional;
import spotline.core.ReadException;

/** The order of the experiment header, from the institution identifier to the number of blocks. ISO 14976:1998. */
final class HeaderItems {
    /** The largest number of a list that a signed count of prefix numbers can have. */
    private static final int MOST_PREFIXES = 10 * InclusionList.LAST_ITEM;

    private HeaderItems() {}

    /** The format identifier, the first line, is judged by its reader. */
    static ExperimentHeader exchange(ItemPort port, String formatIdentifier, ExperimentHeader current)
            throws ReadException {
        String institution = port.text("institution identifier", current.institution());
        String instrument = port.text("instrument model identifier", current.instrument());
        String operator = port.text("operator identifier", current.operator());
        String experiment = port.text("experiment identifier", current.experiment());
        List<String> comments = port.texts("number of lines in comment", "comment line", current.comments());
        ExperimentMode mode = port.choice("experiment mode", current.mode(), ExperimentMode.class);
        ScanMode scanMode = port.choice("scan mode", current.scanMode(), ScanMode.class);
        Optional<Real> regions = Optional.empty();
        if (mode.hasRegions()) {
            Real before = current.spectralRegions().orElse(Real.UNKNOWN);
            regions = Optional.of(port.number("number of spectral regions", before));
        }
        Optional<MapExtent> extent = Optional.empty();
        if (mode.hasPositions()) {
            MapExtent before = current.mapExtent().orElse(MapExtent.UNKNOWN);
            extent = Optional.of(new MapExtent(
                    port.number("number of analysis positions", before.analysisPositions()),
                    port.number("number of x coordinates in the full map", before.xCoordinates()),
                    port.number("number of y coordinates in the full map", before.yCoordinates())));
        }
        List<Variable> variables = port.variables(
                "number of experimental variables", "experimental variable", current.experimentalVariables());
        InclusionList inclusion = inclusion(port, current.inclusion());
        int manual = port.count(
                "number of manually entered items", current.manualItems().size());
        List<Integer> manualItems = port.wholes(
                manual,
                "prefix number of manually entered item",
                current.manualItems(),
                Integer.MIN_VALUE,
                Integer.MAX_VALUE);
        int futureExperiment = port.count(
                "number of future-upgrade experiment entries",
                current.futureExperimentEntries().size());
        int futureBlock = port.count("number of future-upgrade block entries", current.futureBlockEntries());
        List<String> future =
                port.texts(futureExperiment, "future-upgrade experiment entry", current.futureExperimentEntries());
        return new ExperimentHeader(
                formatIdentifier,
                institution,
                instrument,
                operator,
                experiment,
                comments,
                mode,
                scanMode,
                regions,
                extent,
                variables,
                inclusion,
                manualItems,
                future,
                futureBlock);
    }

    private static InclusionList inclusion(ItemPort port, InclusionList current) throws ReadException {
        int signed =
                current.exclusion() ? -current.items().size() : current.items().size();
        signed = port.whole(
                "number of entries in the inclusion or exclusion list", signed, -MOST_PREFIXES, MOST_PREFIXES);
        List<Integer> items = port.wholes(
                Math.abs(signed),
                "prefix number of the inclusion or exclusion list, entry",
                current.items(),
                1,
                InclusionList.LAST_ITEM);
        return new InclusionList(signed < 0, items);
    }
}
