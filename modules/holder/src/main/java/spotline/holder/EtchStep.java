package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sputtering planned at a spot.
 *
 * @param projectile the ion or cluster
 * @param energyEv eV
 * @param seconds a cycle, s
 * @param raster widths of the scanned area, mm
 * @param incidenceDeg from the surface normal, degrees
 * @param rotation whether the stage rotates meanwhile
 * @param cycles how often etching and measuring take turns
 */
public record EtchStep(
        Optional<String> projectile,
        OptionalDouble energyEv,
        OptionalDouble seconds,
        Optional<AreaMm> raster,
        OptionalDouble incidenceDeg,
        Optional<Boolean> rotation,
        int cycles) {
    public EtchStep {
        requireNonNull(projectile, "projectile");
        requireNonNull(raster, "raster");
        requireNonNull(rotation, "rotation");
        if (cycles < 1) throw new IllegalArgumentException("cycles count from 1, were " + cycles);
    }
}
