package spotline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.text.TextColumns;
import spotline.spectra.EnergyScale;

/** What a person declares of the columns of a text file, on the command line. Nothing of it is guessed. */
final class ColumnOptions {
    private enum Scale {
        BINDING,
        KINETIC
    }

    @Option(names = "--energy-column", paramLabel = "N", description = "text: column of the energies, from 1")
    private int energy;

    @Option(names = "--ordinate-column", paramLabel = "N", description = "text: column of the measured values")
    private int ordinate;

    @Option(names = "--scale", paramLabel = "SCALE", description = "text: binding or kinetic")
    private @Nullable Scale scale;

    @Option(names = "--photon-energy", paramLabel = "EV", description = "text: photon energy, eV")
    private @Nullable Double photonEnergy;

    @Option(
            names = "--ordinate-kind",
            paramLabel = "KIND",
            defaultValue = "unknown",
            description = "text: counts, counts-per-second or unknown")
    private String kind = "unknown";

    @Option(names = "--dwell-seconds", paramLabel = "S", description = "text: time per scan and channel, s")
    private @Nullable Double dwell;

    @Option(names = "--scans", paramLabel = "N", description = "text: scans together in the ordinate")
    private @Nullable Double scans;

    @Option(names = "--pass-energy", paramLabel = "EV", description = "text: pass energy, eV")
    private @Nullable Double pass;

    /** Errors: {@link ReadException} when some but not all of what is needed is declared, or a value is out of range. */
    Optional<TextColumns> columns(String file) throws ReadException {
        List<String> missing = new ArrayList<>();
        if (energy == 0) missing.add("--energy-column");
        if (ordinate == 0) missing.add("--ordinate-column");
        if (scale == null) missing.add("--scale");
        if (photonEnergy == null) missing.add("--photon-energy");
        if (missing.size() == 4) return Optional.empty();
        if (scale == null || photonEnergy == null || !missing.isEmpty()) {
            throw new ReadException(
                    Place.file(file), "columns declared without " + String.join(", ", missing), "these options too");
        }
        EnergyScale axis = scale == Scale.BINDING ? EnergyScale.BINDING : EnergyScale.KINETIC;
        try {
            return Optional.of(
                    new TextColumns(energy, ordinate, axis, kind(file), of(dwell), of(scans), of(pass), photonEnergy));
        } catch (IllegalArgumentException e) {
            throw new ReadException(Place.file(file), String.valueOf(e.getMessage()), "columns that can be");
        }
    }

    private TextColumns.OrdinateKind kind(String file) throws ReadException {
        for (TextColumns.OrdinateKind one : TextColumns.OrdinateKind.values()) {
            if (one.word().equals(kind.toLowerCase(Locale.ROOT))) return one;
        }
        throw new ReadException(Place.file(file), "--ordinate-kind " + kind, "counts, counts-per-second or unknown");
    }

    private static OptionalDouble of(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
