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
 */
public record Mount(
        MountMethod method,
        ElectricalState electricalState,
        List<String> materials,
        OptionalDouble resistanceOhm,
        Optional<String> notes) {
    public static final Mount UNKNOWN = new Mount(
            MountMethod.UNKNOWN, ElectricalState.UNKNOWN, List.of(), OptionalDouble.empty(), Optional.empty());

    public Mount {
        requireNonNull(method, "method");
        requireNonNull(electricalState, "electricalState");
        materials = List.copyOf(materials);
        if (resistanceOhm.isPresent() && !(resistanceOhm.getAsDouble() >= 0)) {
            throw new IllegalArgumentException("resistance must be 0 ohm or more, was " + resistanceOhm.getAsDouble());
        }
    }

    /** A mount of which only fixing and connection are known. */
    public static Mount of(MountMethod method, ElectricalState state) {
        return new Mount(method, state, List.of(), OptionalDouble.empty(), Optional.empty());
    }
}
