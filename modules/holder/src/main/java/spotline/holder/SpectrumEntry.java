package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A spectrum file, or some blocks of it, measured at one spot.
 *
 * @param file as written, relative to the holder-run file
 * @param blocks counted from 1; empty for all blocks of the file
 * @param columns what the columns of a plain text file are
 */
public record SpectrumEntry(
        String file,
        List<Integer> blocks,
        SpectrumRole role,
        Optional<TextColumns> columns,
        Optional<PhotonEnergyOverride> override) {
    public SpectrumEntry {
        if (file.isBlank()) throw new IllegalArgumentException("a spectrum needs a file");
        requireNonNull(role, "role");
        blocks = List.copyOf(blocks);
        for (int block : blocks) {
            if (block < 1) throw new IllegalArgumentException("blocks count from 1, was " + block);
        }
    }

    public static SpectrumEntry of(String file) {
        return new SpectrumEntry(file, List.of(), SpectrumRole.UNKNOWN, Optional.empty(), Optional.empty());
    }

    /**
     * Columns of a plain text file, counted from 1.
     *
     * @param dwellSeconds time a channel and scan, s
     * @param scans scans summed
     * @param passEnergyEv eV
     * @param photonEnergyEv eV
     */
    public record TextColumns(
            int energy,
            int ordinate,
            Scale scale,
            OrdinateKind ordinateKind,
            OptionalDouble dwellSeconds,
            OptionalInt scans,
            OptionalDouble passEnergyEv,
            double photonEnergyEv) {
        public TextColumns {
            requireNonNull(scale, "scale");
            requireNonNull(ordinateKind, "ordinateKind");
            if (energy < 1 || ordinate < 1) {
                throw new IllegalArgumentException("columns count from 1, were " + energy + " and " + ordinate);
            }
            if (energy == ordinate) {
                throw new IllegalArgumentException("energy and ordinate must be two columns, were both " + energy);
            }
            if (!(photonEnergyEv > 0)) {
                throw new IllegalArgumentException("photon energy must be above 0 eV, was " + photonEnergyEv);
            }
        }
    }

    /** Which energy a column holds. */
    public enum Scale implements Word {
        BINDING,
        KINETIC
    }

    /** What an ordinate column holds. */
    public enum OrdinateKind implements Word {
        COUNTS,
        COUNTS_PER_SECOND,
        /** Not known. */
        UNKNOWN
    }

    /** A photon energy that overrules the file's header, eV, and why. */
    public record PhotonEnergyOverride(double photonEnergyEv, String reason) {
        public PhotonEnergyOverride {
            if (!(photonEnergyEv > 0)) {
                throw new IllegalArgumentException("photon energy must be above 0 eV, was " + photonEnergyEv);
            }
            if (reason.isBlank()) throw new IllegalArgumentException("an override needs a reason");
        }
    }
}
