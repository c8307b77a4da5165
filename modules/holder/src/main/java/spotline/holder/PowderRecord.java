package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a powder was laid on its tape.
 *
 * @param looseGrainsRemoved whether loose grains were removed, away from the other samples
 * @param tapeShowing share of the tape's area that shows between the grains, 0 to 1
 */
public record PowderRecord(Quantity quantity, Optional<Boolean> looseGrainsRemoved, OptionalDouble tapeShowing) {
    public PowderRecord {
        requireNonNull(quantity, "quantity");
        requireNonNull(looseGrainsRemoved, "looseGrainsRemoved");
        if (tapeShowing.isPresent() && !(tapeShowing.getAsDouble() >= 0 && tapeShowing.getAsDouble() <= 1)) {
            throw new IllegalArgumentException("a share must be 0 to 1, was " + tapeShowing.getAsDouble());
        }
    }

    /** How much of it there is. */
    public enum Quantity implements Word {
        /** Just enough to cover the tape. */
        COVERING,
        /** Less: the tape shows. */
        SPARSE,
        /** More: loose grains lie on grains. */
        HEAPED,
        /** Not known: left out of the record. */
        UNKNOWN
    }
}
