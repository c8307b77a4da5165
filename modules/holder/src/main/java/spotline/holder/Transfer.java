package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a specimen gets from where it was mounted to the load lock without meeting the air.
 *
 * @param vessel which one
 * @param atmosphere the gas in it, or vacuum
 * @param oxygenPpm in the box it was mounted in, parts per million by volume
 * @param waterPpm in the box it was mounted in, parts per million by volume
 * @param secondsInAir time between protective gas and vacuum, s
 * @param arrivalPressureMbar in the vessel on arrival, mbar
 * @param controlSpot id of the spot on the control sample that made the same way
 */
public record Transfer(
        Optional<String> vessel,
        Optional<String> atmosphere,
        OptionalDouble oxygenPpm,
        OptionalDouble waterPpm,
        OptionalDouble secondsInAir,
        OptionalDouble arrivalPressureMbar,
        Optional<String> controlSpot) {
    public Transfer {
        requireNonNull(vessel, "vessel");
        requireNonNull(atmosphere, "atmosphere");
        requireNonNull(controlSpot, "controlSpot");
        if (secondsInAir.isPresent() && !(secondsInAir.getAsDouble() >= 0)) {
            throw new IllegalArgumentException("time in air must be 0 s or more, was " + secondsInAir.getAsDouble());
        }
    }
}
