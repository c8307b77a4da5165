package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a specimen is fixed and connected.
 *
 * @param materials materials within reach of the analysis area, in plain words; empty when not known
 * @param resistanceOhm measured between the specimen's surface and the holder, ohm
 * @param tapePatch outline of the tape under the specimen, about the specimen's centre and rotated with it
 * @param clips parts that lie on the specimen
 * @param strap whether a conducting strap, wire or paint joins the surface to the holder
 * @param maxTemperatureC that the mount stands, degrees Celsius
 * @param seat id of the holder's stub seat it sits in
 */
public record Mount(
        MountMethod method,
        ElectricalState electricalState,
        List<String> materials,
        OptionalDouble resistanceOhm,
        Optional<Outline> tapePatch,
        List<Clip> clips,
        Optional<Boolean> strap,
        OptionalDouble maxTemperatureC,
        Optional<String> seat,
        Optional<PowderRecord> powder,
        Optional<String> notes) {
    public static final Mount UNKNOWN = of(MountMethod.UNKNOWN, ElectricalState.UNKNOWN);

    public Mount {
        requireNonNull(method, "method");
        requireNonNull(electricalState, "electricalState");
        requireNonNull(tapePatch, "tapePatch");
        requireNonNull(seat, "seat");
        materials = List.copyOf(materials);
        clips = List.copyOf(clips);
        if (resistanceOhm.isPresent() && !(resistanceOhm.getAsDouble() >= 0)) {
            throw new IllegalArgumentException("resistance must be 0 ohm or more, was " + resistanceOhm.getAsDouble());
        }
    }

    /** A mount of which only fixing and connection are known. */
    public static Mount of(MountMethod method, ElectricalState state) {
        return new Mount(
                method,
                state,
                List.of(),
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Whether a conducting strap, wire or paint is declared. */
    public boolean strapped() {
        return strap.orElse(false);
    }

    /**
     * What the mount may put into a spectrum, by the identifiers of the published table of mount materials
     * ({@code carbon-tape}, {@code glass}, {@code brass-clip} ...), sorted; empty when nothing is known of the mount.
     */
    public List<String> markerMaterials() {
        return MarkerMaterials.of(this);
    }
}
